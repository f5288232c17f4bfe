#include "job/Presets.h"

#include "files/Quantity.h"

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

/** Where the shipped presets may lie, the likeliest first. */
std::vector<fs::path> shippedPlaces()
{
    std::vector<fs::path> places;
    std::error_code ignored;
    addNear (places, fs::read_symlink ("/proc/self/exe", ignored));
    Dl_info library {};
    if (dladdr (reinterpret_cast<const void*> (&shippedPlaces), &library) != 0 && library.dli_fname != nullptr)
        addNear (places, fs::absolute (library.dli_fname, ignored));
    places.emplace_back ("/usr/local/share/coldiron/presets");
    places.emplace_back ("/usr/share/coldiron/presets");
    places.emplace_back (COLDIRON_SOURCE_PRESETS);
    for (auto& place : places)
        place = place.lexically_normal();
    return places;
}
}

PresetFolders::PresetFolders (const std::vector<fs::path>& paths)
{
    for (const auto& path : paths)
        sources.push_back (std::make_shared<const PresetFolder> (path));
}

PresetFolders PresetFolders::standard (const std::vector<fs::path>& extra)
{
    auto all = extra;
    Diagnostics bad;
    for (const auto& folder : extra)
        if (const auto why = whyNoFolder (folder); ! why.empty())
            bad.push_back ({ folder.string(), 0, why });
    if (const auto user = userFolder(); ! user.empty())
        all.push_back (user);
    std::vector<fs::path> places;
    if (const auto given = environment ("COLDIRON_PRESETS"); ! given.empty())
    {
        all.emplace_back (given);
        if (const auto why = whyNoFolder (given); ! why.empty())
            bad.push_back ({ "COLDIRON_PRESETS", 0, given + ": " + why });
    }
    else
    {
        places = shippedPlaces();
        if (const auto found = std::find_if (places.begin(), places.end(), isFolder); found != places.end())
        {
            all.push_back (*found);
            places.clear();
        }
    }
    PresetFolders result (all);
    result.notThere = std::move (places);
    result.bad = std::move (bad);
    return result;
}

PresetFolders PresetFolders::behind (std::shared_ptr<const PresetSource> first) const
{
    auto result = *this;
    result.sources.insert (result.sources.begin(), std::move (first));
    return result;
}

PresetFolders PresetFolders::behind (const fs::path& folder) const
{
    return behind (std::make_shared<const PresetFolder> (folder));
}

std::shared_ptr<const Preset> PresetFolders::find (const std::string& folder, const std::string& name) const
{
    for (const auto& source : sources)
        if (auto preset = source->find (folder, name))
            return preset;
    return nullptr;
}

std::vector<std::string> PresetFolders::list (const std::string& folder) const
{
    std::set<std::string> names;
    for (const auto& source : sources)
        for (auto& name : source->list (folder))
            names.insert (std::move (name));
    return { names.begin(), names.end() };
}

std::vector<fs::path> PresetFolders::folders() const
{
    std::vector<fs::path> paths;
    for (const auto& source : sources)
        if (const auto* folder = dynamic_cast<const PresetFolder*> (source.get()))
            paths.push_back (folder->path());
    return paths;
}

std::string PresetFolders::lookedIn() const
{
    std::vector<std::string> names;
    for (const auto& list : { folders(), notThere })
        for (const auto& folder : list)
            names.push_back (folder.string());
    return "looked in " + listed (names, 20) + "; set COLDIRON_PRESETS or use --presets DIR";
}
}
