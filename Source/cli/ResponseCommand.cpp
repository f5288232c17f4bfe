#include "cli/Command.h"
#include "cli/Targets.h"
#include "response/Band.h"
#include "response/TransferFunction.h"

#include <CLI/CLI.hpp>
#include <cmath>
#include <iostream>
#include <numbers>

namespace coldiron::cli
{
namespace
{
struct ResponseArguments
{
    std::string job, option, onlyString, csv = "-";
    bool relative = false, replace = false;
    double from = 20.0, to = 20000.0; // Hz
    int points = 400;
};

double db (double gain) { return gain > 1e-15 ? 20.0 * std::log10 (gain) : -300.0; }
double degrees (std::complex<double> h) { return std::abs (h) > 1e-15 ? std::arg (h) * 180.0 / std::numbers::pi : 0.0; }

/** Log-spaced with both ends, exactly. */
std::vector<double> frequencies (const ResponseArguments& asked)
{
    std::vector<double> hz;
    for (int i = 0; i < asked.points; ++i)
        hz.push_back (i == 0                  ? asked.from
                      : i == asked.points - 1 ? asked.to
                                              : asked.from * std::pow (asked.to / asked.from, i / (asked.points - 1.0)));
    return hz;
}

std::string plainCsv (const GuitarResponse& response, const std::vector<double>& frequencies)
{
    std::string csv = "hz,db,phase_deg\n";
    for (const double hz : frequencies)
    {
        const auto h = response.unisonResponse (hz);
        csv += format ("%.10g,%.7f,%.6f\n", hz, db (std::abs (h)), degrees (h));
    }
    return csv;
}

/** The sample rate of the take; 48 kHz where none is recorded yet, since only the phase asks for it. */
double rateOf (const Job& job, const Option* option)
{
    if (job.takes.empty())
        return 48000.0;
    try
    {
        return takeInfo (job.takes[static_cast<size_t> (option != nullptr ? option->take : 0)].file).sampleRate;
    }
    catch (const TakeError& error)
    {
        std::cerr << "note: " << error.what() << "; the phase is that at 48 kHz\n";
        return 48000.0;
    }
}

/** What is applied to the take; the phase is that of the minimum-phase filter at the take's rate. */
std::string relativeCsv (const Job& job, const Option* option, const std::vector<double>& frequencies)
{
    const CircuitConfig recorded = recordedFor (job, option);
    const CircuitConfig wanted = option != nullptr ? job.optionConfig (*option) : recorded;
    const GuitarResponse before = recorded.response(), after = wanted.response();
    const TransferFunction transfer (before, after);
    const double rate = rateOf (job, option);
    const auto filter = designFilter (transfer, *FilterDesigner::shared (rate));
    if (filter.capped)
        std::cerr << "note: somewhere more than 24 dB over the rest is asked for; what is heard stays below that\n";
    const auto gains = transfer.gains (frequencies);
    const auto band = computeBand (recorded, wanted, frequencies);
    std::string csv = "hz,db,phase_deg,low_db,high_db\n";
    for (size_t i = 0; i < frequencies.size(); ++i)
        csv += format ("%.10g,%.7f,%.6f,%.4f,%.4f\n", frequencies[i], db (gains[i]),
                       frequencies[i] < 0.5 * rate ? degrees (filter.response (frequencies[i])) : 0.0, band.lowDb[i],
                       band.highDb[i]);
    return csv;
}

int response (const ResponseArguments& asked, const Common& common)
{
    if (! (asked.from > 0.0 && asked.to > asked.from && asked.to <= 1e6 && asked.points >= 2 && asked.points <= 1000000))
        throw UsageError ("--from and --to are rising frequencies above 0 and up to 1000000 Hz, --points 2 to 1000000");
    auto job = openJob (asked.job, common);
    askOnly (job, asked.onlyString);
    const Option* option = isRecorded (asked.option) ? nullptr : &optionOf (job, asked.option);
    checkTarget (asked.csv, keptFiles (job), asked.replace);
    const auto hz = frequencies (asked);
    if (asked.relative || ! asked.onlyString.empty())
        writeWhole (asked.csv, relativeCsv (job, option, hz));
    else
        writeWhole (asked.csv,
                    plainCsv ((option != nullptr ? job.optionConfig (*option) : recordedFor (job, nullptr)).response(), hz));
    return exitOk;
}
}

void addResponse (CLI::App& app, Common& common, Action& action)
{
    auto* command = app.add_subcommand ("response", "Frequency response of an option, as CSV");
    auto asked = std::make_shared<ResponseArguments>();
    command->add_option ("JOB", asked->job, "The job's file")->required();
    command->add_option ("--option", asked->option, "Letter of the option, or `recorded`")->required();
    command->add_flag ("--relative", asked->relative, "What is applied to the take, with its band, not the plain response");
    command
        ->add_option ("--string", asked->onlyString,
                      "What is applied to the take for this string alone, E2 say; implies --relative")
        ->type_name ("NAME");
    command->add_option ("--from", asked->from, "Lowest frequency [Hz]")->capture_default_str();
    command->add_option ("--to", asked->to, "Highest frequency [Hz]")->capture_default_str();
    command->add_option ("--points", asked->points, "Number of frequencies, log-spaced with both ends")->capture_default_str();
    command->add_option ("--csv", asked->csv, "File to write, `-` for standard output")->capture_default_str();
    command->add_flag ("--replace", asked->replace, "Write over a file that is there");
    addPresetFolders (*command, common);
    command->callback ([asked, &common, &action] { action = [asked, &common] { return response (*asked, common); }; });
}
}
