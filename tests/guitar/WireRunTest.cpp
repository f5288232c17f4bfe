#include "Bench.h"
#include "circuit/Network.h"
#include "guitar/GuitarCircuit.h"

#include <catch2/catch.hpp>

#include <cmath>

namespace wireRunTest
{
using namespace coldiron;

namespace
{
/** A single coil on a tip of its own: 6k, 2.5 H, 110 pF. */
Harness coilToJack()
{
    Harness harness;
    harness.addPart (support::single ("pickup"));
    harness.addPart (support::jack());
    harness.solder ({ "pickup.coil.start", "jack.tip" });
    harness.solder ({ "pickup.coil.finish", "ground" });
    return harness;
}

double levelDb (const Harness& harness, const Load& load, double hz)
{
    const auto built = buildCircuit (harness, {}, load);
    return 20.0 * std::log10 (std::abs (nodeVoltage (built.netlist, built.coils.front().branch, built.tip, hz)));
}

constexpr double peakHz = 4062.394; ///< of 2.5 H, 6k, 610 pF, 1M

/** Whether the run stands across the coil. */
bool counts (const Harness& harness)
{
    const Load bare { 0.0, 1e6, 0.0 };
    return std::abs (levelDb (harness, bare, peakHz) - levelDb (harness, bare, 0.0) - 16.0940) < 0.001;
}
}

TEST_CASE ("A run of wire loads the coil as so much capacitance across it")
{
    // [calc: second-order low-pass, closed form] 2.5 H, 6k, 610 pF in all, 1M: peak at 4062.394 Hz, 16.0940 dB above DC.
    auto harness = coilToJack();
    const Load bare { 0.0, 1e6, 0.0 };
    harness.addRun ("jack.tip", 300e-12);
    harness.addRun ("pickup.coil.start", 200e-12);
    CHECK (levelDb (harness, bare, peakHz) - levelDb (harness, bare, 0.0) == Approx (16.0940).margin (2e-4));
    CHECK (levelDb (harness, bare, 0.0) == Approx (levelDb (coilToJack(), bare, 0.0)).margin (1e-12));
    // A run and as much more cable are one thing.
    CHECK (levelDb (harness, bare, 7000.0) == Approx (levelDb (coilToJack(), { 500e-12, 1e6, 0.0 }, 7000.0)).margin (1e-9));
}

TEST_CASE ("A run goes with its point through every step")
{
    auto harness = coilToJack();
    harness.addRun ("pickup.coil.start", 500e-12);
    REQUIRE (counts (harness));

    SECTION ("on a lead, wherever it lands; off the circuit it loads nothing")
    {
        auto turned = harness;
        turned.swapLeads ("pickup.coil.start", "pickup.coil.finish");
        CHECK_FALSE (counts (turned)); // the lead is on ground now
        turned.swapLeads ("pickup.coil.start", "pickup.coil.finish");
        CHECK (counts (turned));
        auto between = harness;
        between.addPart (support::pot ("volume"));
        between = support::withSteps (
            between, { support::moveStep ("pickup.coil.start", "volume.3"), support::solderStep ({ "volume.3", "jack.tip" }) });
        CHECK (counts (between));
    }
    SECTION ("a part taken out takes it along and brings it back")
    {
        auto without = harness;
        without.removePart ("pickup");
        CHECK (without.runs().empty());
        for (const auto& step : difference (without, harness))
            without = applyStep (without, step);
        CHECK (without.runs().size() == 1);
        CHECK (counts (without));
    }
    SECTION ("another part takes over the run of a point that is mapped")
    {
        auto swapped = harness;
        auto other = support::single ("pickup");
        other.as<PickupPart>()->pickup.coils[0].name = "winding";
        swapped.replacePart ("pickup", other, { { "coil.start", "winding.start" }, { "coil.finish", "winding.finish" } });
        REQUIRE (swapped.runs().size() == 1);
        CHECK (swapped.runs()[0].at == "pickup.winding.start");
        CHECK (counts (swapped));
        for (const auto& step : difference (swapped, harness))
            swapped = applyStep (swapped, step);
        REQUIRE (swapped.runs().size() == 1);
        CHECK (swapped.runs()[0].at == "pickup.coil.start");
        CHECK (counts (swapped));
    }
}

TEST_CASE ("A mono plug lays the ring on the sleeve; a stereo plug hears either")
{
    // Two coils, one a contact, joined by 100k: with the ring grounded that is a load on the tip; with a stereo plug each
    // is heard at the other through a divider. At 0 Hz [calc: node voltages by hand], R = 6k each, inputs 1M.
    Harness harness;
    for (const char* name : { "first", "second" })
        harness.addPart (support::single (name));
    harness.addPart (support::resistor ("bridge", 100e3));
    auto jack = support::jack();
    jack.as<JackPart>()->stereo = true;
    harness.addPart (jack);
    harness.solder ({ "first.coil.start", "jack.tip" });
    harness.solder ({ "second.coil.start", "jack.ring" });
    harness.solder ({ "bridge.1", "jack.tip" });
    harness.solder ({ "bridge.2", "jack.ring" });
    harness.solder ({ "first.coil.finish", "second.coil.finish", "ground" });

    const auto heard = [&harness] (Plug plug)
    {
        const auto built = buildCircuit (harness, {}, { .plug = plug });
        const auto each = [&built] (size_t coil)
        { return nodeVoltage (built.netlist, built.coils[coil].branch, built.tip, 0.0).real(); };
        return std::array { each (0), each (1) };
    };
    const double own = 1.0 / 6e3, across = 1.0 / 100e3, input = 1.0 / 1e6, node = own + across + input;
    const double near = own * node / (node * node - across * across), far = own * across / (node * node - across * across);

    CHECK (heard (Plug::mono)[0] == Approx (own / node).epsilon (1e-7));
    CHECK (std::abs (heard (Plug::mono)[1]) < 1e-12);
    CHECK (heard (Plug::stereoTip)[0] == Approx (near).epsilon (1e-7));
    CHECK (heard (Plug::stereoTip)[1] == Approx (far).epsilon (1e-7));
    CHECK (heard (Plug::stereoRing)[0] == Approx (far).epsilon (1e-7));
    CHECK (heard (Plug::stereoRing)[1] == Approx (near).epsilon (1e-7));

    // In a mono jack a stereo plug's ring lies on the sleeve.
    CHECK (buildCircuit (coilToJack(), {}, { .plug = Plug::stereoRing }).path == Path::shorted);
    CHECK (buildCircuit (coilToJack(), {}, { .plug = Plug::stereoTip }).path == Path::open);
}
}
