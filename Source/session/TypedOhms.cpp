#include "session/TypedOhms.h"

#include "files/Quantity.h"
#include "job/NearestGeneric.h"
#include "job/Readings.h"
#include "session/GuitarEdits.h"
#include "session/JobEditor.h"
#include "wording/FitWords.h"
#include "wording/FittedPreset.h"

#include <cstdio>
#include <fstream>
#include <sstream>

namespace coldiron
{
namespace
{
/** Five digits, as a fit writes them. */
JobTree fittedTree (double value)
{
    char text[40];
    std::snprintf (text, sizeof text, "%.5g", value);
    return JobTree (quantityText (std::strtod (text, nullptr)));
}

JobTree fittedValues (const Pickup& pickup)
{
    JobTree tree;
    tree["known"] = pickup.known == Provenance::measured   ? "measured"
                    : pickup.known == Provenance::fromOhms ? "from ohms"
                                                           : "assumed";
    for (const auto& coil : pickup.coils)
    {
        JobTree& entry = tree["coils"][coil.name];
        entry["dcr"] = fittedTree (coil.dcrOhms);
        entry["inductance"] = fittedTree (coil.henries);
        entry["capacitance"] = fittedTree (coil.farads);
        if (! coil.losses.empty())
            entry["loss"] = JobTree::array();
        for (const auto& cell : coil.losses)
        {
            JobTree loss;
            loss["inductance"] = fittedTree (cell.henries);
            loss["resistance"] = fittedTree (cell.ohms);
            entry["loss"].push_back (loss);
        }
        entry["output"] = fittedTree (coil.output);
        entry["turns"] = fittedTree (coil.turns);
    }
    return tree;
}

std::string sentence (std::string words)
{
    if (! words.empty())
        words[0] = static_cast<char> (std::toupper (static_cast<unsigned char> (words[0])));
    return words.empty() || words.back() == '.' ? words : words + ".";
}

std::string contents (const std::filesystem::path& path)
{
    std::ifstream stream (path, std::ios::binary);
    std::ostringstream text;
    text << stream.rdbuf();
    return text.str();
}

bool isCsv (const std::filesystem::path& path) { return path.extension() == ".csv" || path.extension() == ".CSV"; }
}

JobEdit ohmsEdit (const JobEditor& editor, const std::string& part, double ohms)
{
    PickupReadings readings;
    readings.readings.push_back ({ OhmsReading { ohms }, 0 });
    const auto* now = editor.job()->guitar.harness.find (part);
    const auto generic =
        nearestGeneric ({ now != nullptr ? now->preset : std::string(), genericPickup (editor, part) }, ohms, editor.presets());
    const auto fit = fitCoil (generic.pickup, readings);
    if (! fit.accepted())
        return refused (sentence (wording::fitRefusal (fit.refusals.front())));
    return pickupEdit (editor, part, fittedValues (fit.pickup), part + " ohms");
}

JobEdit pickupFileEdit (const JobEditor& editor, const std::string& part, const std::filesystem::path& path)
{
    const auto name = path.filename().string();
    if (! isCsv (path))
        return pickupFromText (editor, part, contents (path), name);
    Diagnostics diagnostics;
    const auto file = readReadings (path, editor.presets(), diagnostics);
    if (! file)
        return refused (diagnostics.empty() ? name + " cannot be read." : diagnostics.front().text());
    const auto fit = fitCoil (file->generic, file->readings);
    if (! fit.accepted())
        return refused (name + (fit.refusals.front().line > 0 ? ":" + std::to_string (fit.refusals.front().line) : "") + ": "
                        + wording::fitRefusal (fit.refusals.front()));
    return pickupFromText (editor, part, wording::pickupPresetText (*file, fit), name);
}

bool isPickupFile (const std::filesystem::path& path)
{
    if (isCsv (path))
        return true;
    std::error_code fault;
    if (path.extension() != ".json" || std::filesystem::file_size (path, fault) > (1u << 20) || fault)
        return false;
    const auto tree = parseJobTree (contents (path));
    return tree.is_object() && tree.contains ("coldiron") && tree["coldiron"] == "pickup 1";
}
}
