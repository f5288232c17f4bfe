// A fitted pickup as a preset file's text.

#include "wording/FittedPreset.h"

#include "files/JsonText.h"
#include "files/Quantity.h"
#include "wording/FitWords.h"
#include "wording/Say.h"

#include <cstdlib>

namespace coldiron::wording
{
namespace
{
/** Five digits: finer than any bench. */
double fiveDigits (double value) { return std::strtod (significant (value, 5).c_str(), nullptr); }

std::string quotedQuantity (double value) { return quotedJson (quantityText (fiveDigits (value))); }

std::string plain (double value) { return significant (value, 5); }

/** As the file says it, in any language. */
const char* keyOf (Provenance known)
{
    return known == Provenance::measured ? "measured" : known == Provenance::fromOhms ? "from ohms" : "assumed";
}

std::string coilText (const Coil& coil)
{
    std::string text = "    " + quotedJson (coil.name) + ": { \"dcr\": " + quotedQuantity (coil.dcrOhms)
                       + ", \"inductance\": " + plain (coil.henries) + ", \"capacitance\": " + quotedQuantity (coil.farads);
    if (! coil.losses.empty())
    {
        text += ",\n               \"loss\": [ ";
        for (size_t i = 0; i < coil.losses.size(); ++i)
            text += std::string (i == 0 ? "" : ", ") + "{ \"inductance\": " + plain (coil.losses[i].henries)
                    + ", \"resistance\": " + quotedQuantity (coil.losses[i].ohms) + " }";
        text += " ]";
    }
    return text + ",\n               \"output\": " + plain (coil.output) + ", \"turns\": " + plain (coil.turns) + " }";
}

std::string howFound (const FittedValue& value)
{
    const auto percent = significant (100.0 * value.uncertainty, 2);
    switch (value.found)
    {
    case Found::measured: return say ("measured, +/-{percent} %", percent);
    case Found::roughly: return say ("roughly, +/-{percent} %", percent);
    case Found::assumed: break;
    }
    return say ("assumed, scaled from the generic pickup");
}
}

std::string pickupPresetText (const ReadingsFile& file, const CoilFit& fit)
{
    std::string text = "// " + say ("Fitted to bench readings. At the two leads:") + "\n";
    for (size_t i = 0; i < fit.values.size(); ++i)
    {
        const auto which = static_cast<CoilFit::Value> (i);
        const auto& value = fit.values[i];
        text += "//   "
                + say ("{value} {number}{unit}: {found}", fittedValue (which), quantityText (fiveDigits (value.value)),
                       unitOf (which), howFound (value))
                + "\n";
    }
    text += "//   "
            + say ("{count} readings, typically {times} times their stated accuracy away", static_cast<int> (fit.readings.size()),
                   significant (fit.misfit, 2))
            + "\n";

    const auto name = file.name.empty() ? say ("{pickup}, fitted", file.generic.name) : file.name;
    text += "{ \"coldiron\": \"pickup 1\", \"like\": " + quotedJson (file.preset) + ", \"name\": " + quotedJson (name)
            + ",\n  \"known\": \"" + keyOf (fit.pickup.known) + "\",\n  \"coils\": {\n";
    for (size_t i = 0; i < fit.pickup.coils.size(); ++i)
        text += coilText (fit.pickup.coils[i]) + (i + 1 < fit.pickup.coils.size() ? ",\n" : " } }\n");
    return text;
}

}
