#include "guitar/Bench.h"

#include "guitar/GuitarCircuit.h"
#include "guitar/Nets.h"
#include "guitar/Roles.h"

#include <catch2/catch.hpp>

namespace stepTest
{
using namespace coldiron;
using namespace coldiron::support;

namespace
{
std::vector<Step> seriesParallel (const std::string& pickup, const std::string& on)
{
    const auto pull = on + "-pull";
    return { fitPull (pull, on, pickup),
             unsolderStep (pickup + ".north.finish", pickup + ".south.finish"),
             solderStep ({ pickup + ".north.finish", pull + ".a" }),
             solderStep ({ pickup + ".south.finish", pull + ".b" }),
             solderStep ({ pull + ".a-down", pull + ".b-down" }),
             solderStep ({ pull + ".a-up", "@" + pickup + ".south.start" }),
             solderStep ({ pull + ".b-up", "@" + pickup + ".north.start" }) };
}

std::vector<Step> phasePull (const std::string& pickup, const std::string& on)
{
    const auto pull = on + "-pull";
    return { fitPull (pull, on, pickup), moveStep (pickup + ".hot", pull + ".a", pull + ".a-down"),
             moveStep (pickup + ".cold", pull + ".b", pull + ".b-down"), solderStep ({ pull + ".a-down", pull + ".b-up" }),
             solderStep ({ pull + ".b-down", pull + ".a-up" }) };
}

std::vector<Step> joined (std::vector<Step> a, const std::vector<Step>& b)
{
    a.insert (a.end(), b.begin(), b.end());
    return a;
}
}

TEST_CASE ("A volume's output is the lug nearer to the tip, before and after the swap", "[roles]")
{
    const auto harness = fourKnobs();
    CHECK (resolvePoint (harness, "bridge-volume.out") == "bridge-volume.2");
    CHECK (resolvePoint (harness, "bridge-volume.in") == "bridge-volume.3");
    const auto own = applyStep (harness, swapStep ("bridge-volume.in", "bridge-volume.out"));
    CHECK (resolvePoint (own, "bridge-volume.out") == "bridge-volume.3");
    CHECK (own.landings().at ("bridge.north.start").lug == "bridge-volume.2");
    CHECK (own.hasWire ("bridge-volume.3", "selector.bridge"));
    CHECK_THROWS_WITH (resolvePoint (harness, "bridge-tone.out"), Catch::Contains ("bridge-tone.out"));
}

TEST_CASE ("A pickup's hot and cold side are found through the switches that serve it", "[roles]")
{
    const auto harness =
        withSteps (fourKnobs(), joined (phasePull ("bridge", "bridge-tone"), seriesParallel ("bridge", "bridge-volume")));
    const auto hot = sideConnections (harness, { "bridge", false });
    const auto cold = sideConnections (harness, { "bridge", true });
    REQUIRE_FALSE (hot.empty());
    REQUIRE_FALSE (cold.empty());
    CHECK (resolvePoint (harness, "@bridge.hot") == "bridge-volume.3");
    CHECK (resolvePoint (harness, "@bridge.cold") == "bridge-volume.case");
    CHECK_THROWS_WITH (applyStep (harness, solderStep ({ "bridge.hot", "jack.tip" })), Catch::Contains ("whole side"));
}

TEST_CASE ("Series-parallel switch: parallel when up, series when down, in every order with phase", "[steps]")
{
    for (const bool phaseFirst : { false, true })
    {
        const auto sp = seriesParallel ("bridge", "bridge-volume"), phase = phasePull ("bridge", "bridge-tone");
        const auto harness = withSteps (fourKnobs(), phaseFirst ? joined (phase, sp) : joined (sp, phase));
        for (const char* phaseAt : { "down", "up" })
        {
            Setting series, parallel;
            series.levers = { { "bridge-tone-pull", phaseAt }, { "bridge-volume-pull", "down" } };
            parallel.levers = { { "bridge-tone-pull", phaseAt }, { "bridge-volume-pull", "up" } };
            const Nets inSeries (harness, series), inParallel (harness, parallel);
            const std::string start = std::string (phaseAt) == "down" ? "bridge.north.start" : "bridge.south.start";
            const std::string end = std::string (phaseAt) == "down" ? "bridge.south.start" : "bridge.north.start";
            CHECK (inSeries.joined ("bridge.north.finish", "bridge.south.finish"));
            CHECK (inSeries.joined (start, "bridge-volume.3"));
            CHECK (inSeries.joined (end, "jack.sleeve"));
            CHECK (inParallel.joined ("bridge.north.start", "bridge.south.finish"));
            CHECK (inParallel.joined ("bridge.south.start", "bridge.north.finish"));
            CHECK (inParallel.joined (start, "bridge-volume.3"));
            CHECK (inParallel.joined (end, "jack.sleeve"));
            CHECK_FALSE (inParallel.joined ("bridge.north.start", "bridge.south.start"));
        }
    }
}

TEST_CASE ("The same pot carries one switch, and the fault says so", "[steps]")
{
    const auto once = withSteps (fourKnobs(), seriesParallel ("bridge", "bridge-volume"));
    CHECK_THROWS_WITH (withSteps (once, phasePull ("bridge", "bridge-volume")), Catch::Contains ("already"));
}

TEST_CASE ("Undoing is the difference back, as bench steps", "[steps]")
{
    const auto before = fourKnobs();
    auto changed = withSteps (before, joined (seriesParallel ("neck", "neck-volume"), phasePull ("bridge", "bridge-tone")));
    changed = applyStep (changed, swapStep ("bridge-volume.in", "bridge-volume.out"));
    changed = applyStep (changed, moveStep ("neck-tone.1", "neck-volume.out"));
    changed = withSteps (changed, { fitStep (capacitor ("bleed", 1e-9)), solderStep ({ "bleed.1", "bridge-volume.in" }),
                                    solderStep ({ "bleed.2", "bridge-volume.out" }) });
    Step replace;
    replace.kind = Step::Kind::replace;
    replace.part = "neck-cap";
    replace.as = capacitor ("neck-cap", 10e-9);
    changed = applyStep (changed, replace);

    CHECK_FALSE (changed.sameAs (before));
    CHECK (withSteps (before, difference (before, changed)).sameAs (changed));
    CHECK (withSteps (changed, difference (changed, before)).sameAs (before));
    CHECK (difference (before, before).empty());
    for (const auto& step : difference (before, changed))
        CHECK_FALSE (inWords (step).empty());
}

TEST_CASE ("A path to the jack is a loop through coil and jack, whatever the values", "[circuit]")
{
    auto harness = seriesHumbucker();
    CHECK (buildCircuit (harness, {}, {}).path == Path::open);
    Setting down;
    down.knobs["volume"] = 0.0;
    CHECK (buildCircuit (harness, down, {}).path == Path::open);
    CHECK (buildCircuit (applyStep (harness, unsolderStep ("bridge.north.finish", "bridge.south.finish")), {}, {}).path
           == Path::none);
    CHECK (buildCircuit (applyStep (harness, unsolderStep ("volume.2", "jack.tip")), {}, {}).path == Path::none);
    CHECK (buildCircuit (applyStep (harness, solderStep ({ "jack.tip", "ground" })), {}, {}).path == Path::shorted);
    Setting wrong;
    wrong.knobs["volume"] = 11.0;
    CHECK_THROWS_WITH (buildCircuit (harness, wrong, {}), Catch::Contains ("0 to 10"));
}
}
