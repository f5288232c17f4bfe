#include "job/Readers.h"

#include <algorithm>

namespace coldiron
{
namespace
{
StringSet stringsOf (const Guitar& guitar, const std::vector<std::string>& played, int only)
{
    StringSet set;
    set.strings = guitar.strings;
    set.only = only < static_cast<int> (set.strings.size()) ? only : -1;
    bool any = false;
    for (const auto& string : set.strings)
    {
        const bool ticked = std::find (played.begin(), played.end(), string.name) != played.end();
        set.played.push_back (ticked);
        any = any || ticked;
    }
    if (! any) // nothing ticked, or ticked on a guitar with other strings
        set.played.assign (set.strings.size(), true);
    return set;
}
}

const Option* Job::find (const std::string& letter) const
{
    const auto found =
        std::find_if (options.begin(), options.end(), [&] (const Option& option) { return option.letter == letter; });
    return found == options.end() ? nullptr : &*found;
}

CircuitConfig Job::recordedConfig (int take) const
{
    if (take < 0)
        return { guitar.harness, {}, recording, stringsOf (guitar, {}, onlyString) };
    const auto& entry = takes.at (static_cast<size_t> (take));
    return { entry.harness, entry.setting, recording, stringsOf (guitar, entry.strings, onlyString) };
}

CircuitConfig Job::optionConfig (const Option& option) const
{
    static const std::vector<std::string> all;
    const auto& played = takes.empty() ? all : takes.at (static_cast<size_t> (option.take)).strings;
    return { option.harness, option.setting, option.listening, stringsOf (option.guitar, played, onlyString) };
}

bool Job::askOnly (const std::string& name)
{
    const auto found =
        std::find_if (guitar.strings.begin(), guitar.strings.end(), [&] (const GuitarString& s) { return s.name == name; });
    onlyString = found == guitar.strings.end() ? -1 : static_cast<int> (found - guitar.strings.begin());
    return name.empty() || onlyString >= 0;
}

TakeChoice Job::takeChoice (const Option& option) const
{
    std::vector<CircuitConfig> sides;
    for (int take = 0; take < static_cast<int> (takes.size()); ++take)
        sides.push_back (recordedConfig (take));
    return nearestTake (sides, optionConfig (option), option.ownTake);
}

namespace
{
std::optional<Job> readJobOf (const std::optional<Json>& json, const std::filesystem::path& folder, const PresetFolders& presets,
                              Diagnostics& diagnostics)
{
    const auto before = diagnostics.raised();
    Library library (presets, diagnostics);
    if (! json || ! checkTag (*json, "job", diagnostics))
        return std::nullopt;
    auto job = readJobTree (*json, folder, library);
    if (diagnostics.raised() != before)
        return std::nullopt;
    return job;
}
}

std::optional<Job> readJob (const std::filesystem::path& path, const PresetFolders& presets, Diagnostics& diagnostics)
{
    const auto before = diagnostics.raised();
    const auto text = wholeText (path, "a job", limits::fileBytes, diagnostics);
    auto job = readJobOf (text ? parsePreset (*text, path.string(), "job", diagnostics) : std::nullopt, path.parent_path(),
                          presets, diagnostics);
    if (diagnostics.raised() != before)
        return std::nullopt;
    job->file = path;
    return job;
}

std::optional<Job> readJobText (const std::string& text, const std::filesystem::path& folder, const PresetFolders& presets,
                                Diagnostics& diagnostics)
{
    const auto before = diagnostics.raised();
    std::optional<Json> json { Json() };
    if (! parseJson (text, "job", *json, diagnostics))
        json.reset();
    auto job = readJobOf (json, folder, presets, diagnostics);
    if (diagnostics.raised() != before)
        return std::nullopt;
    return job;
}

std::optional<Guitar> readGuitar (const std::string& preset, const PresetFolders& presets, Diagnostics& diagnostics)
{
    Library library (presets, diagnostics);
    const auto before = diagnostics.raised();
    const auto resolved = library.resolve ("guitar", preset);
    auto guitar = resolved ? readGuitar (*resolved, library) : std::nullopt;
    return diagnostics.raised() == before ? guitar : std::nullopt;
}

std::optional<RewireInfo> readRewireInfo (const std::string& preset, const PresetFolders& presets, Diagnostics& diagnostics)
{
    Library library (presets, diagnostics);
    const auto resolved = library.resolve ("rewire", preset);
    return resolved ? readRewireInfo (*resolved, library) : std::nullopt;
}

std::optional<RewireUse> fillRewire (const std::string& preset, const std::map<std::string, std::string>& arguments,
                                     const Harness& harness, const PresetFolders& presets, Diagnostics& diagnostics)
{
    Library library (presets, diagnostics);
    auto entry = Json::object ({ { "use", preset } });
    for (const auto& [name, value] : arguments)
        entry[name] = value;
    auto use = readRewireUse (entry, harness, library);
    if (! use)
        return std::nullopt;
    if (const auto why = whyNotFilled (*use, harness); ! why.empty())
    {
        addDiagnostic (diagnostics, std::string(), 0, "\"" + use->name + "\" cannot be done: " + why);
        return std::nullopt;
    }
    return use;
}
}
