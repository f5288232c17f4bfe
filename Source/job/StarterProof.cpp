// Whether an option of a starter set does what its wish says: asked of the same circuit that is heard.

#include "job/Starter.h"

#include "audition/Drives.h"
#include "audition/Volumes.h"

#include <algorithm>
#include <cmath>

namespace coldiron
{
namespace
{
constexpr double gainDb = 0.5, humDb = 1.0, quietDb = -20.0, voiceDb = 1.0;

double db (double ratio) { return 20.0 * std::log10 (std::max (ratio, 1e-15)); }

/** Hum against one coil's at the level of the voice, at the third harmonic of 50 Hz. */
double oneCoilDb (const Voice& voice)
{
    const double strings = drivesOf (voice, 150.0).norm();
    return strings > 0.0 ? db (std::abs (voice.hum (150.0)) / strings) : -300.0;
}

double trebleDb (const Voice& voice) { return db (std::abs (voice.plain (5000.0))) - db (std::abs (voice.plain (500.0))); }

std::vector<double> shape (const Voice& voice)
{
    std::vector<double> levels;
    double mean = 0.0;
    for (double hz = 80.0; hz < 8000.0; hz *= std::exp2 (1.0 / 3.0))
    {
        levels.push_back (db (std::sqrt (voice.power (hz))));
        mean += levels.back();
    }
    for (auto& level : levels)
        level -= mean / static_cast<double> (levels.size());
    return levels;
}

double distanceDb (const std::vector<double>& a, const std::vector<double>& b)
{
    double sum = 0.0;
    for (size_t i = 0; i < a.size(); ++i)
        sum += (a[i] - b[i]) * (a[i] - b[i]);
    return std::sqrt (sum / static_cast<double> (a.size()));
}

/** Every position of the guitar's own switches, up to 64 settings; the first is the one given. */
std::vector<Setting> ownPositions (const Side& side)
{
    std::vector<Setting> settings { side.setting };
    for (const auto& control : controls (side.harness))
    {
        const size_t count = settings.size();
        for (size_t i = 0; i < count && settings.size() < 64; ++i)
            for (const auto& position : control.positions)
            {
                settings.push_back (settings[i]);
                settings.back().levers[control.name] = position;
            }
    }
    return settings;
}

std::string whyNoVoice (const Side& now, const Voice& option)
{
    const auto wanted = shape (option);
    for (const auto& setting : ownPositions (now))
    {
        Side side = now;
        side.setting = setting;
        const auto own = side.voice();
        if (! own.isSilent() && distanceDb (shape (own), wanted) < voiceDb)
            return "the guitar has this voice already";
    }
    return {};
}

std::string whyNotIndependent (const Side& now, const Side& option)
{
    const auto mutes = [] (const VolumeFigures& volume) { return volume.mutesOthers.value_or (false); };
    const auto asItIs = volumeFigures (now);
    if (std::none_of (asItIs.begin(), asItIs.end(), mutes))
        return "no volume mutes another pickup as it is";
    for (const auto& volume : volumeFigures (option))
        if (mutes (volume))
            return "the " + volume.knob + " at 0 would still mute the other pickup";
    return {};
}
}

std::string whyNotProved (StarterProof proof, const Side& now, const Side& option, const Setting& ownSetting)
{
    const Voice after = option.voice();
    if (after.isSilent())
        return "it would be silent where the controls stand";
    Side turned = now; // the same knobs turned down, where the guitar has them
    for (const auto& control : controls (now.harness))
        if (const auto knob = ownSetting.knobs.find (control.name); knob != ownSetting.knobs.end() && control.positions.empty())
            turned.setting.knobs[control.name] = knob->second;
    const Voice before = turned.voice();
    switch (proof)
    {
        case StarterProof::none: return {};
        case StarterProof::quieter:
        {
            const double wanted = oneCoilDb (before) - humDb; // what is soldered may serve a guitar that is quiet already, a lever alone not
            return oneCoilDb (after) <= (option.harness.sameAs (now.harness) ? wanted : std::max (quietDb, wanted)) ? "" : "the hum would not go down";
        }
        case StarterProof::brighter: return trebleDb (after) >= trebleDb (before) + gainDb ? "" : "it would not be brighter where the controls stand";
        case StarterProof::clearWhenTurnedDown: return trebleDb (after) >= trebleDb (before) + gainDb ? "" : "it would not stay clearer than it is now";
        case StarterProof::anotherVoice: return whyNoVoice (now, after);
        case StarterProof::independent: return whyNotIndependent (now, option);
    }
    return {};
}
}
