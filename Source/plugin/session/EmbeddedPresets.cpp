#include "plugin/session/EmbeddedPresets.h"

#include <algorithm>
#include <fstream>
#include <random>
#include <sstream>

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
        const fs::path file = found.count (key) == 0 ? folders.find (kind, name) : fs::path();
        if (file.empty())
            continue;
        std::ifstream stream (file, std::ios::binary);
        std::ostringstream text;
        if (! stream || ! (text << stream.rdbuf()))
            continue;
        found[key] = text.str();
        collect (parseJobTree (text.str()), folders, found);
    }
}

bool isPlainName (const std::string& name)
{
    return ! name.empty() && name.size() <= 100 && name.find_first_of ("/\\.:") == std::string::npos;
}
}

std::map<std::string, std::string> presetsNamedBy (const JobTree& job, const PresetFolders& folders)
{
    std::map<std::string, std::string> found;
    collect (job, folders, found);
    return found;
}

fs::path unpackPresets (const std::map<std::string, std::string>& presets)
{
    std::error_code fault;
    std::random_device random;
    const fs::path folder = fs::temp_directory_path (fault) / ("coldiron-" + std::to_string (random()) + std::to_string (random()));
    if (fault || ! fs::create_directory (folder, fault))
        return {};
    for (const auto& [key, text] : presets)
    {
        const size_t slash = key.find ('/');
        const std::string kind = key.substr (0, slash), name = slash == std::string::npos ? "" : key.substr (slash + 1);
        bool written = std::find (kinds.begin(), kinds.end(), kind) != kinds.end() && isPlainName (name);
        if (written)
        {
            fs::create_directories (folder / kind, fault);
            std::ofstream stream (folder / kind / (name + ".json"), std::ios::binary);
            written = static_cast<bool> (stream << text) && static_cast<bool> (stream.flush());
        }
        if (! written)
        {
            fs::remove_all (folder, fault);
            return {};
        }
    }
    return folder;
}
}
