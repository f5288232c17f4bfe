#include "cli/Command.h"
#include "cli/Words.h"
#include "files/Quantity.h"
#include "files/RegularFile.h"
#include "offer/PresetSearch.h"
#include "wording/NewJobText.h"

#include <CLI/CLI.hpp>
#include <cmath>
#include <iostream>

namespace coldiron::cli
{
namespace
{
namespace fs = std::filesystem;

struct NewArguments
{
    std::string guitar, out, title, wish;
    std::vector<std::string> takes, at;
};

/** The preset that the words mean: its name, or one of the trade's words for it alone. @throws UsageError that suggests others */
std::string guitarNamed (const std::string& asked, const PresetFolders& presets)
{
    if (presets.has ("guitars", asked))
        return asked;
    Diagnostics ignored; // of other guitars
    const auto all = presetNames ("guitars", presets, ignored);
    auto match = WordMatch::none;
    auto found = bestNamed (asked, all, match);
    if (match == WordMatch::exact && found.size() == 1)
    {
        std::cout << "\"" << asked << "\" is \"" << found.front().preset << "\" here: " << found.front().name << "\n";
        return found.front().preset;
    }
    std::vector<std::string> names;
    for (const auto& one : all)
        names.push_back (one.preset);
    if (const auto near = nearest (asked, names); ! near.empty() && match < WordMatch::named)
        found = { *std::find_if (all.begin(), all.end(), [&] (const auto& one) { return one.preset == near; }) };
    std::string message = "there is no guitar \"" + asked + "\"";
    if (found.empty() || found.size() > 6)
        throw UsageError (message + "; `coldiron presets guitars` lists them");
    for (const auto& one : found)
        message += (&one == &found.front() ? "; did you mean " : ", or ") + one.preset + " (" + one.name + ")";
    throw UsageError (message + "?");
}

/** CONTROL=VALUE into a setting. */
void putAt (const std::string& text, const Harness& harness, Setting& setting)
{
    const auto equals = text.find ('=');
    const auto name = text.substr (0, equals), value = equals == std::string::npos ? std::string() : text.substr (equals + 1);
    std::vector<std::string> names;
    for (const auto& control : controls (harness))
    {
        names.push_back (control.name);
        if (control.name != name)
            continue;
        if (control.positions.empty())
        {
            const auto knob = parseQuantity (value);
            if (! knob || ! (*knob >= 0.0 && *knob <= 10.0))
                throw UsageError ("--at " + text + ": a knob stands at 0 to 10");
            setting.knobs[name] = *knob;
        }
        else if (std::find (control.positions.begin(), control.positions.end(), value) == control.positions.end())
            throw UsageError ("--at " + text + ": \"" + name + "\" has the positions " + listed (control.positions));
        else
            setting.levers[name] = value;
        return;
    }
    throw UsageError ("--at " + text + ": write CONTROL=POSITION; the guitar has " + listed (names));
}

/** How the job names the take: from its own folder, so that the two may be moved together; in whole where links lead elsewhere. */
std::string relativeTo (const std::string& take, const fs::path& job)
{
    std::error_code error;
    const auto folder = fs::absolute (job).lexically_normal().parent_path();
    const auto name = fs::absolute (take).lexically_normal().lexically_relative (folder).string();
    return ! name.empty() && fs::equivalent (inFolder (folder, name), take, error) ? name : fs::canonical (take).string();
}

void tellNext (const NewArguments& asked, const Guitar& guitar)
{
    const auto job = shellWord (asked.out);
    const auto command = [] (const std::string& text, const std::string& about)
    { std::cout << format ("  %-58s %s\n", text.c_str(), about.c_str()); };
    std::cout << asked.out << ": written; " << guitar.name << ", "
              << (asked.takes.empty() ? "no take yet"
                                      : std::to_string (asked.takes.size()) + (asked.takes.size() == 1 ? " take" : " takes"))
              << "\nNext:\n";
    if (asked.takes.empty())
        command ("coldiron card " + job + " --out card.html", "how to record the takes, to print");
    else if (asked.at.empty())
        command (job, "open it and check where every control stood in the take");
    command ("coldiron offer " + job, "what fits this guitar, and what does not");
    command ("coldiron offer " + job + " --wish \"too dark\" --add", "what answers a wish, added as options");
    if (! asked.takes.empty())
        command ("coldiron render " + job + " --out sounds", "the take through each option");
    command ("coldiron compare " + job, "the options side by side");
}

int makeNew (const NewArguments& asked, const Common& common)
{
    const auto presets = common.presets();
    const auto preset = guitarNamed (asked.guitar, presets);
    Diagnostics diagnostics;
    const auto guitar = readGuitar (preset, presets, diagnostics);
    for (const auto& fault : diagnostics)
        std::cerr << fault.text() << "\n";
    if (! guitar || ! diagnostics.empty())
        throw JobDiagnostic ("");
    wording::NewJob job { asked.title.empty() ? wording::titleFrom (asked.out) : asked.title, asked.wish, *guitar, {}, {} };
    for (const auto& text : asked.at)
        putAt (text, guitar->harness, job.setting);

    std::error_code error;
    if (fs::symlink_status (asked.out, error).type() != fs::file_type::not_found)
        throw JobDiagnostic (asked.out
                             + ": something of this name is there already, and `new` writes over nothing; choose another name");
    for (const auto& take : asked.takes)
    {
        try
        {
            readTake (take);
        }
        catch (const TakeError& fault)
        {
            throw JobDiagnostic (fault.what());
        }
        job.takes.push_back (relativeTo (take, asked.out));
    }
    const auto text = wording::newJobText (job);
    const auto read = readJobText (text, fs::absolute (asked.out).parent_path(), presets, diagnostics);
    if (! read || ! diagnostics.empty())
        throw JobDiagnostic (
            asked.out + ": not written: " + (diagnostics.empty() ? "it would not be read back" : diagnostics.front().message));
    for (size_t i = 0; i < asked.takes.size(); ++i)
        if (! fs::equivalent (read->takes.at (i).file, asked.takes[i], error))
            throw JobDiagnostic (asked.takes[i]
                                 + ": its name cannot be written into a job; rename it with plain letters (UTF-8)");
    writeWhole (asked.out, text);
    tellNext (asked, *guitar);
    return exitOk;
}
}

void addNew (CLI::App& app, Common& common, Action& action)
{
    auto* command = app.add_subcommand ("new", "Begin a job: a file with comments that names every control of a guitar");
    auto asked = std::make_shared<NewArguments>();
    command->add_option ("GUITAR", asked->guitar, "One of `coldiron presets guitars`, or what the trade calls it")->required();
    command->add_option ("--take", asked->takes, "A take of it; may be repeated")
        ->type_name ("FILE")
        ->expected (1)
        ->multi_option_policy (CLI::MultiOptionPolicy::TakeAll);
    command
        ->add_option ("--at", asked->at, "Where a control stood in the take, like selector=bridge or volume=7; may be repeated")
        ->type_name ("CONTROL=POSITION")
        ->expected (1)
        ->multi_option_policy (CLI::MultiOptionPolicy::TakeAll);
    command->add_option ("--title", asked->title, "Whose guitar; left out: from the job's file name");
    command->add_option ("--wish", asked->wish, "What the client wants, in their words");
    command->add_option ("--out", asked->out, "The job's file to write; nothing is written over")->type_name ("JOB")->required();
    addPresetFolders (*command, common);
    command->callback ([asked, &common, &action] { action = [asked, &common] { return makeNew (*asked, common); }; });
}
}
