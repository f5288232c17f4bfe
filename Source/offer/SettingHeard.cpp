// Where the controls must stand for a rewire to be heard at all: at its thrown switch, at another pickup, or turned down.

#include "offer/OfferRewires.h"

#include "response/Volumes.h"

#include <algorithm>
#include <cmath>

namespace coldiron
{
namespace
{
constexpr double heardDb = 0.5, heardHumDb = 1.0;

double dbOfPower (double power) { return 10.0 * std::log10 (std::max (power, 1e-30)); }

bool differs (const GuitarResponse& a, const GuitarResponse& b)
{
    if (a.isSilent() || b.isSilent())
        return false;
    for (double hz = 80.0; hz < 8000.0; hz *= std::exp2 (1.0 / 3.0))
        if (std::abs (dbOfPower (a.power (hz)) - dbOfPower (b.power (hz))) > heardDb)
            return true;
    return std::abs (dbOfPower (std::norm (a.hum (150.0))) - dbOfPower (std::norm (b.hum (150.0)))) > heardHumDb;
}

Setting over (Setting base, const Setting& more)
{
    for (const auto& [name, value] : more.knobs)
        base.knobs[name] = value;
    for (const auto& [name, position] : more.levers)
        base.levers[name] = position;
    return base;
}

/** What of a setting a harness has controls for. */
Setting known (const Setting& setting, const Harness& harness)
{
    Setting result;
    for (const auto& control : controls (harness))
    {
        if (const auto knob = setting.knobs.find (control.name); control.positions.empty() && knob != setting.knobs.end())
            result.knobs.insert (*knob);
        if (const auto lever = setting.levers.find (control.name);
            lever != setting.levers.end()
            && std::find (control.positions.begin(), control.positions.end(), lever->second) != control.positions.end())
            result.levers.insert (*lever);
    }
    return result;
}

bool has (const std::vector<Control>& all, const std::string& name)
{
    return std::any_of (all.begin(), all.end(), [&] (const Control& control) { return control.name == name; });
}

/** Ways to throw what is new, a switch of two positions first to the one it does not rest in. */
std::vector<Setting> waysToThrow (const std::vector<Control>& fresh)
{
    std::vector<Setting> ways { {} };
    for (const auto& control : fresh)
    {
        std::vector<Setting> more;
        for (const auto& way : ways)
            for (const auto& position : control.positions)
                if (position != control.standard && more.size() < 16)
                {
                    more.push_back (way);
                    more.back().levers[control.name] = position;
                }
        if (! more.empty())
            ways = std::move (more);
    }
    return ways;
}

/** Nothing more; one of the guitar's own switches elsewhere. */
std::vector<Setting> ownSwitches (const std::vector<Control>& own)
{
    std::vector<Setting> ways { {} };
    for (const auto& control : own)
        for (const auto& position : control.positions)
            ways.push_back ({ {}, { { control.name, position } } });
    return ways;
}

/** Nothing more; the knobs worked on at half, nearly down and down; the others that are no volumes nearly down, where a tone
    control is heard. */
std::vector<Setting> knobsDown (const CircuitConfig& now, const std::vector<Control>& all, const std::set<std::string>& worked)
{
    const auto volumes = volumeKnobs (now.harness, now.setting);
    std::vector<Setting> ways { {} };
    for (const double knob : { 5.0, 2.0, 0.0 })
    {
        Setting way;
        for (const auto& name : worked)
            way.knobs[name] = knob;
        if (! worked.empty())
            ways.push_back (way);
    }
    Setting tones;
    for (const auto& control : all)
        if (control.positions.empty() && std::find (volumes.begin(), volumes.end(), control.name) == volumes.end())
            tones.knobs[control.name] = 2.0;
    ways.push_back (tones);
    return ways;
}
}

std::optional<Setting> settingHeard (const CircuitConfig& now, const Harness& rewired, const std::set<std::string>& worked)
{
    const auto own = controls (now.harness), all = controls (rewired);
    std::vector<Control> fresh;
    std::copy_if (all.begin(), all.end(), std::back_inserter (fresh),
                  [&] (const Control& control) { return ! has (own, control.name); });
    auto knobsWorked = worked;
    for (const auto& control : fresh)
        if (control.positions.empty())
            knobsWorked.insert (control.name);
    auto ways = knobsDown (now, all, knobsWorked);
    const auto volumes = volumeKnobs (rewired, {});
    Setting end; // of a knob that is new and no volume: what it was fitted for
    for (const auto& control : fresh)
        if (control.positions.empty() && std::find (volumes.begin(), volumes.end(), control.name) == volumes.end())
            end.knobs[control.name] = 0.0;
    if (! end.knobs.empty())
        ways.insert (ways.begin(), end);
    for (const auto& knobs : ways)
        for (const auto& levers : ownSwitches (own))
            for (const auto& thrown : waysToThrow (fresh))
            {
                const auto more = over (over (thrown, levers), knobs);
                CircuitConfig before = now, after = now;
                before.setting = over (now.setting, known (more, now.harness));
                after.harness = rewired;
                after.setting = over (known (now.setting, rewired), known (more, rewired));
                if (differs (before.response(), after.response()))
                    return known (more, rewired);
            }
    return std::nullopt;
}

std::vector<std::string> switchesStillAtRest (const CircuitConfig& recorded, const CircuitConfig& option)
{
    const auto own = controls (recorded.harness);
    std::vector<std::string> resting;
    for (const auto& control : controls (option.harness))
    {
        const auto set = option.setting.levers.find (control.name);
        if (! control.positions.empty() && ! has (own, control.name)
            && (set == option.setting.levers.end() || set->second == control.standard))
            resting.push_back (control.name);
    }
    const bool same = ! resting.empty() && ! differs (recorded.response(), option.response());
    return same ? resting : std::vector<std::string> {};
}
}
