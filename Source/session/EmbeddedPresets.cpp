#include "session/EmbeddedPresets.h"

#include <algorithm>
#include <array>

namespace coldiron
{
namespace fs = std::filesystem;

namespace
{
const std::array<std::string, 5> kinds { "guitars", "pickups", "switches", "tapers", "rewires" };

void collect (const JobTree& tree, const PresetFolders& folders, std::map<std::string, std::string>& found)
{
    if (tree.is_structured())
    {
        for (const JobTree& item : tree)
            collect (item, folders, found);
        return;
    }
    if (! tree.is_string())
        return;

    // Which key names which kind is the reader's business; a text that is a preset's name is taken for one.
    const auto name = tree.get<std::string>();
    if (name.empty() || name.size() > 100 || name.find_first_of ("/\\.") != std::string::npos)
        return;
    for (const std::string& kind : kinds)
    {
        const std::string key = kind + "/" + name;
        if (found.count (key) != 0)
            continue;
        const auto preset = folders.find (kind, name);
        if (preset == nullptr || preset->text.empty())
            continue;
        found[key] = preset->text;
        collect (parseJobTree (preset->text), folders, found);
    }
}
}

std::map<std::string, std::string> presetsNamedBy (const JobTree& job, const PresetFolders& folders)
{
    std::map<std::string, std::string> found;
    collect (job, folders, found);
    return found;
}

std::map<std::string, std::string> presetsKeptIn (const JobTree& state)
{
    std::map<std::string, std::string> kept;
    const auto found = state.find ("presets");
    if (found == state.end() || ! found->is_object())
        return kept;
    for (const auto& [key, text] : found->items())
    {
        const size_t slash = key.find ('/');
        const bool isKind = std::find (kinds.begin(), kinds.end(), key.substr (0, slash)) != kinds.end();
        if (isKind && slash != std::string::npos && text.is_string())
            kept[key] = text.get<std::string>();
    }
    return kept;
}
}
