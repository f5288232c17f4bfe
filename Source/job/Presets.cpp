#include "job/Presets.h"

#include "job/Reader.h"

#include <algorithm>

namespace coldiron
{
namespace fs = std::filesystem;

namespace
{
void parse (Preset& preset, const std::string& folder)
{
    preset.json = parsePreset (preset.text, preset.label, presetKindOf (folder), preset.faults);
}

std::string presetTag (const std::string& kind) { return "\"coldiron\": \"" + kind + " 1\""; }
}

bool isPresetName (const std::string& name)
{
    return ! name.empty() && name.size() <= 64
           && std::all_of (name.begin(), name.end(),
                           [] (char c) { return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '-'; });
}

std::string presetFolderOf (const std::string& kind) { return kind == "switch" ? "switches" : kind + "s"; }

std::string presetKindOf (const std::string& folder)
{
    return folder == "switches" ? "switch" : folder.substr (0, folder.size() - (folder.empty() ? 0 : 1));
}

bool checkTag (const Json& json, const std::string& kind, Diagnostics& diagnostics)
{
    if (! json.isObject())
    {
        addDiagnostic (diagnostics, json, "found " + json.kindName() + ", expected { " + presetTag (kind) + ", ... }");
        return false;
    }
    const auto* tag = json.find ("coldiron");
    if (tag == nullptr)
        addDiagnostic (diagnostics, json, "the file does not say what it is; begin it with " + presetTag (kind));
    else if (tag->text != kind + " 1")
        addDiagnostic (diagnostics, *tag, "\"coldiron\": found " + tag->kindName() + ", expected " + presetTag (kind));
    return true;
}

std::optional<Json> parsePreset (const std::string& text, const std::string& label, const std::string& kind,
                                 Diagnostics& diagnostics)
{
    Json json;
    if (text.empty())
        addDiagnostic (diagnostics, label, 0, "the file is empty; expected { " + presetTag (kind) + ", ... }");
    else if (parseJson (text, label, json, diagnostics))
        return json;
    return std::nullopt;
}

PresetFolder::PresetFolder (fs::path path) : root (std::move (path)) {}

std::shared_ptr<const Preset> PresetFolder::find (const std::string& folder, const std::string& name) const
{
    if (! isPresetName (name))
        return nullptr;
    const auto file = root / folder / (name + ".json");
    const auto stamp = stampOf (file);
    if (! stamp)
        return nullptr;
    const std::scoped_lock lock (mutex);
    if (const auto found = known.find (file); found != known.end() && found->second.stamp == *stamp)
        return found->second.preset;
    auto preset = std::make_shared<Preset>();
    preset->label = file.string();
    preset->file = file;
    if (auto text = wholeText (file, "a " + presetKindOf (folder), limits::fileBytes, preset->faults))
    {
        preset->text = std::move (*text);
        parse (*preset, folder);
        // A file just written may be written again within the same tick of its clock.
        if (stamp->isSettled() && stampOf (file) == stamp)
            known.insert_or_assign (file, Known { *stamp, preset });
    }
    return preset;
}

std::vector<std::string> PresetFolder::list (const std::string& folder) const
{
    std::vector<std::string> names;
    std::error_code error;
    for (fs::directory_iterator entry (root / folder, error), end; ! error && entry != end; entry.increment (error))
    {
        auto name = entry->path().stem().string();
        std::error_code ignored;
        if (entry->path().extension() == ".json" && isPresetName (name)
            && entry->is_regular_file (ignored)) // no link into nothing
            names.push_back (std::move (name));
    }
    std::sort (names.begin(), names.end());
    return names;
}

CarriedPresets::CarriedPresets (std::map<std::string, std::string> given) : texts (std::move (given)) {}

std::shared_ptr<const Preset> CarriedPresets::find (const std::string& folder, const std::string& name) const
{
    const auto key = folder + "/" + name;
    const auto text = isPresetName (name) ? texts.find (key) : texts.end();
    if (text == texts.end())
        return nullptr;
    const std::scoped_lock lock (mutex);
    auto& preset = known[key];
    if (preset == nullptr)
    {
        auto made = std::make_shared<Preset>();
        made->label = key + ", kept with the job";
        made->text = text->second;
        parse (*made, folder);
        preset = std::move (made);
    }
    return preset;
}

std::vector<std::string> CarriedPresets::list (const std::string& folder) const
{
    std::vector<std::string> names;
    for (const auto& [key, text] : texts)
        if (key.starts_with (folder + "/") && isPresetName (key.substr (folder.size() + 1)))
            names.push_back (key.substr (folder.size() + 1));
    return names;
}
}
