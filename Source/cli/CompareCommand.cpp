#include "cli/CompareTable.h"
#include "cli/Sources.h"
#include "offer/OfferRewires.h"
#include "response/TransferFunction.h"
#include "takes/TakeMeasures.h"

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

/** @param take  nullptr where the job has none */
Compared compareOne (const Job& job, const Option* option, const TakeMeasures* take)
{
    Compared compared;
    compared.letter = option != nullptr ? option->letter : "now";
    compared.name = option != nullptr ? option->name : "as recorded";
    compared.take = job.takes.empty() ? -1 : option != nullptr ? option->take : 0;
    const CircuitConfig recorded = recordedFor (job, option);
    const CircuitConfig heard = option != nullptr ? job.optionConfig (*option) : recorded;
    compared.strings = heard.strings;
    compared.figures = computeFigures (recorded, heard, take != nullptr ? take->spectrum : Spectrum {});
    compared.otherCoils = otherCoils (heard);
    compared.ohms = ohmReading (heard.harness, heard.setting);
    if (option == nullptr)
    {
        compared.figures.loudnessLu = take != nullptr ? std::optional<double> (0.0) : std::nullopt;
        return compared;
    }
    compared.band = computeBand (recorded, heard, thirdOctaves());
    compared.choice = job.takeChoice (*option);
    compared.stillAtRest = switchesStillAtRest (recorded, heard);
    if (take != nullptr && ! compared.figures.silent)
    {
        const GuitarResponse before = recorded.response(), after = heard.response();
        compared.figures.trust = judgeNoise (take->noise, recorded, TransferFunction (before, after));
    }
    return compared;
}

/** How much louder each option is than its take; all options of a take in one pass over it. */
void addLoudness (const Job& job, const std::vector<TakeMeasures>& takes, std::vector<Compared>& all, WorkerPool& pool)
{
    for (size_t take = 0; take < takes.size(); ++take)
    {
        std::vector<Compared*> here;
        std::vector<ModalFilter> filters;
        for (size_t i = 0; i < job.options.size(); ++i)
            if (Compared& compared = all[i + 1]; static_cast<size_t> (job.options[i].take) == take && ! compared.figures.silent)
            {
                const GuitarResponse before = recordedFor (job, &job.options[i]).response(),
                                     after = job.optionConfig (job.options[i]).response();
                filters.push_back (
                    designFilter (TransferFunction (before, after), *FilterDesigner::shared (takes[take].info.sampleRate)));
                here.push_back (&compared);
            }
        const auto lufs = filters.empty() ? std::vector<double>() : loudnessThrough (job.takes[take].file, filters, pool);
        for (size_t i = 0; i < here.size(); ++i)
            if (const double change = lufs[i] - takes[take].lufs; std::isfinite (change))
                here[i]->figures.loudnessLu = change;
    }
}

int compare (const std::string& path, bool json, const Common& common)
{
    const auto job = openJob (path, common);
    checkSources (job, allTakes (job));
    WorkerPool pool;
    std::vector<TakeMeasures> takes;
    std::vector<TakeRemarks> remarks;
    for (const auto& entry : job.takes)
    {
        takes.push_back (measureTake (entry.file, pool));
        remarks.push_back ({ entry.file.filename().string(), takes.back().noise, takes.back().faults });
    }
    const auto takeOf = [&] (const Option* option)
    { return takes.empty() ? nullptr : &takes[option != nullptr ? static_cast<size_t> (option->take) : 0]; };
    std::vector<Compared> all { compareOne (job, nullptr, takeOf (nullptr)) };
    for (const auto& option : job.options)
        all.push_back (compareOne (job, &option, takeOf (&option)));
    addLoudness (job, takes, all, pool);
    writeWhole ("-", json ? compareJson (job, all, remarks) : compareTable (job, all, remarks));
    return exitOk;
}
}

void addCompare (CLI::App& app, Common& common, Action& action)
{
    struct CompareArguments
    {
        std::string job;
        bool json = false;
    };
    auto* command =
        app.add_subcommand ("compare", "A table of all options: level, resonance, clarity, hum, hiss, ohms, how sure");
    auto asked = std::make_shared<CompareArguments>();
    command->add_option ("JOB", asked->job, "The job's file")->required();
    command->add_flag ("--json", asked->json, "For programs");
    addPresetFolders (*command, common);
    command->callback ([asked, &common, &action]
                       { action = [asked, &common] { return compare (asked->job, asked->json, common); }; });
}
}
