#include "analysis/JackReading.h"

#include "circuit/Network.h"
#include "guitar/GuitarCircuit.h"

#include <algorithm>
#include <cmath>

namespace coldiron
{
namespace
{
constexpr double openAtJackOhms = 100e6;

bool isActive (const Harness& harness)
{
    for (const auto& part : harness.parts())
        if (part.as<BufferPart>() != nullptr)
            return true;
    return false;
}

/** At the jack, one pickup's coils bent by a factor, the pots by another. */
double atJack (const Harness& harness, Setting setting, const std::string& pickup, double factor, double pots = 1.0)
{
    setting.knobs.clear();
    std::vector<std::pair<std::string, PartFactors>> factors;
    for (const auto& part : harness.parts())
    {
        PartFactors bend;
        if (part.name == pickup)
            bend.resistance = factor;
        if (const auto* pot = part.as<PotPart>())
            bend.pots = 1.0 + pots * pot->tolerance;
        factors.emplace_back (part.name, bend);
    }
    BuildOptions options;
    options.potFloorOhms = 1e-6;
    options.withLoad = false;
    options.factors = &factors;
    const auto circuit = buildCircuit (harness, setting, {}, options);
    return circuit.tip == ground ? 0.0 : dcResistance (circuit.netlist, circuit.tip, ground);
}

double factorFor (const Harness& harness, const Setting& setting, const std::string& pickup, double jackOhms, double pots)
{
    double low = 1e-3, high = 1e3;
    if (atJack (harness, setting, pickup, low, pots) > jackOhms || atJack (harness, setting, pickup, high, pots) < jackOhms)
        return 0.0;
    for (int i = 0; i < 60; ++i)
    {
        const double middle = std::sqrt (low * high);
        (atJack (harness, setting, pickup, middle, pots) < jackOhms ? low : high) = middle;
    }
    return std::sqrt (low * high);
}
}

std::optional<Setting> aloneAtJack (const Harness& harness, const std::string& pickup)
{
    if (isActive (harness))
        return std::nullopt;
    std::vector<Setting> settings (1);
    for (const auto& control : controls (harness))
    {
        if (control.positions.empty())
            continue;
        auto positions = control.positions;
        std::stable_partition (positions.begin(), positions.end(), [&] (const auto& p) { return p == control.standard; });
        std::vector<Setting> next;
        for (const auto& position : positions) // the default positions come first
            for (auto setting : settings)
            {
                setting.levers[control.name] = position;
                next.push_back (std::move (setting));
            }
        settings = std::move (next);
    }
    for (const auto& setting : settings)
    {
        const double plain = atJack (harness, setting, pickup, 1.0, 0.0);
        if (plain > openAtJackOhms || plain < 1.0)
            continue;
        bool alone = atJack (harness, setting, pickup, 2.0, 0.0) > plain * 1.2;
        for (const auto& part : harness.parts())
            if (alone && part.name != pickup && part.as<PickupPart>() != nullptr)
                alone = std::abs (atJack (harness, setting, part.name, 2.0, 0.0) / plain - 1.0) < 1e-4;
        if (alone)
            return setting;
    }
    return std::nullopt;
}

LeadsReading leadsFromJack (const Harness& harness, const Setting& setting, const std::string& pickup, double jackOhms)
{
    LeadsReading reading;
    const auto* part = harness.find (pickup);
    const auto* found = part != nullptr ? part->as<PickupPart>() : nullptr;
    if (found == nullptr || isActive (harness))
    {
        reading.refusal = found == nullptr ? LeadsReading::Refusal::noSuchPickup : LeadsReading::Refusal::buffered;
        return reading;
    }
    double sum = 0.0;
    for (const auto& coil : found->pickup.coils)
        sum += coil.dcrOhms;
    const double factor = factorFor (harness, setting, pickup, jackOhms, 0.0);
    if (factor <= 0.0)
    {
        reading.potsOhms = atJack (harness, setting, pickup, 1e6, 0.0); // as good as lifted
        reading.refusal = reading.potsOhms <= jackOhms ? LeadsReading::Refusal::abovePots : LeadsReading::Refusal::tooLittle;
        return reading;
    }
    reading.ohms = sum * factor;
    // Pots of more ohms leave less of the reading to the pickup's.
    const double withMore = factorFor (harness, setting, pickup, jackOhms, 1.0),
                 withLess = factorFor (harness, setting, pickup, jackOhms, -1.0);
    reading.lowOhms = withMore > 0.0 ? sum * withMore : reading.ohms;
    reading.highOhms = withLess > 0.0 ? sum * withLess : reading.ohms;
    return reading;
}
}
