#pragma once

#include "circuit/Network.h"

#include <cmath>
#include <numbers>

namespace coldiron::support
{
inline double decibels (std::complex<double> h) { return 20.0 * std::log10 (std::abs (h)); }
inline double parallel (double a, double b) { return a * b / (a + b); }

/** One coil (EMF, R, L) shunted by a capacitance and, unless infinite, a resistance. */
struct LoadedCoil
{
    Netlist netlist;
    NodeId top;
    BranchId coil;

    LoadedCoil (double henries, double ohms, double farads, double loadOhms)
        : top (netlist.addNode()), coil (netlist.addBranch (top, ground, ohms, henries))
    {
        netlist.addCapacitor (top, ground, farads);
        if (std::isfinite (loadOhms))
            netlist.addResistor (top, ground, loadOhms);
    }

    Network network() const { return Network (netlist, { coil }, top); }
};

/** |H| of the first drive. */
inline double gain (const Network& network, double hz)
{
    std::vector<std::complex<double>> h ((size_t)network.numSources());
    network.responses (hz, h.data());
    return std::abs (h[0]);
}

struct Peak
{
    double hz, gain;
};

/** The highest gain between two frequencies that bracket one peak, by golden section. */
template <typename Gain>
Peak findPeak (Gain&& gainAt, double low, double high)
{
    const auto share = 1.0 / std::numbers::phi;
    for (int i = 0; i < 200 && high - low > 1e-9 * high; ++i)
    {
        const auto a = high - share * (high - low), b = low + share * (high - low);
        if (gainAt (a) < gainAt (b))
            low = a;
        else
            high = b;
    }
    const auto hz = 0.5 * (low + high);
    return { hz, gainAt (hz) };
}
}
