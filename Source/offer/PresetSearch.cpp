#include "offer/PresetSearch.h"

#include "files/Limits.h"
#include "job/Reader.h"

#include <algorithm>

namespace coldiron
{
namespace
{
std::string textAt (const Json& tree, const char* key)
{
    const auto* value = tree.find (key);
    return value != nullptr && value->kind == Json::Kind::text ? value->text : std::string();
}

PresetNames read (const std::string& preset, const std::filesystem::path& path, Diagnostics& diagnostics)
{
    PresetNames names { preset, {}, {}, {} };
    Json tree;
    const auto text = wholeText (path, "a preset", limits::fileBytes, diagnostics);
    if (! text || ! parseJson (*text, path.string(), tree, diagnostics))
        return names;
    names.name = textAt (tree, "name");
    if (names.name.empty())
        names.name = textAt (tree, "title");
    names.told = textAt (tree, "wish") + " " + textAt (tree, "says");
    if (const auto* others = tree.find ("also_called"))
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
        all.push_back (read (preset, presets.find (kind, preset), diagnostics));
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
