#include "response/Draws.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace coldiron
{
uint64_t Draw::bits (const std::string& name, uint64_t salt) const
{
    uint64_t hash = 1469598103934665603ull; // FNV-1a of the name
    for (const char c : name)
        hash = (hash ^ static_cast<unsigned char> (c)) * 1099511628211ull;
    uint64_t x = hash + seed * 0x9e3779b97f4a7c15ull + salt * 0xd1b54a32d192ed03ull; // then SplitMix64's finalizer, twice
    for (int round = 0; round < 2; ++round)
    {
        x += 0x9e3779b97f4a7c15ull;
        x = (x ^ (x >> 30)) * 0xbf58476d1ce4e5b9ull;
        x = (x ^ (x >> 27)) * 0x94d049bb133111ebull;
        x ^= x >> 31;
    }
    return x;
}

double Draw::uniform (const std::string& name) const { return static_cast<double> (bits (name, 0) >> 11) * 0x1.0p-52 - 1.0; }

double Draw::normal (const std::string& name) const
{
    const double u = (static_cast<double> (bits (name, 1) >> 11) + 0.5) * 0x1.0p-53;
    const double v = static_cast<double> (bits (name, 2) >> 11) * 0x1.0p-53;
    return std::sqrt (-2.0 * std::log (u)) * std::cos (2.0 * std::numbers::pi * v);
}

PickupTolerance toleranceOf (Provenance known)
{
    switch (known)
    {
    case Provenance::assumed: return { 0.12, 0.25, 0.35, 0.10, true };
    case Provenance::fromOhms: return { 0.08, 0.20, 0.30, 0.02, true };
    case Provenance::measured: return {};
    }
    return {};
}

namespace
{
PartFactors pickupFactors (const PickupPart& part, const std::string& key, const Draw& draw)
{
    const auto tolerance = toleranceOf (part.pickup.known);
    PartFactors factors;
    factors.inductance += tolerance.inductance * draw.uniform (key + " inductance");
    factors.capacitance += tolerance.capacitance * draw.uniform (key + " capacitance");
    factors.loss += tolerance.loss * draw.uniform (key + " loss");
    factors.resistance += tolerance.resistance * draw.uniform (key + " resistance");
    if (tolerance.coupling && part.pickup.coils.size() > 1 && part.pickup.coupling > 0.0)
        factors.couplingShift = 0.175 + 0.125 * draw.uniform (key + " coupling") - part.pickup.coupling;
    return factors;
}

PartFactors factorsOf (const Part& part, const Draw& draw)
{
    // A part is the same part in both harnesses where its name and its make-up agree.
    PartFactors factors;
    if (const auto* pickup = part.as<PickupPart>())
        return pickupFactors (*pickup, part.name + " " + pickup->pickup.name, draw);
    if (const auto* pot = part.as<PotPart>())
        factors.pots += pot->tolerance * draw.uniform (part.name + " " + std::to_string (std::lround (pot->ohms)));
    else if (const auto* capacitor = part.as<CapacitorPart>())
        factors.capacitance +=
            capacitor->tolerance * draw.uniform (part.name + " " + std::to_string (std::lround (capacitor->farads * 1e12)));
    else if (const auto* resistor = part.as<ResistorPart>())
        factors.resistance +=
            resistor->tolerance * draw.uniform (part.name + " " + std::to_string (std::lround (resistor->ohms)));
    else if (const auto* inductor = part.as<InductorPart>())
        factors.inductance +=
            inductor->tolerance * draw.uniform (part.name + " " + std::to_string (std::lround (inductor->henries * 1e3)));
    return factors;
}
}

std::vector<std::pair<std::string, PartFactors>> drawParts (const Harness& harness, const Draw& draw)
{
    std::vector<std::pair<std::string, PartFactors>> factors;
    for (const auto& part : harness.parts())
        factors.emplace_back (part.name, factorsOf (part, draw));
    PartFactors cable;
    cable.cable += 0.15 * draw.uniform ("cable");
    factors.emplace_back ("cable", cable);
    return factors;
}

StringDraw drawStrings (const StringSet& set, const Draw& draw)
{
    StringDraw strings;
    for (size_t s = 0; s < set.strings.size(); ++s)
    {
        strings.levelDb.push_back (6.0 * draw.normal ("string level " + std::to_string (s)));
        strings.slopeDb.push_back (6.0 * draw.normal ("string slope " + std::to_string (s)));
    }
    strings.sigma = 0.06;
    return strings;
}
}
