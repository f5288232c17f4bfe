#include "analysis/OhmRows.h"
#include "cli/Command.h"
#include "cli/OhmsReadings.h"
#include "files/Json.h"
#include "files/JsonText.h"
#include "wording/OhmWords.h"

#include <CLI/CLI.hpp>

#include <algorithm>
#include <iostream>

namespace coldiron::cli
{
namespace
{
std::string ohmText (double ohms)
{
    return ohms >= 100e6 ? "open"
           : ohms < 1.0  ? "short"
           : ohms >= 1e6 ? format ("%.3f M", ohms / 1e6)
           : ohms >= 1e3 ? format ("%.2f k", ohms / 1e3)
                         : format ("%.1f", ohms);
}

Json asJson (const OhmReading& reading)
{
    Json row, levers = Json::object();
    for (const auto& [lever, position] : reading.levers)
        levers[lever] = position;
    row["switches"] = levers;
    const bool meaningless = ! reading.isNumber();
    row["reads"] = meaningless ? Json (wording::noOhms (reading)) : Json ("ohms");
    row["ohms"] = meaningless ? Json() : Json (reading.ohms);
    row["low_ohms"] = meaningless ? Json() : Json (reading.lowOhms);
    row["high_ohms"] = meaningless ? Json() : Json (reading.highOhms);
    row["volumes_at_5_ohms"] =
        reading.kind == OhmReading::Kind::buffered || reading.volumeDownOhms >= 100e6 ? Json() : Json (reading.volumeDownOhms);
    return row;
}

/** The document as it would be written in one, row by row as each is computed. */
void printJson (const Harness& harness, const std::string& title, const std::string& option)
{
    std::cout << "{\n  \"job\": " << quotedJson (title) << ",\n  \"option\": " << quotedJson (option) << ",\n  \"readings\": [";
    bool isFirst = true;
    eachOhmReading (harness,
                    [&] (const OhmReading& reading)
                    {
                        std::string row = asJson (reading).write (2);
                        for (size_t at = 0; (at = row.find ('\n', at)) != std::string::npos; at += 5)
                            row.insert (at + 1, "    ");
                        std::cout << (isFirst ? "\n    " : ",\n    ") << row;
                        isFirst = false;
                    });
    Json apart = Json::object();
    for (const auto& [volume, reading] : volumesApart (harness))
        apart[volume] = asJson (reading);
    std::cout << "\n  ],\n  \"one_volume_at_10_others_at_0\": " << apart.write() << "\n}\n";
}

/** Reads, between what, and with the volumes at 5. */
std::string cells (const OhmReading& reading)
{
    const auto down = reading.kind == OhmReading::Kind::buffered ? std::string() : ohmText (reading.volumeDownOhms);
    const bool isNumber = reading.isNumber();
    return format ("%12s  %25s  %14s\n", isNumber ? ohmText (reading.ohms).c_str() : wording::noOhms (reading).c_str(),
                   isNumber ? (ohmText (reading.lowOhms) + " to " + ohmText (reading.highOhms)).c_str() : "", down.c_str());
}

/** The rows that differ; of a table too long to be compared every row, as it comes. */
void printTable (const Harness& harness)
{
    constexpr size_t mostCompared = 1000;
    std::vector<int> widths;
    size_t combinations = 1;
    for (const auto& control : controls (harness))
    {
        if (control.positions.empty())
            continue;
        auto width = std::max (control.name.size(), std::string ("any").size());
        for (const auto& position : control.positions)
            width = std::max (width, position.size());
        combinations *= control.positions.size();
        widths.push_back (static_cast<int> (width));
        std::cout << format ("%-*s  ", widths.back(), control.name.c_str());
    }
    std::cout << format ("%12s  %25s  %14s\n", "reads [ohm]", "between [ohm]", "volumes at 5");
    const auto print = [&widths] (const OhmReading& reading)
    {
        for (size_t i = 0; i < widths.size(); ++i)
            std::cout << format ("%-*s  ", widths[i], reading.levers[i].second.c_str());
        std::cout << cells (reading);
    };
    if (combinations > mostCompared)
        return eachOhmReading (harness, print);
    const auto rows = rowsThatDiffer (ohmTable (harness));
    for (const auto& row : rows)
        print (row);
    if (rows.size() < combinations)
        std::cout << format (
            "%zu combinations of the switches, %zu that read differently; \"any\": that switch makes no difference there.\n",
            combinations, rows.size());
}

/** A row for each volume with the others at 0: how two pickups that are always on together are told apart. */
std::string apartTable (const Harness& harness)
{
    const auto apart = volumesApart (harness);
    std::string table;
    size_t width = 0;
    for (const auto& [volume, reading] : apart)
        width = std::max (width, volume.size());
    for (const auto& [volume, reading] : apart)
        table += format ("%-*s  ", static_cast<int> (width), volume.c_str()) + cells (reading);
    return apart.empty() ? table : "\nEach volume at 10 with every other volume at 0:\n" + table;
}

/** What a file of readings looks like, for the command's help. */
const char* const readingsHelp = R"(A file of readings, of what was noted at the jack:

{ "coldiron": "readings 1", "option": "A",
  "readings": [
    { "setting": { "selector": "neck" }, "ohms": "7.9k",
      "tap": { "neck": "loud", "bridge": "none" }, "kick": { "neck": "+" } },
    { "setting": { "selector": "both" }, "ohms": "open" } ] }

option: the guitar as recorded when left out. setting: knobs at rest when left out. ohms: "open" and "short" too.
tap: loud, weak or none, of a pickup or one coil of it ("neck.north"), tapped with a screwdriver.
kick: +, - or none, of an analogue meter's needle as steel is pulled away from it. presets/README.md has every key.)";

int ohms (const std::string& path, const std::string& letter, const std::string& readings, bool json, const Common& common)
{
    const auto job = openJob (path, common);
    const bool recorded = letter.empty() || isRecorded (letter);
    if (! recorded)
        optionOf (job, letter);
    if (! readings.empty())
    {
        checkReadingsFile (job, readings, letter.empty() ? std::nullopt : std::optional (recorded ? "" : letter), json);
        return exitOk;
    }
    const Harness harness = recorded ? recordedFor (job, nullptr).harness : optionOf (job, letter).harness;
    if (json)
    {
        printJson (harness, job.title, recorded ? "recorded" : letter);
        return exitOk;
    }
    std::cout
        << job.title << ", " << (recorded ? "as recorded" : letter + " " + optionOf (job, letter).name) << "\n"
        << "DC resistance at the jack at 20 C, every knob at 10, cable off. Between: worst case of the parts at 15 to 30 C.\n\n";
    printTable (harness);
    std::cout << apartTable (harness);
    std::cout << "\nRead with the volumes at 10: turned down they read the pot and not the pickup.\n";
    return exitOk;
}
}

void addOhms (CLI::App& app, Common& common, Action& action)
{
    struct OhmsArguments
    {
        std::string job, option, readings;
        bool json = false;
    };
    auto* command = app.add_subcommand ("ohms", "DC resistance at the jack for every switch position");
    auto asked = std::make_shared<OhmsArguments>();
    command->add_option ("JOB", asked->job, "The job's file")->required();
    command->add_option ("--option", asked->option, "Letter of the option; the guitar as recorded when left out");
    command->add_option ("--readings", asked->readings,
                         "File of readings at the jack: each is checked, and where they fail the likeliest faults are named");
    command->add_flag ("--json", asked->json, "For programs");
    command->footer (readingsHelp);
    addPresetFolders (*command, common);
    command->callback (
        [asked, &common, &action]
        { action = [asked, &common] { return ohms (asked->job, asked->option, asked->readings, asked->json, common); }; });
}
}
