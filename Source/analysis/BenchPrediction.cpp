#include "analysis/BenchPrediction.h"

#include "circuit/Network.h"

#include <algorithm>
#include <cmath>
#include <complex>

namespace coldiron
{
namespace
{
constexpr double tapHz[] = { 150.0, 500.0, 1500.0 }; // of a light tap
constexpr double kickHz = 3.0;                       // of a hand that pulls a blade away
constexpr double leastPower = 1e-30;

void predictOhms (const GuitarCircuit& circuit, size_t numParts, BenchPrediction& prediction)
{
    prediction.shares.assign (numParts + circuit.coils.size(), 0.0);
    prediction.isActive = ! circuit.netlist.followers().empty();
    if (prediction.isActive || circuit.tip == ground)
        return;
    const auto shares = dcShares (circuit.netlist, circuit.tip, ground);
    prediction.ohms = shares.ohms;
    for (size_t i = 0; i < shares.resistors.size(); ++i)
        prediction.shares[circuit.resistorParts[i]] += shares.resistors[i];
    for (size_t i = 0; i < shares.branches.size(); ++i)
        prediction.shares[circuit.branchParts[i]] += shares.branches[i];
    for (size_t i = 0; i < circuit.coils.size(); ++i)
        prediction.shares[numParts + i] = shares.branches[static_cast<size_t> (circuit.coils[i].branch)];
}

/** What is heard at the jack as all coils of a place are driven, for each place. */
std::vector<std::complex<double>> heardFrom (const GuitarCircuit& circuit, const Netlist& loaded, double hz,
                                             const std::vector<StrikePlace>& places)
{
    std::vector<BranchId> branches;
    for (const auto& coil : circuit.coils)
        branches.push_back (coil.branch);
    const auto perVolt = nodeVoltages (loaded, branches, circuit.tip, hz);
    std::vector<std::complex<double>> heard;
    for (const auto& place : places)
    {
        std::complex<double> sum;
        for (const auto i : place.coils)
            sum += perVolt[i] * circuit.coils[i].stringDrive;
        heard.push_back (place.reference > 0.0 ? sum / place.reference : 0.0);
    }
    return heard;
}
}

std::vector<StrikePlace> strikePlaces (const Harness& harness)
{
    std::vector<StrikePlace> places;
    size_t count = 0;
    for (const auto& part : harness.parts())
        if (const auto* pickup = part.as<PickupPart>())
        {
            const auto whole = places.size();
            places.push_back ({ part.name, {}, {}, 0.0 });
            for (const auto& coil : pickup->pickup.coils)
            {
                places[whole].coils.push_back (count);
                places[whole].reference = std::max (places[whole].reference, coil.output * std::abs (coil.stringSign()));
                places.push_back ({ part.name, coil.name, { count++ }, 0.0 });
            }
            for (size_t i = whole + 1; i < places.size(); ++i)
                places[i].reference = places[whole].reference;
        }
    return places;
}

BenchPrediction predictBench (const Harness& harness, const Setting& setting, const Load& listening,
                              const std::vector<StrikePlace>& places)
{
    BuildOptions options;
    options.potFloorOhms = 1e-6;
    options.withLoad = false;
    const auto circuit = buildCircuit (harness, setting, {}, options);

    BenchPrediction prediction;
    predictOhms (circuit, harness.parts().size(), prediction);
    prediction.tapDb.assign (places.size(), -300.0);
    prediction.kicks.assign (places.size(), 0.0);
    if (circuit.tip == ground)
        return prediction;

    auto heard = circuit.netlist, metered = circuit.netlist;
    heard.addResistor (circuit.tip, ground, listening.inputOhms);
    heard.addCapacitor (circuit.tip, ground, listening.cableFarads + listening.inputFarads);
    metered.addResistor (circuit.tip, ground, BenchPrediction::meterOhms);

    std::vector<double> power (places.size(), 0.0);
    for (const double hz : tapHz)
    {
        const auto taps = heardFrom (circuit, heard, hz, places);
        for (size_t i = 0; i < taps.size(); ++i)
            power[i] += std::norm (taps[i]) / std::size (tapHz);
    }
    const auto kicks = heardFrom (circuit, metered, kickHz, places);
    for (size_t i = 0; i < places.size(); ++i)
    {
        prediction.tapDb[i] = 10.0 * std::log10 (std::max (power[i], leastPower));
        prediction.kicks[i] = kicks[i].real();
    }
    return prediction;
}
}
