#include "response/ControlUse.h"

#include "response/PickupsHeard.h"
#include "response/SourceResponses.h"
#include "response/Volumes.h"

#include <algorithm>
#include <cmath>
#include <map>

namespace coldiron
{
namespace
{
/** Of a pickup that plays without some of its coils, those that are left: a coil counts from 10 dB under the pickup's
    strongest on, since a shorted one still couples into its neighbour. */
PickupsOn pickupsOn (const CircuitConfig& config)
{
    const auto heard = pickupsHeard (config);
    if (heard.empty())
        return {};
    const GuitarResponse response = config.response();
    const auto h = sourceResponses (response, 500.0);
    const auto& all = response.guitar().coils;
    std::map<std::string, double> most;
    for (size_t i = 0; i < all.size(); ++i)
        most[all[i].pickup] = std::max (most[all[i].pickup], std::abs (h[static_cast<int> (i)]));
    PickupsOn on;
    for (const auto& pickup : heard)
    {
        PickupOn one { pickup, {} };
        size_t count = 0;
        for (size_t i = 0; i < all.size(); ++i)
            if (all[i].pickup == pickup)
            {
                ++count;
                if (std::abs (h[static_cast<int> (i)]) > 0.316 * most[pickup])
                    one.coils.push_back (all[i].coil);
            }
        if (one.coils.size() == count)
            one.coils.clear();
        on.push_back (std::move (one));
    }
    return on;
}

double treble (const GuitarResponse& response)
{
    return 20.0
           * std::log10 (std::max (std::abs (response.unisonResponse (3000.0)), 1e-12)
                         / std::max (std::abs (response.unisonResponse (300.0)), 1e-12));
}

/** What else tells two positions with the same pickups apart. */
void compare (const CircuitConfig& config, const CircuitConfig& other, PositionUse& use)
{
    constexpr double differsDb = 2.0;
    const auto step = [] (double db) { return db > differsDb ? 1 : db < -differsDb ? -1 : 0; };
    const auto a = config.response(), b = other.response();
    if (a.isSilent() || b.isSilent())
        return;
    use.louder = step (20.0 * std::log10 (std::abs (a.unisonResponse (500.0)) / std::abs (b.unisonResponse (500.0))));
    use.brighter = step (treble (a) - treble (b));
}

std::vector<PositionUse> positionUses (const CircuitConfig& config, const Control& control)
{
    std::vector<PositionUse> uses;
    std::vector<CircuitConfig> configs;
    for (const auto& position : control.positions)
    {
        configs.push_back (config);
        configs.back().setting.levers[control.name] = position;
        PositionUse use { position, pickupsOn (configs.back()), {} };
        const auto same = std::find_if (uses.begin(), uses.end(), [&] (const auto& other) { return other.heard == use.heard; });
        if (same != uses.end())
        {
            use.likePosition = same->position;
            compare (configs.back(), configs[static_cast<size_t> (same - uses.begin())], use);
        }
        uses.push_back (std::move (use));
    }
    return uses;
}

/** What is heard at 0, 5 and 10 of a knob. */
std::array<PickupsOn, 3> acrossKnob (const CircuitConfig& config, const std::string& knob)
{
    std::array<PickupsOn, 3> heard;
    for (size_t i = 0; i < heard.size(); ++i)
    {
        CircuitConfig turned = config;
        turned.setting.knobs[knob] = 5.0 * static_cast<double> (i);
        heard[i] = pickupsOn (turned);
    }
    return heard;
}

bool isBlend (const std::array<PickupsOn, 3>& heard)
{
    return heard[0] != heard[2] && ! heard[0].empty() && ! heard[2].empty() && heard[1] != heard[0] && heard[1] != heard[2];
}

/** Whether turning a knob to 0 darkens, at some position of some switch. */
bool darkens (const CircuitConfig& config, const std::string& knob)
{
    std::vector<Setting> settings { config.setting };
    for (const auto& control : controls (config.harness))
        for (const auto& position : control.positions)
        {
            settings.push_back (config.setting);
            settings.back().levers[control.name] = position;
        }
    return std::any_of (settings.begin(), settings.end(),
                        [&] (const Setting& setting)
                        {
                            CircuitConfig open = config, down = config;
                            open.setting = down.setting = setting;
                            open.setting.knobs[knob] = 10.0;
                            down.setting.knobs[knob] = 0.0;
                            return treble (down.response()) < treble (open.response()) - 3.0;
                        });
}
}

std::vector<ControlUse> controlUses (const CircuitConfig& config)
{
    const auto volumes = volumeKnobs (config.harness, config.setting);
    std::vector<ControlUse> all;
    for (const auto& control : controls (config.harness))
    {
        ControlUse use;
        use.control = control;
        use.positions = positionUses (config, control);
        if (! control.positions.empty())
            use.kind = ControlUse::Kind::lever;
        else if (const auto across = acrossKnob (config, control.name); isBlend (across))
        {
            use.kind = ControlUse::Kind::blend;
            use.blended = across;
        }
        else if (std::find (volumes.begin(), volumes.end(), control.name) != volumes.end())
            use.kind = ControlUse::Kind::volume;
        else if (darkens (config, control.name))
            use.kind = ControlUse::Kind::tone;
        all.push_back (std::move (use));
    }
    return all;
}

int numPickups (const Harness& harness)
{
    return static_cast<int> (std::count_if (harness.parts().begin(), harness.parts().end(),
                                            [] (const Part& part) { return part.as<PickupPart>() != nullptr; }));
}
}
