#include "wording/PartWords.h"

#include "wording/Say.h"

#include <algorithm>
#include <cmath>

namespace coldiron::wording
{
std::string title (std::string name)
{
    std::replace (name.begin(), name.end(), '-', ' ');
    std::replace (name.begin(), name.end(), '_', ' ');
    return capitalised (name);
}

std::string partTitle (const Part& part)
{
    return part.as<PickupPart>() != nullptr ? pickupTitle (part.name) : title (part.name);
}

std::string pickupTitle (const std::string& name)
{
    const auto words = title (name);
    return words.find ("ickup") != std::string::npos ? words : say ("{name} pickup", words);
}

std::string quantity (double value, const std::string& unit)
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
    const double scaled = value / chosen.scale;
    auto number = decimals (scaled, std::abs (scaled) < 9.995 ? 2 : std::abs (scaled) < 99.95 ? 1 : 0);
    if (number.find ('.') != std::string::npos)
    {
        while (number.back() == '0')
            number.pop_back();
        if (number.back() == '.')
            number.pop_back();
    }
    return number + " " + chosen.prefix + unit;
}

std::string partValue (const Part& part)
{
    if (const auto* pickup = part.as<PickupPart>())
    {
        double ohms = 0.0;
        for (const auto& coil : pickup->pickup.coils)
            ohms += coil.dcrOhms;
        return quantity (ohms, "Ω");
    }
    if (const auto* pot = part.as<PotPart>())
    {
        const auto& taper = pot->taper.name;
        const auto ohms = quantity (pot->ohms, "Ω");
        if (taper.rfind ("reverse", 0) == 0)
            return say ("{ohms} rev log", ohms);
        if (taper.rfind ("log", 0) == 0)
            return say ("{ohms} log", ohms);
        return taper == "linear" || taper.empty() ? say ("{ohms} lin", ohms) : ohms;
    }
    if (const auto* capacitor = part.as<CapacitorPart>())
        return quantity (capacitor->farads, "F");
    if (const auto* resistor = part.as<ResistorPart>())
        return quantity (resistor->ohms, "Ω");
    if (const auto* inductor = part.as<InductorPart>())
        return quantity (inductor->henries, "H");
    return "";
}

std::string point (const Harness& harness, const std::string& fullPoint)
{
    if (fullPoint == "strings")
        return say ("Strings, at the bridge");
    const auto [partName, rawTerminal] = splitPoint (fullPoint);
    const auto* part = harness.find (partName);
    if (part == nullptr)
        return fullPoint;
    auto terminal = plainName (rawTerminal);
    std::replace (terminal.begin(), terminal.end(), '.', ' ');
    const auto name = partTitle (*part);
    if (part->as<PotPart>() != nullptr && rawTerminal != "case")
        return say ("{part}, lug {lug}", name, terminal);
    if (part->isLead (rawTerminal) && part->as<PickupPart>() == nullptr)
        return say ("{part}, leg {leg}", name, terminal);
    return say ("{part}, {point}", name, terminal);
}
}
