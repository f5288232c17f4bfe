#include "cli/Command.h"

#include <CLI/CLI.hpp>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <fstream>
#include <iostream>
#include <sstream>

namespace coldiron::cli
{
namespace
{
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
    std::ifstream file (path, std::ios::binary);
    std::ostringstream text;
    text << file.rdbuf();
    if (! file)
        throw JobFault (path.string() + ": could not be read");
    return text.str();
}

/** The name inside a preset for people; empty where the file has none or cannot be read. */
std::string titleOf (const PresetFolders& presets, const std::string& kind, const std::string& name)
{
    Json tree;
    Faults faults;
    if (parseJson (textOf (presets, kind, name), name, tree, faults))
        for (const char* key : { "name", "title" })
            if (const auto* title = tree.find (key); title != nullptr && title->kind == Json::Kind::text)
                return title->text;
    return "";
}

int listKinds (const PresetFolders& presets, bool json)
{
    Document document = Document::object();
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
    size_t width = 0;
    for (const auto& name : names)
        width = std::max (width, name.size());
    Document document = Document::array();
    for (const auto& name : names)
    {
        const auto title = titleOf (presets, kind, name);
        document.push_back ({ { "preset", name }, { "name", title }, { "file", presets.find (kind, name).string() } });
        if (! json)
            std::cout << format ("%-*s  %s\n", static_cast<int> (width), name.c_str(), title.c_str());
    }
    if (json)
        std::cout << document.dump (2) << "\n";
    return fine;
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
