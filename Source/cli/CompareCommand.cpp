#include "audition/Loudness.h"
#include "cli/CompareTable.h"
#include "cli/Sources.h"
#include "cli/TakeRender.h"
#include "job/OfferRewires.h"

#include <CLI/CLI.hpp>
#include <algorithm>
#include <cmath>
#include <iostream>

namespace coldiron::cli
{
namespace
{
std::vector<double> thirdOctaves()
{
    std::vector<double> hz;
    for (int band = -13; band <= 12; ++band) // 50 Hz to 16 kHz around 1 kHz
        hz.push_back (1000.0 * std::pow (10.0, band / 10.0));
    return hz;
}

Compared compareOne (const Job& job, const Option* option, LoadedTakes& takes)
{
    Compared compared;
    compared.letter = option != nullptr ? option->letter : "now";
    compared.name = option != nullptr ? option->name : "as recorded";
    compared.take = job.takes.empty() ? -1 : option != nullptr ? option->take : 0;
    const Side recorded = recordedFor (job, option);
    const Side heard = option != nullptr ? job.optionSide (*option) : recorded;
    const Spectrum spectrum = compared.take >= 0 ? takes.get (compared.take).spectrum() : Spectrum {};
    compared.strings = heard.strings;
    compared.figures = computeFigures (recorded, heard, spectrum);
    compared.otherCoils = otherCoils (heard);
    compared.ohms = ohmReading (heard.harness, heard.setting);
    if (option == nullptr)
    {
        compared.figures.loudnessLu = compared.take >= 0 ? std::optional<double> (0.0) : std::nullopt;
        return compared;
    }
    compared.band = computeBand (recorded, heard, thirdOctaves());
    compared.choice = job.takeChoice (*option);
    compared.stillAtRest = switchesStillAtRest (recorded, heard);
    if (compared.take >= 0 && ! compared.figures.silent)
    {
        const auto& take = takes.get (compared.take);
        const Voice before = recorded.voice(), after = heard.voice();
        compared.figures.trust = judgeNoise (take.noise(), recorded, Change (before, after));
        const auto rendered = renderTake (take.audio.channels, filterFor (job, *option, take.audio.sampleRate));
        const double change = loudnessOf (rendered.channels, take.audio.sampleRate) - take.lufs();
        if (std::isfinite (change))
            compared.figures.loudnessLu = change;
    }
    return compared;
}

int compare (const std::string& path, bool json, const Common& common)
{
    const auto job = openJob (path, common);
    checkSources (job, allTakes (job));
    LoadedTakes takes (job);
    std::vector<Compared> all { compareOne (job, nullptr, takes) };
    for (const auto& option : job.options)
        all.push_back (compareOne (job, &option, takes));
    std::vector<TakeRemarks> remarks;
    for (int take = 0; take < static_cast<int> (job.takes.size()); ++take)
    {
        const auto& loaded = takes.get (take);
        remarks.push_back ({ job.takes[static_cast<size_t> (take)].file.filename().string(), loaded.noise(), loaded.faults() });
    }
    writeWhole ("-", json ? compareJson (job, all, remarks) : compareTable (job, all, remarks));
    return fine;
}
}

void addCompare (CLI::App& app, Common& common, Action& action)
{
    struct Asked { std::string job; bool json = false; };
    auto* command = app.add_subcommand ("compare", "A table of all options: level, resonance, clarity, hum, hiss, ohms, how sure");
    auto asked = std::make_shared<Asked>();
    command->add_option ("JOB", asked->job, "The job's file")->required();
    command->add_flag ("--json", asked->json, "For programs");
    addPresetFolders (*command, common);
    command->callback ([asked, &common, &action] { action = [asked, &common] { return compare (asked->job, asked->json, common); }; });
}
}
