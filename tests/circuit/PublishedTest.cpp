// Worked circuits with printed answers.

#include "Benches.h"

#include <catch2/catch.hpp>

namespace publishedTest
{
using namespace coldiron;
using namespace coldiron::support;

namespace
{
/** 20 points evenly from 100 to 200 Hz: 100 + 100 k / 19. */
double gridHz (int k) { return 100.0 + 100.0 * k / 19.0; }

double milliamps (const Netlist& netlist, BranchId source, double hz)
{
    return 1e3 * std::abs (branchCurrent (netlist, source, source, hz));
}
}

// Source: Lessons in Electric Circuits, vol. II AC, ch. 6 (printed simulator output).
TEST_CASE ("A coil beside a capacitor draws the published currents")
{
    Netlist netlist;
    const auto top = netlist.addNode();
    const auto source = netlist.addBranch (top, ground, 0.0, 0.0);
    netlist.addBranch (top, ground, 100.0, 0.1);
    netlist.addCapacitor (top, ground, 10e-6);

    CHECK (milliamps (netlist, source, gridHz (0)) == Approx (7.387).epsilon (1e-4));
    CHECK (milliamps (netlist, source, gridHz (7)) == Approx (6.813).epsilon (1e-4));  // 136.842 Hz
    CHECK (milliamps (netlist, source, gridHz (11)) == Approx (7.044).epsilon (1e-4)); // 157.895 Hz
    CHECK (milliamps (netlist, source, gridHz (19)) == Approx (8.616).epsilon (1e-4));

    auto least = 0;
    for (int k = 1; k < 20; ++k)
        if (milliamps (netlist, source, gridHz (k)) < milliamps (netlist, source, gridHz (least)))
            least = k;
    CHECK (gridHz (least) == Approx (136.842).margin (0.001));
}

// Source: Lessons in Electric Circuits, vol. II AC, ch. 6 (printed simulator output). The topology of a loaded coil.
TEST_CASE ("A coil into a capacitor and a resistor draws the published currents")
{
    Netlist netlist;
    const auto top = netlist.addNode();
    const auto coil = netlist.addBranch (top, ground, 1.0, 0.1);
    netlist.addCapacitor (top, ground, 10e-6);
    netlist.addResistor (top, ground, 100.0);

    CHECK (milliamps (netlist, coil, gridHz (0)) == Approx (13.36).epsilon (5e-4));
    CHECK (milliamps (netlist, coil, gridHz (7)) == Approx (14.50).epsilon (5e-4));
    CHECK (milliamps (netlist, coil, gridHz (19)) == Approx (11.55).epsilon (5e-4));
}

// From memory of Lessons in Electric Circuits, vol. II AC, ch. 5: 1.5437k at -80.680 degrees, 77.734 mA.
TEST_CASE ("Resistance, coil and capacitor in series have the published impedance")
{
    Netlist netlist;
    const auto top = netlist.addNode(), middle = netlist.addNode();
    const auto source = netlist.addBranch (top, ground, 0.0, 0.0);
    const auto coil = netlist.addBranch (top, middle, 250.0, 0.65);
    netlist.addCapacitor (middle, ground, 1.5e-6);

    const auto amps = 120.0 * branchCurrent (netlist, source, coil, 60.0);
    CHECK (std::abs (120.0 / amps) == Approx (1543.7).epsilon (1e-4));
    CHECK (std::arg (120.0 / amps) * 180.0 / std::numbers::pi == Approx (-80.680).epsilon (1e-4));
    CHECK (std::abs (amps) == Approx (77.734e-3).epsilon (1e-4));
}

// From memory of Lessons in Electric Circuits, vol. I DC, network theorems: node 8 V; 5 A, 4 A, 1 A.
TEST_CASE ("Two batteries into one load share it as published")
{
    Netlist netlist;
    const auto top = netlist.addNode();
    const auto first = netlist.addBranch (top, ground, 4.0, 0.0), second = netlist.addBranch (top, ground, 1.0, 0.0);
    const auto load = netlist.addBranch (top, ground, 2.0, 0.0);

    const auto sum = [&] (auto&& perVolt) { return (28.0 * perVolt (first) + 7.0 * perVolt (second)).real(); };
    const auto current = [&] (BranchId measured)
    { return sum ([&] (BranchId drive) { return branchCurrent (netlist, drive, measured, 0.0); }); };

    CHECK (sum ([&] (BranchId drive) { return nodeVoltage (netlist, drive, top, 0.0); }) == Approx (8.0).epsilon (1e-11));
    // From a to b through the branch: a battery that gives counts negative.
    CHECK (current (first) == Approx (-5.0).epsilon (1e-11));
    CHECK (current (load) == Approx (4.0).epsilon (1e-11));
    CHECK (current (second) == Approx (1.0).epsilon (1e-11));
}
}
