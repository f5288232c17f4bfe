#include "cli/Command.h"
#include "job/Limits.h"
#include "job/Reader.h"

#include <CLI/CLI.hpp>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <iostream>

namespace coldiron::cli
{
namespace
{
namespace fs = std::filesystem;
using Document = nlohmann::ordered_json;

const std::vector<std::string>& kinds()
{
    static const std::vector<std::string> all { "guitars", "pickups", "switches", "tapers", "rewires", "starters", "jobs" };
    return all;
}

/** "guitar" and "guitars" alike. */
std::string kindOf (const std::string& asked)
{
    for (const auto& kind : kinds())
        if (asked == kind || asked + "s" == kind || asked + "es" == kind)
            return kind;
    throw UsageFault ("there is no kind \"" + asked + "\" of presets; there are guitars, pickups, switches, tapers, rewires, starters, jobs");
}

std::string textOf (const PresetFolders& presets, const std::string& kind, const std::string& name)
{
    const auto path = presets.find (kind, name);
    if (path.empty())
        throw UsageFault ("there is no \"" + name + "\" among the " + kind + "; `coldiron presets " + kind + "` lists them");
    Faults faults;
    const auto text = wholeText (path, "a preset", limits::fileBytes, faults);
    if (! text)
        throw JobFault (faults.front().text());
    return *text;
}

/** The name inside a preset for people; empty where the file has none or cannot be read, and then `faults` says why. */
std::string titleOf (const fs::path& file, Faults& faults)
{
    Json tree;
    const auto text = wholeText (file, "a preset", limits::fileBytes, faults);
    if (text && parseJson (*text, file.string(), tree, faults))
        for (const char* key : { "name", "title" })
            if (const auto* title = tree.find (key); title != nullptr && title->kind == Json::Kind::text)
                return title->text;
    return "";
}

int listKinds (const PresetFolders& presets, bool json)
{
    Document document = Document::object();
    if (std::all_of (kinds().begin(), kinds().end(), [&] (const auto& kind) { return presets.list (kind).empty(); }))
        throw JobFault ("no presets were found; " + presets.lookedIn());
    for (const auto& kind : kinds())
    {
        const auto names = presets.list (kind);
        document[kind] = names;
        if (! json)
            std::cout << format ("%-10s %zu\n", kind.c_str(), names.size());
    }
    if (json)
        std::cout << document.dump (2) << "\n";
    return fine;
}

int listKind (const PresetFolders& presets, const std::string& kind, bool json)
{
    const auto names = presets.list (kind);
    if (names.empty())
        throw JobFault ("no " + kind + " were found; " + presets.lookedIn());
    Faults faults;
    size_t width = 0;
    for (const auto& name : names)
        width = std::max (width, name.size());
    Document document = Document::array();
    for (const auto& name : names)
    {
        const auto file = presets.find (kind, name);
        const auto title = titleOf (file, faults);
        document.push_back ({ { "preset", name }, { "name", title }, { "file", file.string() } });
        if (! json)
            std::cout << format ("%-*s  %s\n", static_cast<int> (width), name.c_str(), title.c_str());
    }
    if (json)
        std::cout << document.dump (2, ' ', false, Document::error_handler_t::replace) << "\n";
    for (const auto& fault : faults)
        std::cerr << fault.text() << "\n";
    return faults.empty() ? fine : jobIsWrong;
}

int showPreset (const PresetFolders& presets, const std::string& kind, const std::string& name, bool json)
{
    const auto text = textOf (presets, kind, name);
    if (! json)
    {
        std::cout << text << (text.empty() || text.back() != '\n' ? "\n" : "");
        return fine;
    }
    Json tree;
    Faults faults;
    const auto path = presets.find (kind, name);
    if (! parseJson (text, path.string(), tree, faults) || ! faults.empty())
    {
        for (const auto& fault : faults)
            std::cerr << fault.text() << "\n";
        return jobIsWrong;
    }
    std::cout << tree.dump() << "\n";
    return fine;
}
}

void addPresets (CLI::App& app, Common& common, Action& action)
{
    struct Asked { std::string kind, name; bool json = false; };
    auto* command = app.add_subcommand ("presets", "List what there is, or show one");
    auto asked = std::make_shared<Asked>();
    command->add_option ("KIND", asked->kind, "guitars, pickups, switches, tapers, rewires, starters or jobs");
    command->add_option ("NAME", asked->name, "The preset to show");
    command->add_flag ("--json", asked->json, "For programs");
    addPresetFolders (*command, common);
    command->callback ([asked, &common, &action]
                       {
                           action = [asked, &common]
                           {
                               const auto presets = common.presets();
                               if (asked->kind.empty())
                                   return listKinds (presets, asked->json);
                               const auto kind = kindOf (asked->kind);
                               return asked->name.empty() ? listKind (presets, kind, asked->json)
                                                          : showPreset (presets, kind, asked->name, asked->json);
                           };
                       });
}
}
