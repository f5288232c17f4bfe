#include "session/GuitarValues.h"

#include "analysis/JackReading.h"
#include "analysis/OhmTable.h"
#include "files/Quantity.h"
#include "job/Job.h"

#include <algorithm>
#include <cmath>

namespace coldiron
{
using Kind = GuitarValue::Kind;

namespace
{
std::string shortNumber (double value)
{
    char text[40];
    std::snprintf (text, sizeof text, "%.6g", value);
    return text;
}

/** IEC 60063, as two digits. */
constexpr int e24[] { 10, 11, 12, 13, 15, 16, 18, 20, 22, 24, 27, 30, 33, 36, 39, 43, 47, 51, 56, 62, 68, 75, 82, 91 };
constexpr int e12[] { 10, 12, 15, 18, 22, 27, 33, 39, 47, 56, 68, 82 };
constexpr int ofPots[] { 10, 25, 50 }; // common practice of the trade: 250k, 500k, 1M

template <size_t N>
double stepIn (const int (&series)[N], double value, int direction)
{
    const int decade = static_cast<int> (std::floor (std::log10 (value) + 1e-9));
    double best = value;
    for (int d = decade - 1; d <= decade + 1; ++d)
        for (const int digits : series)
        {
            const double candidate = std::strtod ((std::to_string (digits) + "e" + std::to_string (d - 1)).c_str(), nullptr);
            const bool beyond = direction > 0 ? candidate > value * 1.0001 : candidate < value * 0.9999;
            if (beyond && (best == value || std::abs (candidate - value) < std::abs (best - value)))
                best = candidate;
        }
    return best;
}

double firstNumber (const std::string& typed, double otherwise)
{
    return typedQuantity (typed.substr (0, typed.find (' '))).value_or (typedQuantity (typed).value_or (otherwise));
}
}

std::vector<GuitarValue> valuesOf (const Job& job)
{
    std::vector<GuitarValue> pickups, pots, caps, resistors, inductors, places;
    for (const auto& part : job.guitar.harness.parts())
    {
        GuitarValue value;
        value.part = part.name;
        if (const auto* pickup = part.as<PickupPart>())
        {
            value.kind = Kind::pickupOhms;
            value.known = pickup->pickup.known;
            for (const auto& coil : pickup->pickup.coils)
                value.number += coil.dcrOhms;
            pickups.push_back (value);
            value.kind = Kind::bridgeMm;
            value.number = pickup->bridgeMm;
            places.push_back (value);
        }
        else if (const auto* pot = part.as<PotPart>())
        {
            value.number = pot->ohms;
            value.taper = pot->taper.name;
            pots.push_back (value);
        }
        else if (const auto* capacitor = part.as<CapacitorPart>())
        {
            value.kind = Kind::capacitor;
            value.number = capacitor->farads;
            caps.push_back (value);
        }
        else if (const auto* resistor = part.as<ResistorPart>())
        {
            value.kind = Kind::resistor;
            value.number = resistor->ohms;
            resistors.push_back (value);
        }
        else if (const auto* inductor = part.as<InductorPart>())
        {
            value.kind = Kind::inductor;
            value.number = inductor->henries;
            inductors.push_back (value);
        }
    }
    std::vector<GuitarValue> all;
    for (const auto* list : { &pickups, &pots, &caps, &resistors, &inductors, &places })
        all.insert (all.end(), list->begin(), list->end());
    if (! job.guitar.strings.empty())
    {
        GuitarValue scale;
        scale.kind = Kind::scaleMm;
        scale.number = job.guitar.strings.front().scaleMm;
        scale.last = job.guitar.strings.back().scaleMm;
        all.push_back (scale);
    }
    return all;
}

std::optional<GuitarValue> jackValueOf (const Job& job, const std::string& pickup, std::string& where)
{
    const auto setting = aloneAtJack (job.guitar.harness, pickup);
    if (! setting)
        return std::nullopt;
    where.clear();
    for (const auto& [lever, position] : setting->levers)
        where += lever + " at " + position + ", ";
    std::replace (where.begin(), where.end(), '-', ' ');
    where += "all knobs at 10";
    GuitarValue value;
    value.kind = Kind::jackOhms;
    value.part = pickup;
    value.number = ohmReading (job.guitar.harness, *setting).ohms;
    return value;
}

std::vector<GuitarValue> loadValuesOf (const Job& job, GuitarValue::Side side)
{
    const auto& load = side == GuitarValue::Side::listening ? job.listening : job.recording;
    std::vector<GuitarValue> all (3);
    all[0].kind = Kind::cable;
    all[0].number = load.cableFarads;
    all[1].kind = Kind::inputOhms;
    all[1].number = load.inputOhms;
    all[2].kind = Kind::inputFarads;
    all[2].number = load.inputFarads;
    for (auto& value : all)
        value.side = side;
    return all;
}

std::string typedText (const GuitarValue& value)
{
    if (value.kind == Kind::bridgeMm)
        return shortNumber (value.number);
    if (value.kind == Kind::scaleMm)
        return shortNumber (value.number) + (value.last != value.number ? " to " + shortNumber (value.last) : "");
    const auto text = quantityText (std::strtod (shortNumber (value.number).c_str(), nullptr));
    return value.kind == Kind::pot && ! value.taper.empty() ? text + " " + value.taper : text;
}

std::string typingHint (const GuitarValue& value)
{
    switch (value.kind)
    {
    case Kind::pickupOhms: return "Ohms across its two leads, disconnected: 8.1k";
    case Kind::jackOhms: return "All knobs at 10: the pots are taken out";
    case Kind::pot: return "250k, 500k, 1M; then log-15, linear";
    case Kind::capacitor: return "Like 22n or 1.2n; arrows step E12";
    case Kind::resistor: return "Like 150k or 4k7; arrows step E24";
    case Kind::inductor: return "Henries, like 1.5";
    case Kind::bridgeMm: return "Millimetres from the bridge";
    case Kind::scaleMm: return "Millimetres; or low to high, 686 to 648";
    case Kind::cable: return "About 100p a metre: 500p for five";
    case Kind::inputOhms: return "1M is usual; a passive box far less";
    case Kind::inputFarads: return "Like 20p";
    }
    return {};
}

std::optional<double> typedQuantity (std::string text)
{
    std::string plain;
    for (const char c : text)
        if (c == ',')
            plain += '.';
        else if (! std::isspace (static_cast<unsigned char> (c)))
            plain += c;
    for (const std::string unit : { "mm", "ohms", "ohm", "Ohm", "\xce\xa9", "\xe2\x84\xa6", "F", "H" })
        if (plain.size() > unit.size() && plain.compare (plain.size() - unit.size(), unit.size(), unit) == 0)
        {
            plain.resize (plain.size() - unit.size());
            break;
        }
    if (! plain.empty() && plain.back() == 'K')
        plain.back() = 'k';
    // The prefix in the place of the point, IEC 60062: 4k7, 2n2.
    const auto at = plain.find_first_of ("pnukKMR");
    if (at != std::string::npos && at > 0 && at + 1 < plain.size()
        && plain.find_first_not_of ("0123456789", at + 1) == std::string::npos && plain.find_first_not_of ("0123456789") == at)
    {
        const char prefix = plain[at] == 'K' ? 'k' : plain[at];
        plain[at] = '.';
        if (prefix != 'R')
            plain += prefix;
    }
    return plain.empty() ? std::nullopt : parseQuantity (plain);
}

std::string steppedText (const GuitarValue& value, const std::string& typed, int direction)
{
    auto next = value;
    next.number = firstNumber (typed, value.number);
    if (next.number <= 0.0)
        next.number = value.number > 0.0 ? value.number : 1e-12;
    switch (value.kind)
    {
    case Kind::capacitor: next.number = stepIn (e12, next.number, direction); break;
    case Kind::pot: next.number = stepIn (ofPots, next.number, direction); break;
    case Kind::bridgeMm:
    case Kind::scaleMm:
        next.number = std::max (1.0, direction > 0 ? std::floor (next.number + 1.0) : std::ceil (next.number - 1.0));
        next.last = next.number;
        break;
    case Kind::cable:
    case Kind::inputFarads: next.number = std::max (0.0, std::round (next.number * 1e11 + direction) * 1e-11); break;
    default: next.number = stepIn (e24, next.number, direction); break;
    }
    if (const auto space = typed.find (' '); value.kind == Kind::pot && space != std::string::npos)
        next.taper = typed.substr (space + 1);
    return typedText (next);
}
}
