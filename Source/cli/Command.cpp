#include "cli/Command.h"

#include "cli/Sources.h"
#include "files/RegularFile.h"
#include "files/WriteFile.h"

#include <CLI/CLI.hpp>

#include <cstdarg>
#include <cstdio>
#include <iostream>

namespace coldiron::cli
{
namespace fs = std::filesystem;

PresetFolders Common::presets() const
{
    std::vector<fs::path> extra;
    for (const auto& folder : presetFolders)
    {
        if (const auto why = whyNoFolder (folder); ! why.empty())
            throw UsageError ("--presets: " + folder + ": " + why);
        extra.emplace_back (folder);
    }
    auto found = PresetFolders::standard (extra);
    if (! found.unreadable().empty())
        throw JobDiagnostic (found.unreadable().front().text());
    return found;
}

void addPresetFolders (CLI::App& command, Common& common)
{
    command.add_option ("--presets", common.presetFolders, "Folder with your own presets, looked at first; may be repeated")
        ->type_name ("DIR")
        ->expected (1)
        ->multi_option_policy (CLI::MultiOptionPolicy::TakeAll);
}

Job openJob (const std::string& path, const Common& common)
{
    Diagnostics diagnostics;
    auto job = readJob (path, common.presets(), diagnostics);
    for (const auto& fault : diagnostics)
        std::cerr << fault.text() << "\n";
    if (! job || ! diagnostics.empty())
    {
        if (diagnostics.empty())
            std::cerr << path << ": could not be read\n";
        throw JobDiagnostic ("");
    }
    for (const auto& warning : job->warnings)
        std::cerr << "note: " << warning.text() << "\n";
    return std::move (*job);
}

bool isRecorded (const std::string& letter) { return letter == "recorded"; }

const Option& optionOf (const Job& job, const std::string& letter)
{
    if (const auto* option = job.find (letter))
        return *option;
    std::string known = "recorded";
    for (const auto& option : job.options)
        known += ", " + option.letter;
    throw UsageError ("there is no option \"" + letter + "\" in " + job.file.string() + "; it has " + known);
}

void askOnly (Job& job, const std::string& name)
{
    if (job.askOnly (name))
        return;
    std::string known;
    for (const auto& string : job.guitar.strings)
        known += (known.empty() ? "" : ", ") + string.name;
    throw UsageError ("there is no string \"" + name + "\" on the guitar; it has " + known);
}

CircuitConfig recordedFor (const Job& job, const Option* option)
{
    return job.recordedConfig (job.takes.empty() ? -1 : option != nullptr ? option->take : 0);
}

void writeWhole (const std::string& path, const std::string& text)
{
    if (path == "-")
    {
        std::cout << text << std::flush; // whether it arrived is asked at the end, for all that prints
        return;
    }
    writeFile (path, text);
}

std::string format (const char* form, ...)
{
    va_list arguments, again;
    va_start (arguments, form);
    va_copy (again, arguments);
    std::string text (static_cast<size_t> (std::max (0, std::vsnprintf (nullptr, 0, form, arguments))), '\0');
    std::vsnprintf (text.data(), text.size() + 1, form, again);
    va_end (arguments);
    va_end (again);
    return text;
}
}
