// Two equal coils in series, in parallel and split, and what a meter reads on them.

#include "Benches.h"

#include <catch2/catch.hpp>

namespace twoCoilsTest
{
using namespace coldiron;
using namespace coldiron::support;

namespace
{
enum class Joined { series, opposed, parallel, splitOpen, splitShorted };

struct TwoCoils
{
    static constexpr double ohms = 4e3, henries = 2.0, cellHenries = 0.5, cellOhms = 60e3;

    Netlist netlist;
    NodeId hot;
    std::vector<BranchId> coils;

    TwoCoils (Joined joined, double k, double windingFarads, double cableFarads, bool lossy) : hot (netlist.addNode())
    {
        const auto middle = joined == Joined::series || joined == Joined::opposed ? netlist.addNode() : ground;
        coil (hot, middle, windingFarads, lossy);
        switch (joined)
        {
        case Joined::series: coil (middle, ground, windingFarads, lossy); break;
        case Joined::opposed: coil (ground, middle, windingFarads, lossy); break;
        case Joined::parallel: coil (hot, ground, windingFarads, lossy); break;
        case Joined::splitOpen: coil (netlist.addNode(), ground, windingFarads, lossy); break;
        case Joined::splitShorted: coil (ground, ground, windingFarads, lossy); break;
        }
        netlist.addCoupling (coils[0], coils[1], k * henries);
        netlist.addCapacitor (hot, ground, cableFarads);
    }

