#include "Benches.h"

#include <catch2/catch.hpp>

namespace loadedCoilTest
{
using namespace coldiron;
using namespace coldiron::support;

// Second-order low-pass in closed form: H = 1/(g + s(L/Rp + RC) + s^2 LC), g = 1 + R/Rp; f0 = sqrt(g/LC)/2pi,
// Q = sqrt(g L C)/(L/Rp + RC), peak at f0 sqrt(1 - 1/(2Q^2)), height re DC Q/sqrt(1 - 1/(4Q^2)).
TEST_CASE ("A loaded coil is the second-order low-pass of the closed form")
{
    const auto none = std::numeric_limits<double>::infinity();
    struct Row
    {
        double henries, ohms, farads, load, f0, q, peakHz, peakDb;
    };
    const Row rows[] = {
        { 2.5, 6e3, 110e-12, none, 9597.404, 25.1259, 9593.603, 28.0042 },
        { 2.5, 6e3, 610e-12, 1e6, 4087.749, 6.3585, 4062.394, 16.0940 },
        { 2.5, 6e3, 610e-12, 1.0 / (2.0 / 500e3 + 1e-6), 4136.222, 2.4525, 3960.575, 7.9766 },
        { 2.5, 6e3, 610e-12, 1.0 / (2.0 / 250e3 + 1e-6), 4184.133, 1.5326, 3712.154, 4.1971 },
        { 4.6, 8e3, 540e-12, 1.0 / (2.0 / 500e3 + 1e-6), 3256.574, 1.8604, 3012.182, 5.7178 },
        { 8.0, 14e3, 600e-12, 1.0 / (2.0 / 500e3 + 1e-6), 2376.246, 1.4807, 2087.782, 3.9351 },
    };

    for (const auto& row : rows)
    {
        const LoadedCoil coil (row.henries, row.ohms, row.farads, row.load);
        const auto network = coil.network();
        const auto g = 1.0 + row.ohms / row.load;
        CAPTURE (row.henries, row.farads, row.load);

        // The printed digits of the table.
        const auto peak = findPeak ([&] (double hz) { return gain (network, hz); }, 500.0, 20000.0);
        CHECK (peak.hz == Approx (row.peakHz).epsilon (1e-6));
        CHECK (20.0 * std::log10 (peak.gain * g) == Approx (row.peakDb).margin (1e-4));
        CHECK (gain (network, 1e-3) * g == Approx (1.0).epsilon (1e-6));

        // At f0 the response lags by 90 degrees and stands at Q times the DC gain.
        std::complex<double> h;
        network.responses (row.f0, &h);
        CHECK (std::abs (h) * g == Approx (row.q).epsilon (2e-5).margin (6e-5));
        CHECK (std::arg (h) * 180.0 / std::numbers::pi == Approx (-90.0).margin (0.002));

        // The formula itself, everywhere.
        for (double hz = 10.0; hz < 40000.0; hz *= 1.37)
        {
            const std::complex<double> s (0.0, 2.0 * std::numbers::pi * hz);
            const auto closed =
                1.0 / (g + s * (row.henries / row.load + row.ohms * row.farads) + s * s * row.henries * row.farads);
            network.responses (hz, &h);
            CHECK (std::abs (h - closed) <= 5e-6 * std::abs (closed)); // the leakage of 1e-12 S damps the highest Q
        }
    }
}

// A capacitance C charged through R: -3.0103 dB (10 log10 2) and -45 degrees at 1/(2 pi R C). [calc]
TEST_CASE ("A resistance and a capacitance turn at 1/(2 pi R C)")
{
    const auto ohms = 100e3, farads = 1e-9;
    const LoadedCoil coil (0.0, ohms, farads, std::numeric_limits<double>::infinity());
    std::complex<double> h;
    coil.network().responses (1.0 / (2.0 * std::numbers::pi * ohms * farads), &h);
    // A millionth of a decibel and not less: the 1e-12 S of leakage across 100k is a part of the circuit.
    CHECK (decibels (h) == Approx (-10.0 * std::log10 (2.0)).margin (1e-6));
    CHECK (std::arg (h) == Approx (-std::numbers::pi / 4.0).epsilon (1e-7));

    // With the leakage counted the tolerance is the arithmetic's.
    const auto leaky = 1.0 / (1.0 / ohms + 1e-12);
    coil.network().responses (1.0 / (2.0 * std::numbers::pi * leaky * farads), &h);
    CHECK (decibels (h * ohms / leaky) == Approx (-3.010299956639812).epsilon (1e-9));
    CHECK (std::arg (h) * 180.0 / std::numbers::pi == Approx (-45.0).epsilon (1e-9));
}

// One cell of eddy-current loss at f = R1/(2 pi L1) has Z = (R1/2)(1 + j) exactly. [calc]
TEST_CASE ("A loss cell at its corner is half its resistance, real and imaginary")
{
    Netlist netlist;
    const auto top = netlist.addNode();
    const auto emf = netlist.addBranch (top, ground, 1e-6, 0.0);
    const auto cell = netlist.addNode();
    const auto meter = netlist.addBranch (top, cell, 0.0, 0.0); // an ammeter
    netlist.addBranch (cell, ground, 0.0, 1.0);
    netlist.addResistor (cell, ground, 40e3);

    const auto current = branchCurrent (netlist, emf, meter, 6366.197723675814);
    const auto impedance = nodeVoltage (netlist, emf, top, 6366.197723675814) / current;
    CHECK (impedance.real() == Approx (20e3).epsilon (1e-7));
    CHECK (impedance.imag() == Approx (20e3).epsilon (1e-7));

    // The same through the modes: seen from the cell's own node.
    Netlist alone;
    const auto node = alone.addNode();
    alone.addBranch (node, ground, 0.0, 1.0);
    alone.addResistor (node, ground, 40e3);
    const auto seen = Network (alone, {}, node).outputImpedance (6366.197723675814);
    CHECK (seen.real() == Approx (20e3).epsilon (1e-7));
    CHECK (seen.imag() == Approx (20e3).epsilon (1e-7));
}

// DC inductance = the sum of all L; high-frequency inductance = the uncelled L. [calc]
TEST_CASE ("Loss cells count at the bottom and not at the top")
{
    Netlist netlist;
    const auto top = netlist.addNode(), a = netlist.addNode(), b = netlist.addNode();
    netlist.addBranch (top, a, 0.0, 1.6);
    netlist.addBranch (a, b, 0.0, 0.5);
    netlist.addResistor (a, b, 60e3);
    netlist.addBranch (b, ground, 0.0, 0.2);
    netlist.addResistor (b, ground, 500e3);

    const Network network (netlist, {}, top);
    const auto inductance = [&network] (double hz)
    { return network.outputImpedance (hz).imag() / (2.0 * std::numbers::pi * hz); };
    CHECK (inductance (10.0) == Approx (2.3).epsilon (1e-5));
    CHECK (inductance (100e6) == Approx (1.6).epsilon (1e-2)); // the leakage starts to count
    CHECK (inductance (20e6) == Approx (1.6).epsilon (1e-3));
}
}
