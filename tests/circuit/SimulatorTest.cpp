// Our circuits and ngspice's side by side, on published circuits and in time.

#include "Benches.h"
#include "support/Ngspice.h"

#include <catch2/catch.hpp>

namespace simulatorTest
{
using namespace coldiron;
using namespace coldiron::support;

namespace
{
constexpr auto pi = std::numbers::pi;

/** Two coils on one core: 10 V at 60 Hz behind a source resistance, 100 H each, k = 0.999, a load on the second. */
struct Transformer
{
    Netlist netlist;
    BranchId source, first, second;
    NodeId secondary;

    explicit Transformer (double loadOhms)
    {
        const auto primary = netlist.addNode();
        secondary = netlist.addNode();
        source = netlist.addBranch (primary, ground, 1e-6, 0.0);
        first = netlist.addBranch (primary, ground, 0.0, 100.0);
        second = netlist.addBranch (secondary, ground, 0.0, 100.0);
        netlist.addCoupling (first, second, 99.9);
        netlist.addResistor (secondary, ground, loadOhms);
    }
};
}

// Source: Lessons in Electric Circuits, vol. II AC, ch. 9 (printed simulator output): 1k 9.962 V; 200 ohm 9.348 V and
// 46.74 mA; open 9.990 V and 265.3 uA in the primary.
TEST_CASE ("Coupled coils give the published voltages, here and in ngspice")
{
    struct Row
    {
        double ohms, volts;
    };
    for (const auto& row : { Row { 1e3, 9.962 }, Row { 200.0, 9.348 }, Row { 1e9, 9.990 } })
    {
        const Transformer ours (row.ohms);
        const auto volts = 10.0 * nodeVoltage (ours.netlist, ours.source, ours.secondary, 60.0);
        CAPTURE (row.ohms);
        CHECK (std::abs (volts) == Approx (row.volts).epsilon (1e-4));

        std::complex<double> quick;
        Network (ours.netlist, { ours.source }, ours.secondary).responses (60.0, &quick);
        CHECK (std::abs (10.0 * quick - volts) < 1e-7);

        const auto theirs = Ngspice::ac ({ "v1 a 0 dc 0 ac 10", "rs a b 1e-6", "l1 b 0 100", "l2 c 0 100", "k1 l1 l2 0.999",
                                           "rl c 0 " + std::to_string (row.ohms) },
                                         { "c" }, { 60.0 });
        CHECK (std::abs (theirs.values[0][0]) == Approx (row.volts).epsilon (1e-4));
        CHECK (std::abs (theirs.values[0][0] - volts) < 1e-6);
    }

    const Transformer loaded (200.0), open (1e9);
    CHECK (10.0 * std::abs (branchCurrent (loaded.netlist, loaded.source, loaded.second, 60.0))
           == Approx (46.74e-3).epsilon (1e-4).margin (0.0));
    // Printed with four digits.
    CHECK (10.0 * std::abs (branchCurrent (open.netlist, open.source, open.first, 60.0))
           == Approx (265.3e-6).margin (0.05e-6).epsilon (0.0));
}

// In time: a 1 V sine through a loaded coil settles to the small-signal answer.
TEST_CASE ("ngspice's transient settles to its own small-signal answer")
{
    const Ngspice::Lines coil { "e1 a 0 src 0 1", "r1 a b 6k", "l1 b tip 2.5", "c1 tip 0 610p", "r2 tip 0 200k" };
    auto small = coil, wave = coil;
    small.push_back ("vsrc src 0 dc 0 ac 1");
    wave.push_back ("vsrc src 0 external");

    const auto hz = 3000.0, rate = 96000.0;
    const auto h = Ngspice::ac (small, { "tip" }, { hz }).values[0][0];
    int asked = 0;
    const auto run = Ngspice::transient (wave, { "tip" },
                                         { { "vsrc",
                                             [&] (double t)
                                             {
                                                 ++asked;
                                                 return std::sin (2.0 * pi * hz * t);
                                             } } },
                                         0.02, 0.5e-6);
    const auto heard = run.at (0, rate, 1900);
    CHECK (asked > 40000);
    CHECK (run.seconds.size() > 39000); // stepped evenly
    auto worst = 0.0;
    for (size_t k = 1000; k < heard.size(); ++k)
        worst = std::max (worst, std::abs (heard[k] - std::abs (h) * std::sin (2.0 * pi * hz * (double)k / rate + std::arg (h))));
    CHECK (worst < 1e-4 * std::abs (h));
}

TEST_CASE ("A recording read as a waveform is its band-limited self")
{
    std::vector<double> samples;
    for (int i = 0; i < 400; ++i)
        samples.push_back (std::sin (2.0 * pi * 0.15 * i));
    const auto wave = Ngspice::bandLimited (samples, 48000.0);
    for (double place = 100.0; place < 300.0; place += 0.37)
        CHECK (wave (place / 48000.0) == Approx (std::sin (2.0 * pi * 0.15 * place)).margin (1e-5));
    CHECK (wave (-1.0) == 0.0);
}

TEST_CASE ("ngspice says what is wrong")
{
    CHECK_THROWS_AS (Ngspice::ac ({ "v1 a 0 ac 1", "r1 a 0 1k" }, { "nowhere" }, { 100.0 }), std::runtime_error);
    CHECK_NOTHROW (Ngspice::ac ({ "v1 a 0 ac 1", "r1 a 0 1k" }, { "a" }, { 100.0 }));
}
}
