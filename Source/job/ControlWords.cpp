#include "job/ControlWords.h"

#include "audition/Drives.h"
#include "audition/PickupsHeard.h"
#include "audition/Volumes.h"

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
std::string splitWords (const Voice& voice, const std::set<std::string>& heard)
{
    const auto drives = drivesOf (voice, 500.0);
    const auto& all = voice.guitar().coils;
    std::map<std::string, double> most;
    for (size_t i = 0; i < all.size(); ++i)
        most[all[i].pickup] = std::max (most[all[i].pickup], std::abs (drives[static_cast<int> (i)]));
    std::map<std::string, std::pair<int, std::vector<std::string>>> coils; // of each pickup: how many, and those heard
    for (size_t i = 0; i < all.size(); ++i)
    {
        auto& [count, on] = coils[all[i].pickup];
        ++count;
        if (std::abs (drives[static_cast<int> (i)]) > 0.316 * most[all[i].pickup])
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

double treble (const Voice& voice)
{
    return 20.0 * std::log10 (std::max (std::abs (voice.plain (3000.0)), 1e-12) / std::max (std::abs (voice.plain (300.0)), 1e-12));
}

std::string heardWords (const Side& side)
{
    const auto heard = pickupsHeard (side);
    return heard.empty() ? "silent" : splitWords (side.voice(), heard);
}

/** What else tells two positions with the same pickups apart. */
std::string againstWords (const Side& side, const Side& other, const std::string& otherName)
{
    const auto a = side.voice(), b = other.voice();
    if (a.isSilent() || b.isSilent())
        return {};
    const double louder = 20.0 * std::log10 (std::abs (a.plain (500.0)) / std::abs (b.plain (500.0))), brighter = treble (a) - treble (b);
    std::string words = louder > 2.0 ? "louder" : louder < -2.0 ? "quieter" : "";
    if (std::abs (brighter) > 2.0)
        words += (words.empty() ? "" : " and ") + std::string (brighter > 0.0 ? "brighter" : "darker");
    return words.empty() ? words : ", " + words + " than \"" + otherName + "\"";
}

std::vector<std::pair<std::string, std::string>> positionWords (const Side& side, const Control& control)
{
    std::vector<std::pair<std::string, std::string>> words;
    std::vector<std::string> heard;
    std::vector<Side> sides;
    for (const auto& position : control.positions)
    {
        sides.push_back (side);
        sides.back().setting.levers[control.name] = position;
        heard.push_back (heardWords (sides.back()));
        const auto same = static_cast<size_t> (std::find (heard.begin(), heard.end(), heard.back()) - heard.begin());
        words.emplace_back (position, heard.back() + (same + 1 < heard.size() ? againstWords (sides.back(), sides[same], control.positions[same]) : ""));
    }
    return words;
}

/** "blend, ..." where a knob's two ends have different pickups on; empty for others. */
std::string blendWords (const Side& side, const std::string& knob)
{
    std::vector<std::string> heard;
    for (const double at : { 0.0, 5.0, 10.0 })
    {
        Side turned = side;
        turned.setting.knobs[knob] = at;
        heard.push_back (heardWords (turned));
    }
    const bool isBlend = heard[0] != heard[2] && heard[0] != "silent" && heard[2] != "silent" && heard[1] != heard[0] && heard[1] != heard[2];
    return isBlend ? "blend, 0 to 10: at 0 " + heard[0] + ", at 5 " + heard[1] + ", at 10 " + heard[2] : std::string();
}

/** Whether turning a knob to 0 darkens, at some position of some switch. */
bool darkens (const Side& side, const std::string& knob)
{
    std::vector<Setting> settings { side.setting };
    for (const auto& control : controls (side.harness))
        for (const auto& position : control.positions)
        {
            settings.push_back (side.setting);
            settings.back().levers[control.name] = position;
        }
    return std::any_of (settings.begin(), settings.end(),
                        [&] (const Setting& setting)
                        {
                            Side open = side, down = side;
                            open.setting = down.setting = setting;
                            open.setting.knobs[knob] = 10.0;
                            down.setting.knobs[knob] = 0.0;
                            return treble (down.voice()) < treble (open.voice()) - 3.0;
                        });
}
}

std::vector<ControlWords> controlWords (const Side& side)
{
    const auto volumes = volumeKnobs (side.harness, side.setting);
    std::vector<ControlWords> all;
    for (const auto& control : controls (side.harness))
    {
        ControlWords words { control, {}, {} };
        if (control.positions.empty())
            words.about = ! blendWords (side, control.name).empty() ? blendWords (side, control.name)
                          : std::find (volumes.begin(), volumes.end(), control.name) != volumes.end() ? "volume, 0 to 10: 10 is all the way up"
                          : darkens (side, control.name)                                            ? "tone, 0 to 10: 10 is brightest"
                                                                                                    : "knob, 0 to 10";
        else
            words.about = "switch, " + std::to_string (control.positions.size()) + " positions";
        words.positions = positionWords (side, control);
        all.push_back (std::move (words));
    }
    return all;
}
}
