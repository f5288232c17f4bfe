// A fitted pickup as a preset file's text, and the way back.

#include "files/JsonText.h"
#include "files/Quantity.h"
#include "job/Readers.h"
#include "job/Readings.h"

#include <cmath>
#include <cstdio>

namespace coldiron
{
namespace
{
/** Five digits: finer than any bench. */
double rounded (double value)
{
    char text[40];
    std::snprintf (text, sizeof text, "%.5g", value);
    return std::strtod (text, nullptr);
}

std::string quantity (double value) { return quotedJson (quantityText (rounded (value))); }

std::string plain (double value)
{
    char text[40];
    std::snprintf (text, sizeof text, "%.5g", value);
    return text;
}

const char* inWords (Provenance known)
{
    return known == Provenance::measured ? "measured" : known == Provenance::fromOhms ? "from ohms" : "assumed";
}

std::string coilText (const Coil& coil)
{
    std::string text = "    " + quotedJson (coil.name) + ": { \"dcr\": " + quantity (coil.dcrOhms)
                       + ", \"inductance\": " + plain (coil.henries) + ", \"capacitance\": " + quantity (coil.farads);
    if (! coil.losses.empty())
    {
        text += ",\n               \"loss\": [ ";
        for (size_t i = 0; i < coil.losses.size(); ++i)
            text += std::string (i == 0 ? "" : ", ") + "{ \"inductance\": " + plain (coil.losses[i].henries)
                    + ", \"resistance\": " + quantity (coil.losses[i].ohms) + " }";
        text += " ]";
    }
    return text + ",\n               \"output\": " + plain (coil.output) + ", \"turns\": " + plain (coil.turns) + " }";
}

std::string howFound (const FittedValue& value)
{
    char text[80];
    std::snprintf (text, sizeof text, "%s, +/-%.2g %%", value.found == Found::measured ? "measured" : "roughly",
                   100.0 * value.uncertainty);
    return value.found == Found::assumed ? "assumed, scaled from the generic pickup" : text;
}
}

std::string pickupPresetText (const ReadingsFile& file, const CoilFit& fit)
{
    std::string text = "// Fitted to bench readings. At the two leads:\n";
    for (const auto& value : fit.values)
        text += "//   " + value.name + " " + quantityText (rounded (value.value)) + value.unit + ": " + howFound (value) + "\n";
    char misfit[120];
    std::snprintf (misfit, sizeof misfit, "//   %zu readings, typically %.2g times their stated accuracy away\n",
                   fit.readings.size(), fit.misfit);
    text += misfit;

    const auto name = file.name.empty() ? file.generic.name + ", fitted" : file.name;
    text += "{ \"coldiron\": \"pickup 1\", \"like\": " + quotedJson (file.preset) + ", \"name\": " + quotedJson (name)
            + ",\n  \"known\": \"" + inWords (fit.pickup.known) + "\",\n  \"coils\": {\n";
    for (size_t i = 0; i < fit.pickup.coils.size(); ++i)
        text += coilText (fit.pickup.coils[i]) + (i + 1 < fit.pickup.coils.size() ? ",\n" : " } }\n");
    return text;
}

std::optional<Pickup> readPickupText (const std::string& text, const std::string& file, const PresetFolders& folders,
                                      Diagnostics& diagnostics)
{
    const auto before = diagnostics.raised();
    Json json;
    if (! parseJson (text, file, json, diagnostics))
        return std::nullopt;
    Library library (folders, diagnostics);
    checkTag (json, "pickup", diagnostics);
    const auto resolved = library.resolve ("pickup", json);
    if (! resolved)
        return std::nullopt;
    auto pickup = readPickup (resolved->json, diagnostics);
    if (diagnostics.raised() > before)
        return std::nullopt;
    return pickup;
}
}
