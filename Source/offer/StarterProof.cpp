// Whether an option of a starter set does what its wish says: asked of the same circuit that is heard.

#include "offer/Starter.h"

#include "response/Hum.h"
#include "response/StringResponse.h"
#include "response/Volumes.h"

#include <algorithm>
#include <cmath>

namespace coldiron
{
namespace
{
constexpr double higherReach = 1.26; ///< a third of an octave
constexpr double clearerDb = 1.0, humDb = 1.0, quietDb = -20.0, voiceDb = 1.0;

using Refusal = std::optional<OfferRefusal>;
using Reason = OfferRefusal::Reason;

Refusal refused (Reason reason, std::string name = {}) { return OfferRefusal { reason, std::move (name), {}, {}, {} }; }

double dbOfRatio (double ratio) { return 20.0 * std::log10 (std::max (ratio, 1e-15)); }

/** The guitar as it is with the option's knobs, where it has them. */
CircuitConfig turnedAs (const CircuitConfig& now, const Setting& ownSetting)
{
    CircuitConfig turned = now;
    for (const auto& control : controls (now.harness))
        if (const auto knob = ownSetting.knobs.find (control.name); knob != ownSetting.knobs.end() && control.positions.empty())
            turned.setting.knobs[control.name] = knob->second;
    return turned;
}

std::vector<double> shape (const GuitarResponse& response)
{
    std::vector<double> levels;
    double mean = 0.0;
    for (double hz = 80.0; hz < 8000.0; hz *= std::exp2 (1.0 / 3.0))
    {
        levels.push_back (dbOfRatio (std::sqrt (response.power (hz))));
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
std::vector<Setting> ownPositions (const CircuitConfig& config)
{
    std::vector<Setting> settings { config.setting };
    for (const auto& control : controls (config.harness))
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

Refusal whyNoVoice (const CircuitConfig& now, const GuitarResponse& option)
{
    const auto wanted = shape (option);
    for (const auto& setting : ownPositions (now))
    {
        CircuitConfig config = now;
        config.setting = setting;
        const auto own = config.response();
        if (! own.isSilent() && distanceDb (shape (own), wanted) < voiceDb)
            return refused (Reason::knownVoice);
    }
    return {};
}

Refusal whyNotIndependent (const CircuitConfig& now, const CircuitConfig& option)
{
    const auto mutes = [] (const VolumeFigures& volume) { return volume.mutesOthers.value_or (false); };
    const auto asItIs = volumeFigures (now);
    if (std::none_of (asItIs.begin(), asItIs.end(), mutes))
        return refused (Reason::nothingMutes);
    for (const auto& volume : volumeFigures (option))
        if (mutes (volume))
            return refused (Reason::stillMutes, volume.knob);
    return {};
}

/** How high it reaches: the -3 dB point [Hz]; 0 where there is none to speak of. */
double reach (const CircuitConfig& config)
{
    const auto resonance = findResonance (config.response());
    return resonance.cornerHz.value_or (resonance.passbandDb ? 40000.0 : 0.0);
}

Refusal whyNotBrighter (const CircuitConfig& now, const CircuitConfig& option)
{
    const Clarity clarity (now, {});
    const auto before = clarity.db (now), after = clarity.db (option);
    if (before && after && *after >= *before + clearerDb)
        return {};
    // Parallel coils lift the resonance out of the clear band: brighter, common practice of the trade, and hardly less clear.
    const bool isNoDuller = before && after && *after >= *before - clearerDb;
    const double reachesNow = reach (now);
    return isNoDuller && reachesNow > 0.0 && reach (option) >= higherReach * reachesNow ? std::nullopt
                                                                                        : refused (Reason::notBrighter);
}

/** Turned down it must come closer to how the guitar sounds turned up: neither duller nor thinner. */
Refusal whyNotClear (const CircuitConfig& now, const CircuitConfig& option, const Setting& ownSetting)
{
    Setting up = ownSetting;
    for (auto& [knob, value] : up.knobs)
        value = 10.0;
    const CircuitConfig open = turnedAs (now, up), down = turnedAs (now, ownSetting);
    const Clarity clarity (now, {});
    const auto wanted = clarity.db (open), before = clarity.db (down), after = clarity.db (option);
    if (! wanted || ! before || ! after)
        return refused (Reason::notToBeJudged);
    if (std::abs (*after - *wanted) <= std::abs (*before - *wanted) - clearerDb)
        return {};
    return refused (*after > *wanted ? Reason::tooBright : Reason::notClearer);
}
}

Refusal whyNotProved (StarterProof proof, const CircuitConfig& now, const CircuitConfig& option, const Setting& ownSetting)
{
    const GuitarResponse after = option.response();
    if (after.isSilent())
        return refused (Reason::silent);
    switch (proof)
    {
    case StarterProof::none: return {};
    case StarterProof::quieter:
    {
        const double wanted = humFigures (turnedAs (now, ownSetting).response()).playingDb
                              - humDb; // what is soldered may serve a guitar that is quiet already, a lever alone not
        return humFigures (after).playingDb <= (option.harness.sameAs (now.harness) ? wanted : std::max (quietDb, wanted))
                   ? std::nullopt
                   : refused (Reason::notQuieter);
    }
    case StarterProof::brighter: return whyNotBrighter (turnedAs (now, ownSetting), option);
    case StarterProof::clearWhenTurnedDown: return whyNotClear (now, option, ownSetting);
    case StarterProof::anotherVoice: return whyNoVoice (now, after);
    case StarterProof::independent: return whyNotIndependent (now, option);
    }
    return {};
}
}
