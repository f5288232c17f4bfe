#include "job/ControlWords.h"

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
std::string plain (std::string name)
{
    std::replace (name.begin(), name.end(), '-', ' ');
    return name;
}

std::string joined (const std::vector<std::string>& names)
{
    std::string text;
    for (size_t i = 0; i < names.size(); ++i)
        text += (i == 0 ? "" : i + 1 == names.size() ? " and " : ", ") + names[i];
    return text;
}

/** The pickups heard; of one that plays without some of its coils, those that are left: a coil counts from 10 dB under the
    pickup's strongest on, since a shorted one still couples into its neighbour. */
std::string splitWords (const GuitarResponse& response, const std::set<std::string>& heard)
{
    const auto h = sourceResponses (response, 500.0);
    const auto& all = response.guitar().coils;
    std::map<std::string, double> most;
    for (size_t i = 0; i < all.size(); ++i)
        most[all[i].pickup] = std::max (most[all[i].pickup], std::abs (h[static_cast<int> (i)]));
    std::map<std::string, std::pair<int, std::vector<std::string>>> coils; // of each pickup: how many, and those heard
    for (size_t i = 0; i < all.size(); ++i)
    {
        auto& [count, on] = coils[all[i].pickup];
        ++count;
        if (std::abs (h[static_cast<int> (i)]) > 0.316 * most[all[i].pickup])
            on.push_back (all[i].coil);
    }
    std::vector<std::string> words;
    for (const auto& pickup : heard)
    {
        const auto& [count, on] = coils[pickup];
        words.push_back (plain (pickup) + (static_cast<int> (on.size()) < count ? " (its " + joined (on) + " coil alone)" : ""));
    }
    return joined (words) + (words.size() > 1 ? " together" : coils.size() > 1 ? " alone" : "");
}

double treble (const GuitarResponse& response)
{
    return 20.0
           * std::log10 (std::max (std::abs (response.unisonResponse (3000.0)), 1e-12)
                         / std::max (std::abs (response.unisonResponse (300.0)), 1e-12));
}

std::string heardWords (const CircuitConfig& config)
{
    const auto heard = pickupsHeard (config);
    return heard.empty() ? "silent" : splitWords (config.response(), heard);
}

/** What else tells two positions with the same pickups apart. */
std::string againstWords (const CircuitConfig& config, const CircuitConfig& other, const std::string& otherName)
{
    const auto a = config.response(), b = other.response();
    if (a.isSilent() || b.isSilent())
        return {};
    const double louder = 20.0 * std::log10 (std::abs (a.unisonResponse (500.0)) / std::abs (b.unisonResponse (500.0))),
                 brighter = treble (a) - treble (b);
    std::string words = louder > 2.0 ? "louder" : louder < -2.0 ? "quieter" : "";
    if (std::abs (brighter) > 2.0)
        words += (words.empty() ? "" : " and ") + std::string (brighter > 0.0 ? "brighter" : "darker");
    return words.empty() ? words : ", " + words + " than \"" + otherName + "\"";
}

std::vector<std::pair<std::string, std::string>> positionWords (const CircuitConfig& config, const Control& control)
{
    std::vector<std::pair<std::string, std::string>> words;
    std::vector<std::string> heard;
    std::vector<CircuitConfig> sides;
    for (const auto& position : control.positions)
    {
        sides.push_back (config);
        sides.back().setting.levers[control.name] = position;
        heard.push_back (heardWords (sides.back()));
        const auto same = static_cast<size_t> (std::find (heard.begin(), heard.end(), heard.back()) - heard.begin());
        words.emplace_back (
            position,
            heard.back() + (same + 1 < heard.size() ? againstWords (sides.back(), sides[same], control.positions[same]) : ""));
    }
    return words;
}

/** "blend, ..." where a knob's two ends have different pickups on; empty for others. */
std::string blendWords (const CircuitConfig& config, const std::string& knob)
{
    std::vector<std::string> heard;
    for (const double at : { 0.0, 5.0, 10.0 })
    {
        CircuitConfig turned = config;
        turned.setting.knobs[knob] = at;
        heard.push_back (heardWords (turned));
    }
    const bool isBlend =
        heard[0] != heard[2] && heard[0] != "silent" && heard[2] != "silent" && heard[1] != heard[0] && heard[1] != heard[2];
    return isBlend ? "blend, 0 to 10: at 0 " + heard[0] + ", at 5 " + heard[1] + ", at 10 " + heard[2] : std::string();
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

std::vector<ControlWords> controlWords (const CircuitConfig& config)
{
    const auto volumes = volumeKnobs (config.harness, config.setting);
    std::vector<ControlWords> all;
    for (const auto& control : controls (config.harness))
    {
        ControlWords words { control, {}, {} };
        if (control.positions.empty())
            words.about = ! blendWords (config, control.name).empty() ? blendWords (config, control.name)
                          : std::find (volumes.begin(), volumes.end(), control.name) != volumes.end()
                              ? "volume, 0 to 10: 10 is all the way up"
                          : darkens (config, control.name) ? "tone, 0 to 10: 10 is brightest"
                                                           : "knob, 0 to 10";
        else
            words.about = "switch, " + std::to_string (control.positions.size()) + " positions";
        words.positions = positionWords (config, control);
        all.push_back (std::move (words));
    }
    return all;
}
}
