#include "analysis/PartNames.h"

#include <algorithm>
#include <cctype>
#include <cmath>
#include <cstdio>

namespace coldiron
{
std::string titleOf (const Part& part)
{
    auto text = part.name;
    std::replace (text.begin(), text.end(), '-', ' ');
    std::replace (text.begin(), text.end(), '_', ' ');
    if (! text.empty())
        text[0] = static_cast<char> (std::toupper (static_cast<unsigned char> (text[0])));
    if (part.as<PickupPart>() != nullptr && text.find ("ickup") == std::string::npos)
        text += " pickup";
    return text;
}

std::string quantityText (double value, const std::string& unit)
{
    static constexpr struct
    {
        double scale;
        const char* prefix;
    } prefixes[] = { { 1e9, "G" },  { 1e6, "M" },  { 1e3, "k" },  { 1.0, "" },
                     { 1e-3, "m" }, { 1e-6, "µ" }, { 1e-9, "n" }, { 1e-12, "p" } };
    if (value == 0.0 || ! std::isfinite (value))
        return "0 " + unit;
    const double size = std::abs (value);
    auto chosen = prefixes[7];
    for (const auto& entry : prefixes)
        if (size >= entry.scale * 0.9995)
        {
            chosen = entry;
            break;
        }
    char text[32];
    const double shown = value / chosen.scale;
    std::snprintf (text, sizeof text, std::abs (shown) < 9.995 ? "%.2f" : std::abs (shown) < 99.95 ? "%.1f" : "%.0f", shown);
    std::string number = text;
    if (number.find ('.') != std::string::npos)
    {
        while (number.back() == '0')
            number.pop_back();
        if (number.back() == '.')
            number.pop_back();
    }
    return number + " " + chosen.prefix + unit;
}

std::string valueOf (const Part& part)
{
    if (const auto* pickup = part.as<PickupPart>())
    {
        double ohms = 0.0;
        for (const auto& coil : pickup->pickup.coils)
            ohms += coil.dcrOhms;
        return quantityText (ohms, "Ω");
    }
    if (const auto* pot = part.as<PotPart>())
    {
        const auto& taper = pot->taper.name;
        const auto word = taper.rfind ("reverse", 0) == 0      ? "rev log"
                          : taper.rfind ("log", 0) == 0        ? "log"
                          : taper == "linear" || taper.empty() ? "lin"
                                                               : "";
        return quantityText (pot->ohms, "Ω") + (*word != 0 ? std::string (" ") + word : "");
    }
    if (const auto* capacitor = part.as<CapacitorPart>())
        return quantityText (capacitor->farads, "F");
    if (const auto* resistor = part.as<ResistorPart>())
        return quantityText (resistor->ohms, "Ω");
    if (const auto* inductor = part.as<InductorPart>())
        return quantityText (inductor->henries, "H");
    return "";
}
}
