#include "cli/Command.h"
#include "files/Json.h"
#include "files/Printable.h"
#include "files/Quantity.h"
#include "job/Reader.h"
#include "offer/PresetSearch.h"

#include <CLI/CLI.hpp>

#include <algorithm>
#include <iostream>

namespace coldiron::cli
{
namespace
{
namespace fs = std::filesystem;

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
    throw UsageError ("there is no kind \"" + asked
                      + "\" of presets; there are guitars, pickups, switches, tapers, rewires, starters, jobs");
}

Preset presetCalled (const PresetFolders& presets, const std::string& kind, const std::string& name)
{
    const auto preset = presets.find (kind, name);
    if (preset == nullptr)
        throw UsageError ("there is no \"" + name + "\" among the " + kind + "; `coldiron presets " + kind + "` lists them");
    if (preset->text.empty() && ! preset->faults.empty())
        throw JobDiagnostic (preset->faults.front().text());
    return *preset;
}

int listKinds (const PresetFolders& presets, bool json)
{
    auto document = Json::object();
    if (std::all_of (kinds().begin(), kinds().end(), [&] (const auto& kind) { return presets.list (kind).empty(); }))
        throw JobDiagnostic ("no presets were found; " + presets.lookedIn());
    for (const auto& kind : kinds())
    {
        const auto names = presets.list (kind);
        document[kind] = names;
        if (! json)
            std::cout << format ("%-10s %zu\n", kind.c_str(), names.size());
    }
    if (json)
        std::cout << document.write (2) << "\n";
    return exitOk;
}

int listKind (const PresetFolders& presets, const std::string& kind, bool json)
{
    Diagnostics diagnostics;
    const auto all = presetNames (kind, presets, diagnostics);
    if (all.empty())
        throw JobDiagnostic ("no " + kind + " were found; " + presets.lookedIn());
    size_t width = 0;
    for (const auto& one : all)
        width = std::max (width, one.preset.size());
    auto document = Json::list();
    for (const auto& one : all)
    {
        document.add (Json::object ({ { "preset", one.preset },
                                      { "name", one.name },
                                      { "also_called", one.alsoCalled },
                                      { "file", presets.find (kind, one.preset)->file.string() } }));
        if (! json)
            std::cout << format ("%-*s  %s\n", static_cast<int> (width), one.preset.c_str(), one.name.c_str());
    }
    if (json)
        std::cout << document.write (2) << "\n";
    for (const auto& fault : diagnostics)
        std::cerr << fault.text() << "\n";
    return diagnostics.empty() ? exitOk : exitBadJob;
}

/** What is called so here: a name that is none of ours may be another one of the trade. @throws UsageError where nothing is */
int showOtherNames (const PresetFolders& presets, const std::string& kind, const std::string& asked)
{
    auto match = WordMatch::none;
    Diagnostics diagnostics; // of other presets
    const auto found = bestNamed (asked, presetNames (kind, presets, diagnostics), match);
    if (match < WordMatch::named)
        throw UsageError ("there is no \"" + asked + "\" among the " + kind + ", by that name or another; `coldiron presets "
                          + kind + "` lists them");
    std::cout << "\"" << asked << "\" is called here:\n";
    for (const auto& names : found)
        std::cout << format ("  %-24s  %s%s\n", names.preset.c_str(), names.name.c_str(),
                             names.alsoCalled.empty() ? "" : ("; also called " + listed (names.alsoCalled)).c_str());
    return exitOk;
}

int showPreset (const PresetFolders& presets, const std::string& kind, const std::string& name, bool json)
{
    if (! json && ! presets.has (kind, name))
        return showOtherNames (presets, kind, name);
    const auto preset = presetCalled (presets, kind, name);
    const auto& text = preset.text;
    if (! json)
    {
        std::cout << text << (text.empty() || text.back() != '\n' ? "\n" : "");
        return exitOk;
    }
    if (! preset.json || ! preset.faults.empty())
    {
        for (const auto& fault : preset.faults)
            std::cerr << fault.text() << "\n";
        return exitBadJob;
    }
    std::cout << preset.json->dump() << "\n";
    return exitOk;
}
}

void addPresets (CLI::App& app, Common& common, Action& action)
{
    struct PresetsArguments
    {
        std::string kind, name;
        bool json = false;
    };
    auto* command = app.add_subcommand ("presets", "List what there is, or show one");
    auto asked = std::make_shared<PresetsArguments>();
    command->add_option ("KIND", asked->kind, "guitars, pickups, switches, tapers, rewires, starters or jobs");
    command->add_option ("NAME", asked->name, "The preset to show; another name of the trade tells what it is called here");
    command->add_flag ("--json", asked->json, "For programs");
    addPresetFolders (*command, common);
    command->callback (
        [asked, &common, &action]
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
