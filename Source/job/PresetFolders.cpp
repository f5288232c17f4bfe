#include "job/Job.h"

#include <dlfcn.h>

#include <algorithm>
#include <cstdlib>
#include <set>

namespace coldiron
{
namespace fs = std::filesystem;

namespace
{
std::string environment (const char* name)
{
    const auto* value = std::getenv (name);
    return value != nullptr ? value : "";
}

fs::path userFolder()
{
    if (const auto data = environment ("XDG_DATA_HOME"); ! data.empty())
        return fs::path (data) / "coldiron" / "presets";
    if (const auto home = environment ("HOME"); ! home.empty())
        return fs::path (home) / ".local" / "share" / "coldiron" / "presets";
    return {};
}

/** Folders near a program or plugin where its presets may have been put. */
void addNear (std::vector<fs::path>& places, const fs::path& binary)
{
    if (binary.empty())
        return;
    const auto folder = binary.parent_path();
    places.push_back (folder / "presets");
    places.push_back (folder / ".." / "Resources" / "presets");
    places.push_back (folder / ".." / "share" / "coldiron" / "presets");
}

fs::path shippedFolder()
{
    std::vector<fs::path> places;
    if (const auto given = environment ("COLDIRON_PRESETS"); ! given.empty())
        places.emplace_back (given);
    std::error_code ignored;
    addNear (places, fs::read_symlink ("/proc/self/exe", ignored));
    Dl_info library {};
    if (dladdr (reinterpret_cast<const void*> (&shippedFolder), &library) != 0 && library.dli_fname != nullptr)
        addNear (places, fs::absolute (library.dli_fname, ignored));
    places.emplace_back ("/usr/local/share/coldiron/presets");
    places.emplace_back ("/usr/share/coldiron/presets");
    places.emplace_back (COLDIRON_SOURCE_PRESETS);
    for (const auto& place : places)
        if (fs::is_directory (place, ignored))
            return place.lexically_normal();
    return {};
}
}

PresetFolders PresetFolders::standard (const std::vector<fs::path>& extra)
{
    PresetFolders result { extra };
    for (const auto& folder : { userFolder(), shippedFolder() })
        if (! folder.empty())
            result.folders.push_back (folder);
    return result;
}

bool isPresetName (const std::string& name)
{
    return ! name.empty() && name.size() <= 64
           && std::all_of (name.begin(), name.end(), [] (char c) { return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '-'; });
}

fs::path PresetFolders::find (const std::string& kind, const std::string& name) const
{
    if (! isPresetName (name))
        return {};
    std::error_code ignored;
    for (const auto& folder : folders)
        if (const auto file = folder / kind / (name + ".json"); fs::is_regular_file (file, ignored))
            return file;
    return {};
}

std::vector<std::string> PresetFolders::list (const std::string& kind) const
{
    std::set<std::string> names;
    for (const auto& folder : folders)
    {
        std::error_code ignored;
        for (const auto& entry : fs::directory_iterator (folder / kind, ignored))
            if (entry.path().extension() == ".json" && isPresetName (entry.path().stem().string()))
                names.insert (entry.path().stem().string());
    }
    return { names.begin(), names.end() };
}
}
