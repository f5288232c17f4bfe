// A harness by two routes: the product's circuit, and a netlist written from the same solder points for ngspice.

#include "Benches.h"
#include "guitar/GuitarCircuit.h"
#include "support/Ngspice.h"
#include "support/OracleNetlist.h"

#include <catch2/catch.hpp>

#include <chrono>
#include <iostream>

namespace oracleTest
{
using namespace coldiron;
using namespace coldiron::support;

namespace
{
template <typename Kind>
Part part (const std::string& name, Kind kind)
{
    Part result;
    result.name = name;
    result.kind = std::move (kind);
    return result;
}

Coil coil (const std::string& name, Magnet magnet, Wound wound, double output)
{
    Coil result;
    result.name = name;
    result.dcrOhms = 4.1e3;
    result.henries = 1.6;
    result.farads = 90e-12;
    result.losses = { { 0.5, 60e3 } };
    result.magnet = magnet;
    result.wound = wound;
    result.output = output;
    return result;
}

PickupPart humbucker (double output)
{
    PickupPart result;
    result.pickup.coils = { coil ("north", Magnet::north, Wound::clockwise, output),
                            coil ("south", Magnet::south, Wound::clockwise, 0.9 * output) };
    result.pickup.coupling = 0.15;
    result.bridgeMm = 44.0;
    return result;
}

PotPart pot (const Taper& taper)
{
    PotPart result;
    result.taper = taper;
    return result;
}

/** Two humbuckers, a volume and a tone each, a toggle; the bridge's joint hangs in the air. */
Harness twoHumbuckers()
{
    SwitchType toggle;
    toggle.name = "toggle";
    toggle.points = { "neck", "bridge", "out" };
    toggle.positions = { { "neck", { { "neck", "out" } } },
                         { "both", { { "neck", "out" }, { "bridge", "out" } } },
                         { "bridge", { { "bridge", "out" } } } };

    Harness harness;
    harness.addPart (part ("jack", JackPart {}));
    harness.addPart (part ("toggle", SwitchPart { toggle, "", "" }));
    for (const std::string side : { "neck", "bridge" })
    {
        auto pickup = humbucker (side == "neck" ? 0.8 : 1.0);
        if (side == "neck")
            pickup.pickup.inside = { { "north.finish", "south.finish" } };
        harness.addPart (part (side, pickup));
        harness.addPart (part (side + "-volume", pot (Taper::logarithmic (0.15))));
        harness.addPart (part (side + "-tone", pot (side == "neck" ? Taper::linear() : Taper::reverseLogarithmic (0.1))));
        harness.addPart (part (side + "-cap", CapacitorPart { 22e-9 }));
        harness.solder ({ side + ".north.start", side + "-volume.3", side + "-tone.1" });
        if (side == "bridge")
            harness.solder ({ "bridge.north.finish", "bridge.south.finish" });
        harness.solder ({ side + ".south.start", side + "-volume.case", "ground" });
        harness.solder ({ side + "-volume.1", side + "-volume.case" });
        harness.solder ({ side + "-volume.2", "toggle." + side });
        harness.solder ({ side + "-tone.2", side + "-cap.1" });
        harness.solder ({ side + "-cap.2", side + "-tone.case", "ground" });
    }
    harness.solder ({ "toggle.out", "jack.tip" });
    return harness;
}

Setting settingOf (const std::string& toggle, double knob)
{
    Setting setting;
    setting.levers["toggle"] = toggle;
    for (const char* name : { "neck-volume", "neck-tone", "bridge-volume", "bridge-tone" })
        setting.knobs[name] = knob;
    return setting;
}

std::vector<BranchId> branchesOf (const GuitarCircuit& circuit)
{
    std::vector<BranchId> result;
    for (const auto& source : circuit.coils)
        result.push_back (source.branch);
    return result;
}
}

TEST_CASE ("Two humbuckers answer the same by both routes: toggle and knobs, all coils and each alone")
{
    const auto harness = twoHumbuckers();
    const Load load;
    auto worst = 0.0;
    for (const char* toggle : { "neck", "both", "bridge" })
        for (const auto knob : { 10.0, 5.0, 2.5, 0.0 })
        {
            const auto setting = settingOf (toggle, knob);
            const auto circuit = buildCircuit (harness, setting, load);
            const Network network (circuit.netlist, branchesOf (circuit), circuit.tip);
            REQUIRE (circuit.coils.size() == 4);
            std::vector<std::complex<double>> h (4);

            for (int only = -1; only < 4; ++only)
            {
                OracleOptions options;
                options.onlyCoil = only;
                const OracleNetlist oracle (harness, setting, load, options);
                REQUIRE (oracle.coils.size() == 4);
                const auto theirs = Ngspice::acDecades (oracle.lines, { "tip" }, 20, 10.0, 40000.0);
                auto largest = 0.0;
                for (const auto& v : theirs.values[0])
                    largest = std::max (largest, std::abs (v));

                for (size_t i = 0; i < theirs.hz.size(); ++i)
                {
                    network.responses (theirs.hz[i], h.data());
                    std::complex<double> ours;
                    for (size_t k = 0; k < 4; ++k)
                        ours += h[k] * (only < 0 ? circuit.coils[k].stringDrive : only == (int)k ? 1.0 : 0.0);
                    CAPTURE (toggle, knob, only, theirs.hz[i]);
                    // 1e-4 dB, and the phase with it; below -100 dB the leakage of a silent side is all there is.
                    CHECK (std::abs (ours - theirs.values[0][i]) <= 1.1e-5 * std::abs (theirs.values[0][i]) + 1e-10);
                    if (std::abs (theirs.values[0][i]) > 1e-5)
                        worst = std::max (worst, std::abs (decibels (ours) - decibels (theirs.values[0][i])));
                }
                if (only < 0 && knob > 0.0)
                    CHECK (largest > 1e-3); // something is heard
            }
        }
    INFO ("worst " << worst << " dB");
    CHECK (worst < 1e-4);
}

// Printed on demand alone: test_circuit "[bench]".
TEST_CASE ("What two humbuckers cost", "[.][bench]")
{
    const auto circuit = buildCircuit (twoHumbuckers(), settingOf ("both", 5.0), {});
    std::vector<std::complex<double>> h (4);
    const auto now = [] { return std::chrono::steady_clock::now(); };
    const auto micros = [] (auto span) { return std::chrono::duration<double, std::micro> (span).count(); };
    auto least = 1e9, leastAnswers = 1e9;
    for (int run = 0; run < 300; ++run)
    {
        const auto start = now();
        const Network network (circuit.netlist, branchesOf (circuit), circuit.tip);
        const auto built = now();
        for (int i = 0; i < 400; ++i)
            network.responses (20.0 * std::pow (1000.0, i / 399.0), h.data());
        const auto end = now();
        least = std::min (least, micros (built - start));
        leastAnswers = std::min (leastAnswers, micros (end - built));
    }
    std::cout << circuit.netlist.numNodes() << " nodes, " << circuit.netlist.branches().size() << " branches: factorized in "
              << least << " us, 400 frequencies for 4 drives in " << leastAnswers << " us\n";
    CHECK (least + leastAnswers < 2000.0);
}
}
