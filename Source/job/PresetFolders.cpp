#include "job/Job.h"

#include "files/Quantity.h"
#include "files/RegularFile.h"

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

PresetFolders PresetFolders::standard (const std::vector<fs::path>& extra)
{
    PresetFolders result { extra, {}, {} };
    for (const auto& folder : extra)
        if (const auto why = whyNoFolder (folder); ! why.empty())
            result.unreadable.push_back ({ folder.string(), 0, why });
    if (const auto user = userFolder(); ! user.empty())
        result.folders.push_back (user);
    if (const auto given = environment ("COLDIRON_PRESETS"); ! given.empty())
    {
        result.folders.emplace_back (given);
        if (const auto why = whyNoFolder (given); ! why.empty())
            result.unreadable.push_back ({ "COLDIRON_PRESETS", 0, given + ": " + why });
        return result;
    }
    const auto places = shippedPlaces();
    const auto found = std::find_if (places.begin(), places.end(), isFolder);
    if (found != places.end())
        result.folders.push_back (*found);
    else
        result.notThere = places;
    return result;
}

std::string PresetFolders::lookedIn() const
{
    std::vector<std::string> names;
    for (const auto* list : { &folders, &notThere })
        for (const auto& folder : *list)
            names.push_back (folder.string());
    return "looked in " + listed (names, 20) + "; set COLDIRON_PRESETS or use --presets DIR";
}

bool isPresetName (const std::string& name)
{
    return ! name.empty() && name.size() <= 64
           && std::all_of (name.begin(), name.end(),
                           [] (char c) { return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '-'; });
}

const std::string* PresetFolders::carriedText (const std::string& kind, const std::string& name) const
{
    const auto found = isPresetName (name) ? carried.find (kind + "/" + name) : carried.end();
    return found == carried.end() ? nullptr : &found->second;
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
    for (const auto& [key, text] : carried)
        if (key.starts_with (kind + "/") && isPresetName (key.substr (kind.size() + 1)))
            names.insert (key.substr (kind.size() + 1));
    for (const auto& folder : folders)
    {
        std::error_code error;
        for (fs::directory_iterator entry (folder / kind, error), end; ! error && entry != end; entry.increment (error))
        {
            const auto name = entry->path().stem().string();
            std::error_code ignored;
            if (entry->path().extension() == ".json" && isPresetName (name)
                && entry->is_regular_file (ignored)) // no link into nothing
                names.insert (name);
        }
    }
    return { names.begin(), names.end() };
}
}
