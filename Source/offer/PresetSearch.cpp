#include "offer/PresetSearch.h"

#include "job/Reader.h"

#include <algorithm>

namespace coldiron
{
namespace
{
PresetNames namesOf (const std::string& name, const std::shared_ptr<const Preset>& preset, Diagnostics& diagnostics)
{
    PresetNames names { name, {}, {}, {} };
    if (preset == nullptr) // gone since it was listed
        return names;
    for (const auto& fault : preset->faults)
        diagnostics.push_back (fault);
    if (! preset->json)
        return names;
    const auto& json = *preset->json;
    names.name = json.textAt ("name");
    if (names.name.empty())
        names.name = json.textAt ("title");
    names.told = json.textAt ("wish") + " " + json.textAt ("says");
    if (const auto* others = json.find ("also_called"))
        for (const auto& other : others->items)
            if (other.kind == Json::Kind::text)
                names.alsoCalled.push_back (other.text);
    return names;
}
}

std::vector<std::string> PresetNames::all() const
{
    std::vector<std::string> names { preset, name };
    names.insert (names.end(), alsoCalled.begin(), alsoCalled.end());
    return names;
}

std::vector<PresetNames> presetNames (const std::string& kind, const PresetFolders& presets, Diagnostics& diagnostics)
{
    std::vector<PresetNames> all;
    for (const auto& preset : presets.list (kind))
        all.push_back (namesOf (preset, presets.find (kind, preset), diagnostics));
    return all;
}

std::vector<PresetNames> bestNamed (const std::string& asked, const std::vector<PresetNames>& all, WordMatch& match)
{
    std::vector<PresetNames> best;
    WordScore most;
    for (const auto& names : all)
    {
        const auto score = matchWords (asked, names.all(), names.told);
        if (score > most)
            best.clear();
        most = std::max (most, score);
        if (score == most && score.match != WordMatch::none)
            best.push_back (names);
    }
    match = most.match;
    return best;
}
}