    Network network() const { return Network (netlist, coils, hot); }
    std::complex<double> impedance (double hz) const { return network().outputImpedance (hz); }
    double inductance (double hz) const { return impedance (hz).imag() / (2.0 * std::numbers::pi * hz); }

private:
    void coil (NodeId start, NodeId finish, double farads, bool lossy)
    {
        const auto inner = lossy ? netlist.addNode() : finish;
        coils.push_back (netlist.addBranch (start, inner, ohms, henries));
        if (lossy)
        {
            netlist.addBranch (inner, finish, 0.0, cellHenries);
            netlist.addResistor (inner, finish, cellOhms);
        }
        netlist.addCapacitor (start, finish, farads);
    }
};
}

// Two equal coils, exact: Z parallel = Z series / 4 at every frequency, losses, winding capacitance and coupling
// included. [calc] from the symmetry of the two coils.
TEST_CASE ("Series has four times the impedance of parallel, whatever the coupling")
{
    for (const auto k : { -0.3, 0.0, 0.15, 0.9 })
    {
        const TwoCoils series (Joined::series, k, 90e-12, 0.0, true), parallel (Joined::parallel, k, 90e-12, 0.0, true);
        CHECK (dcResistance (series.netlist, series.hot, ground) == Approx (2.0 * TwoCoils::ohms).epsilon (1e-7));
        CHECK (dcResistance (parallel.netlist, parallel.hot, ground) == Approx (0.5 * TwoCoils::ohms).epsilon (1e-7));
        const auto seriesNetwork = series.network(), parallelNetwork = parallel.network();
        for (double hz = 20.0; hz < 40000.0; hz *= 1.21)
        {
            CAPTURE (k, hz);
            const auto four = 4.0 * parallelNetwork.outputImpedance (hz);
            // The middle joint leaks 1e-12 S in series alone: millionths where the coils resonate at megohms.
            CHECK (std::abs (seriesNetwork.outputImpedance (hz) - four) <= 1e-5 * std::abs (four));
        }
    }
}

// L series 2L(1 + k), parallel L(1 + k)/2, opposed 2L(1 - k), split with the other coil open L, shorted L(1 - k^2)
// well above R/L. [calc]
TEST_CASE ("Two coils have the inductances of the closed forms")
{
    const auto l = TwoCoils::henries;
    for (const auto k : { 0.0, 0.05, 0.15, 0.3 })
    {
        const auto at = [k] (Joined joined, double hz) { return TwoCoils (joined, k, 0.0, 0.0, false).inductance (hz); };
        CAPTURE (k);
        CHECK (at (Joined::series, 1000.0) == Approx (2.0 * l * (1.0 + k)).epsilon (1e-6));
        CHECK (at (Joined::parallel, 1000.0) == Approx (0.5 * l * (1.0 + k)).epsilon (1e-6));
        CHECK (at (Joined::opposed, 1000.0) == Approx (2.0 * l * (1.0 - k)).epsilon (1e-6));
        CHECK (at (Joined::splitOpen, 1000.0) == Approx (l).epsilon (1e-6));
        CHECK (at (Joined::splitShorted, 1e6) == Approx (l * (1.0 - k * k)).epsilon (1e-4));

        // The coupling from two readings on the bench: (aiding - opposed) / (aiding + opposed).
        const auto aiding = at (Joined::series, 1000.0), opposed = at (Joined::opposed, 1000.0);
        CHECK ((aiding - opposed) / (aiding + opposed) == Approx (k).margin (1e-6));
    }
}

// Open-circuit EMF: series 2e, parallel e, split e, split with the other shorted e(1 - k) at high frequencies. [calc]
TEST_CASE ("Two coils give the voltages of the closed forms")
{
    const auto k = 0.15;
    const auto volts = [k] (Joined joined, double hz)
    {
        const auto network = TwoCoils (joined, k, 0.0, 0.0, false).network();
        std::complex<double> h[2];
        network.responses (hz, h);
        return std::abs (h[0] + h[1]);
    };
    for (const auto hz : { 100.0, 1000.0, 10000.0 })
    {
        CHECK (volts (Joined::series, hz) == Approx (2.0).epsilon (1e-6));
        CHECK (volts (Joined::parallel, hz) == Approx (1.0).epsilon (1e-6));
        CHECK (volts (Joined::splitOpen, hz) == Approx (1.0).epsilon (1e-6));
    }
    CHECK (volts (Joined::splitShorted, 1e6) == Approx (1.0 - k).epsilon (1e-3));
    CHECK (volts (Joined::splitShorted, 1.0) == Approx (1.0).epsilon (1e-3));
}

// With the cable's capacitance alone parallel resonates at twice the frequency of series; with the windings' alone both
// resonate at 1/(2 pi sqrt(L (1 + k) C)). [calc]
TEST_CASE ("Parallel resonates an octave above series into a cable, and at the same place by itself")
{
    const auto k = 0.15;
    // Where the impedance is real: w^2 = 1/LC - (R/L)^2 for L and R of the whole.
    const auto resonance = [] (const TwoCoils& coils)
    {
        const auto network = coils.network();
        return findPeak ([&] (double hz) { return std::abs (network.outputImpedance (hz)); }, 500.0, 40000.0).hz;
    };
    const auto series = resonance ({ Joined::series, k, 0.0, 500e-12, false });
    const auto l = 2.0 * TwoCoils::henries * (1.0 + k);
    CHECK (series == Approx (1.0 / (2.0 * std::numbers::pi * std::sqrt (l * 500e-12))).epsilon (0.005)); // R shifts it a little

    // L C at a quarter of L is a quarter, but R/L stays: exact for the undamped frequency, whose phase is read here.
    const auto undamped = [] (Joined joined, double windings, double cable, double low, double high)
    {
        const auto network = TwoCoils (joined, 0.15, windings, cable, false).network();
        // Y = 1/(R + jwL) + jwC, so w0^2 = 1/LC is where Im(1/(Y - jwC))/w = L meets 1/(w^2 C): bisection on Z.
        std::complex<double> h[2];
        for (int i = 0; i < 100; ++i)
        {
            const auto middle = 0.5 * (low + high);
            network.responses (middle, h);
            (((h[0] + h[1]).real() > 0.0) ? low : high) = middle; // V = e/(1 - w^2 LC + jwRC): imaginary at w0
        }
        return low;
    };
    const auto inSeries = undamped (Joined::series, 0.0, 500e-12, 100.0, 40000.0);
    CHECK (undamped (Joined::parallel, 0.0, 500e-12, 100.0, 40000.0) == Approx (2.0 * inSeries).epsilon (1e-7));
    CHECK (inSeries == Approx (1.0 / (2.0 * std::numbers::pi * std::sqrt (l * 500e-12))).epsilon (1e-7));

    const auto own = 1.0 / (2.0 * std::numbers::pi * std::sqrt (TwoCoils::henries * (1.0 + k) * 90e-12));
    CHECK (undamped (Joined::series, 90e-12, 0.0, 100.0, 40000.0) == Approx (own).epsilon (1e-7));
    CHECK (undamped (Joined::parallel, 90e-12, 0.0, 100.0, 40000.0) == Approx (own).epsilon (1e-7));
}

// Ohms at the jack = R pickup parallel R volume. [calc]
TEST_CASE ("A meter reads the pickup beside the volume pot")
{
    const auto reading = [] (std::vector<double> coils, std::vector<double> pots, bool inSeries)
    {
        Netlist netlist;
        const auto hot = netlist.addNode();
        auto at = hot;
        for (size_t i = 0; i < coils.size(); ++i)
        {
            const auto next = inSeries && i + 1 < coils.size() ? netlist.addNode() : ground;
            netlist.addBranch (inSeries ? at : hot, next, coils[i], 2.0);
            at = next;
        }
        for (const auto pot : pots)
            netlist.addResistor (hot, ground, pot);
        netlist.addCapacitor (hot, ground, 22e-9); // blocks
        return dcResistance (netlist, hot, ground);
    };
    CHECK (reading ({ 4e3 }, { 500e3 }, false) == Approx (3968.25).margin (0.005));
    CHECK (reading ({ 4e3, 4e3 }, { 500e3 }, true) == Approx (7874.02).margin (0.005));
    CHECK (reading ({ 4e3, 4e3 }, { 500e3 }, false) == Approx (1992.03).margin (0.005));
    CHECK (reading ({ 6e3 }, { 250e3 }, false) == Approx (5859.38).margin (0.006));
    CHECK (reading ({ 8e3, 7.5e3 }, { 500e3, 500e3 }, false) == Approx (3811.94).margin (0.005));
    CHECK (reading ({ 4e3, 4e3 }, { 500e3, 1e6 }, true) == Approx (7812.5).margin (1.5)); // with the input left on

    Netlist open;
    const auto a = open.addNode(), b = open.addNode();
    open.addCapacitor (a, b, 1e-9);
    CHECK (dcResistance (open, a, b) > 1e11);
    CHECK (dcResistance (open, a, a) == 0.0);
    open.addResistor (a, b, 1e-6);
    open.addResistor (a, ground, 1e6);
    CHECK (dcResistance (open, a, b) == Approx (1e-6).epsilon (1e-9));
    CHECK (dcResistance (open, b, ground) == Approx (1e6).epsilon (1e-5));
    open.addFollower (a, b, 1.0);
    CHECK_THROWS_AS (dcResistance (open, a, b), std::invalid_argument);
}

// A capacitance across any resistance: the noise over the whole band is sqrt(kT/C), 600 pF at 293.15 K 2.59723 uV,
// k = 1.380649e-23 J/K (SI). Network noise: 4kT Re Z(f).
TEST_CASE ("600 pF across any resistance makes 2.59723 uV of noise")
{
    constexpr auto boltzmann = 1.380649e-23, kelvin = 293.15;
    for (const auto ohms : { 1e3, 100e3, 1e6 })
    {
        Netlist netlist;
        const auto top = netlist.addNode();
        netlist.addResistor (top, ground, ohms);
        netlist.addCapacitor (top, ground, 600e-12);
        const Network network (netlist, {}, top);

        // Over ln f by the trapezoidal rule, from far below the corner to far above.
        const auto corner = 1.0 / (2.0 * std::numbers::pi * ohms * 600e-12), step = 0.01;
        auto sum = 0.0;
        for (auto x = -16.0; x < 16.0; x += step)
        {
            const auto hz = corner * std::exp (x);
            sum += 4.0 * boltzmann * kelvin * network.outputImpedance (hz).real() * hz * step;
        }
        CAPTURE (ohms);
        CHECK (std::sqrt (sum) * 1e6 == Approx (2.59723).epsilon (1e-5));
    }

    // 10k, 20 kHz wide, 290 K: 1.78972 uV.
    Netlist netlist;
    const auto top = netlist.addNode();
    netlist.addResistor (top, ground, 10e3);
    const auto ohms = Network (netlist, {}, top).outputImpedance (1000.0).real();
    CHECK (std::sqrt (4.0 * boltzmann * 290.0 * ohms * 20e3) * 1e6 == Approx (1.78972).epsilon (1e-5));
}
}
