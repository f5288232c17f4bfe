#include "cli/Command.h"
#include "paper/OhmTable.h"

#include <CLI/CLI.hpp>
#include <nlohmann/json.hpp>

#include <iostream>

namespace coldiron::cli
{
namespace
{
using Json = nlohmann::ordered_json;

std::string ohmText (double ohms)
{
    return ohms >= 100e6 ? "open" : ohms < 1.0 ? "short" : ohms >= 1e6 ? format ("%.3f M", ohms / 1e6) : ohms >= 1e3 ? format ("%.2f k", ohms / 1e3) : format ("%.1f", ohms);
}

Json asJson (const std::vector<OhmReading>& readings)
{
    Json list = Json::array();
    for (const auto& reading : readings)
    {
        Json row, levers = Json::object();
        for (const auto& [lever, position] : reading.levers)
            levers[lever] = position;
        row["switches"] = levers;
        const bool meaningless = reading.isOpen || reading.isShort || reading.isActive;
        row["reads"] = meaningless ? Json (reading.words()) : Json ("ohms");
        row["ohms"] = meaningless ? Json() : Json (reading.ohms);
        row["low_ohms"] = meaningless ? Json() : Json (reading.lowOhms);
        row["high_ohms"] = meaningless ? Json() : Json (reading.highOhms);
        row["volumes_at_5_ohms"] = reading.isActive || reading.volumeDownOhms >= 100e6 ? Json() : Json (reading.volumeDownOhms);
        list.push_back (row);
    }
    return list;
}

std::string asTable (const std::vector<OhmReading>& readings)
{
    std::string table;
    std::vector<size_t> widths;
    for (const auto& reading : readings)
        for (size_t i = 0; i < reading.levers.size(); ++i)
        {
            widths.resize (std::max (widths.size(), i + 1), 0);
            widths[i] = std::max ({ widths[i], reading.levers[i].first.size(), reading.levers[i].second.size() });
        }
    if (! readings.empty())
        for (size_t i = 0; i < widths.size(); ++i)
            table += format ("%-*s  ", static_cast<int> (widths[i]), readings.front().levers[i].first.c_str());
    table += format ("%12s  %25s  %14s\n", "reads [ohm]", "between [ohm]", "volumes at 5");
    for (const auto& reading : readings)
    {
        for (size_t i = 0; i < widths.size(); ++i)
            table += format ("%-*s  ", static_cast<int> (widths[i]), reading.levers[i].second.c_str());
        if (reading.isActive || reading.isOpen || reading.isShort)
            table += format ("%12s  %25s  %14s\n", reading.words().c_str(), "", reading.isActive ? "" : ohmText (reading.volumeDownOhms).c_str());
        else
            table += format ("%12s  %25s  %14s\n", ohmText (reading.ohms).c_str(),
                             (ohmText (reading.lowOhms) + " to " + ohmText (reading.highOhms)).c_str(),
                             ohmText (reading.volumeDownOhms).c_str());
    }
    return table;
}

int ohms (const std::string& path, const std::string& letter, bool json, const Common& common)
{
    const auto job = openJob (path, common);
    const bool recorded = letter.empty() || isRecorded (letter);
    const Harness harness = recorded ? recordedFor (job, nullptr).harness : optionOf (job, letter).harness;
    const auto readings = ohmTable (harness);
    if (json)
    {
        Json document;
        document["job"] = job.title;
        document["option"] = recorded ? "recorded" : letter;
        document["readings"] = asJson (readings);
        std::cout << document.dump (2) << "\n";
        return fine;
    }
    std::cout << job.title << ", " << (recorded ? "as recorded" : letter + " " + optionOf (job, letter).name) << "\n"
              << "DC resistance at the jack at 20 C, every knob at 10, cable off. Between: worst case of the parts at 15 to 30 C.\n\n"
              << asTable (readings)
              << "\nRead with the volumes at 10: turned down they read the pot and not the pickup.\n";
    return fine;
}
}

void addOhms (CLI::App& app, Common& common, Action& action)
{
    struct Asked { std::string job, option; bool json = false; };
    auto* command = app.add_subcommand ("ohms", "DC resistance at the jack for every switch position");
    auto asked = std::make_shared<Asked>();
    command->add_option ("JOB", asked->job, "The job's file")->required();
    command->add_option ("--option", asked->option, "Letter of the option; the guitar as recorded when left out");
    command->add_flag ("--json", asked->json, "For programs");
    addPresetFolders (*command, common);
    command->callback ([asked, &common, &action]
                       { action = [asked, &common] { return ohms (asked->job, asked->option, asked->json, common); }; });
}
}
