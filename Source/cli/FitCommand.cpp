#include "cli/Command.h"
#include "cli/Targets.h"
#include "files/RegularFile.h"
#include "files/WriteFile.h"
#include "job/Readings.h"
#include "wording/FitWords.h"
#include "wording/FittedPreset.h"

#include <CLI/CLI.hpp>

#include <cmath>
#include <fstream>
#include <iostream>
#include <sstream>

namespace coldiron::cli
{
namespace
{
namespace fs = std::filesystem;

struct FitArguments
{
    std::string readings, out;
    bool replace = false;
};

/** 4.712 H, 8.2 k, 47.1 p: four digits, as a meter shows them. */
std::string shown (double value, const std::string& unit)
{
    const auto size = std::abs (value);
    return size >= 1e6    ? format ("%.4g M%s", value / 1e6, unit.c_str())
           : size >= 1e3  ? format ("%.4g k%s", value / 1e3, unit.c_str())
           : size >= 1e-2 ? format ("%.4g %s", value, unit.c_str())
           : size >= 1e-9 ? format ("%.4g n%s", value * 1e9, unit.c_str())
                          : format ("%.4g p%s", value * 1e12, unit.c_str());
}

std::string howKnown (const FittedValue& value)
{
    if (value.found == Found::assumed)
        return "assumed: not in the readings, scaled from the generic pickup";
    return format ("%s, +/-%.2g %%", value.found == Found::measured ? "measured" : "roughly", 100.0 * value.uncertainty);
}

void report (const ReadingsFile& file, const CoilFit& fit)
{
    std::cout << format ("Like %s, at its two leads%s, at 20 C:\n\n", file.preset.c_str(),
                         fit.pickup.coils.size() > 1 ? " with the coils in series" : "");
    for (size_t i = 0; i < fit.values.size(); ++i)
    {
        const auto which = static_cast<CoilFit::Value> (i);
        const auto& value = fit.values[i];
        std::cout << format ("  %-22s %12s   %s\n", wording::fittedValue (which).c_str(),
                             shown (value.value, wording::unitOf (which)).c_str(), howKnown (value).c_str());
    }
    if (fit.resonanceHz > 0.0)
        std::cout << format ("  %-22s %12s   computed, with nothing across the leads\n", "resonance",
                             shown (fit.resonanceHz, "Hz").c_str());

    std::cout << format ("\nResidual: the %zu readings lie typically %.2g times their stated accuracy from this pickup.\n",
                         fit.readings.size(), fit.misfit);
    constexpr size_t mostRows = 12;
    for (size_t i = 0; i < fit.readings.size() && fit.readings.size() <= mostRows; ++i)
    {
        const auto& row = fit.readings[i];
        const auto unit = wording::unitOf (row.quantity);
        std::cout << format ("  line %-4d %-10s read %12s   this pickup %12s   off by %.1f\n", row.line,
                             wording::rowOf (row.quantity).c_str(), shown (row.read, unit).c_str(),
                             shown (row.fitted, unit).c_str(), row.misfit);
    }
    for (const auto& note : fit.notes)
        std::cout << "note: " << wording::fitNote (note) << "\n";
}

/** Whether a fit may take the place of that file: an earlier one, or one with nothing in it. */
bool isOurs (const fs::path& file)
{
    std::error_code fault;
    if (! wouldReplace (file) || fs::is_empty (file, fault))
        return true;
    constexpr std::uintmax_t longestPreset = 1000000;
    if (fs::file_size (file, fault) > longestPreset || fault)
        return false;
    std::ostringstream text;
    text << std::ifstream (file, std::ios::binary).rdbuf();
    Json tree;
    Diagnostics ignored;
    parseJson (text.str(), file.string(), tree, ignored);
    const auto* kind = tree.find ("coldiron");
    return kind != nullptr && kind->text.rfind ("pickup ", 0) == 0;
}

int fit (const FitArguments& asked, const Common& common)
{
    const auto presets = common.presets();
    Diagnostics diagnostics;
    const auto file = readReadings (asked.readings, presets, diagnostics);
    const bool toFile = asked.out != "-";
    if (file && toFile && fs::path (asked.out).stem() == file->preset)
        diagnostics.push_back (
            { asked.out, 0, "the fitted pickup is like " + file->preset + " and cannot have its name; choose another" });
    if (const auto why = whyNotWritten (asked.out, { { asked.readings, "the file of readings" } }, asked.replace); ! why.empty())
        diagnostics.push_back ({ asked.out, 0, why });
    else if (toFile && ! isOurs (asked.out))
        diagnostics.push_back ({ asked.out, 0, "is no pickup preset and was left as it is; choose another name" });

    CoilFit found;
    if (diagnostics.empty())
    {
        found = fitCoil (file->generic, file->readings);
        for (const auto& refusal : found.refusals)
            diagnostics.push_back ({ asked.readings, refusal.line, wording::fitRefusal (refusal) });
    }
    std::string text;
    if (diagnostics.empty())
    {
        text = wording::pickupPresetText (*file, found);
        readPickupText (text, asked.out, presets, diagnostics); // what cannot be read back is not written
    }
    for (const auto& fault : diagnostics)
        std::cerr << fault.text() << "\n";
    if (! diagnostics.empty())
        throw JobDiagnostic ("");

    writeWhole (asked.out, text);
    if (! toFile)
        return exitOk;
    report (*file, found);
    const char* known = found.pickup.known == Provenance::measured   ? "measured"
                        : found.pickup.known == Provenance::fromOhms ? "from ohms"
                                                                     : "assumed";
    std::cout << format ("\n%s is written, marked \"%s\". In a pickups folder it is found by its name: \"pickup\": \"%s\".\n",
                         asked.out.c_str(), known, fs::path (asked.out).stem().c_str());
    return exitOk;
}
}

void addFit (CLI::App& app, Common& common, Action& action)
{
    auto* command = app.add_subcommand ("fit", "A pickup preset from bench readings: ohms, LCR meter, resonance, sweeps");
    auto asked = std::make_shared<FitArguments>();
    command->add_option ("READINGS", asked->readings, "CSV of readings; presets/FITTING.md says how to write it")->required();
    command->add_option ("--out", asked->out, "Pickup preset to write, `-` for standard output")->required();
    command->add_flag ("--replace", asked->replace, "Write over a file that is there");
    addPresetFolders (*command, common);
    command->callback ([asked, &common, &action] { action = [asked, &common] { return fit (*asked, common); }; });
}
}
