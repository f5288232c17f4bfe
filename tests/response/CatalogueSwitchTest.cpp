#include "CatalogueFixture.h"

#include "analysis/OhmTable.h"

namespace catalogueSwitchTest
{
using namespace coldiron;
using namespace coldiron::catalogue;

// The four-pole blades and the rotaries at work: ohms at the jack in every position [calc: coils in series, in parallel or
// shorted, beside the volume pot], worked out by hand from the presets' resistances.
namespace
{
double beside (double a, double b) { return a * b / (a + b); }

double coilOhms (const Harness& harness, const std::string& pickup, size_t coil)
{
    return harness.find (pickup)->as<PickupPart>()->pickup.coils.at (coil).dcrOhms;
}

double potOhms (const Harness& harness) { return harness.find ("volume")->as<PotPart>()->ohms; }

Harness guitarOf (const std::string& name)
{
    Diagnostics diagnostics;
    const auto guitar = readGuitar (name, shipped(), diagnostics);
    for (const auto& fault : diagnostics)
        FAIL_CHECK (fault.text());
    REQUIRE (guitar.has_value());
    return guitar->harness;
}

void checkOhms (const Harness& harness, const std::vector<double>& coils)
{
    const auto table = ohmTable (harness);
    REQUIRE (table.size() == coils.size());
    for (size_t i = 0; i < coils.size(); ++i)
    {
        CAPTURE (i);
        CHECK (table[i].ohms == Approx (beside (coils[i], potOhms (harness))).epsilon (1e-4));
    }
}
}

TEST_CASE ("Five positions of a four-pole blade split two humbuckers by themselves")
{
    const auto harness = guitarOf ("two-humbuckers-five-positions");
    const double nn = coilOhms (harness, "neck", 0), ns = coilOhms (harness, "neck", 1), bn = coilOhms (harness, "bridge", 0),
                 bs = coilOhms (harness, "bridge", 1);
    checkOhms (harness, { bn + bs, bn, beside (nn + ns, bn + bs), beside (ns, bn), nn + ns });
}

TEST_CASE ("A three-position four-pole blade sets two pickups in series in the middle")
{
    const auto harness = guitarOf ("two-single-coils-blade-series");
    const double neck = coilOhms (harness, "neck", 0), bridge = coilOhms (harness, "bridge", 0);
    checkOhms (harness, { bridge, neck + bridge, neck });
}

TEST_CASE ("A four-position rotary sets two pickups alone, in parallel and in series")
{
    const auto harness = guitarOf ("two-single-coils-rotary");
    const double neck = coilOhms (harness, "neck", 0), bridge = coilOhms (harness, "bridge", 0);
    checkOhms (harness, { bridge, beside (neck, bridge), neck, neck + bridge });
}

TEST_CASE ("A six-position rotary gives a humbucker six voices")
{
    const auto before = guitarOf ("one-humbucker");
    Diagnostics diagnostics;
    const auto use = fillRewire ("voice-rotary", { { "pickup", "bridge" } }, before, shipped(), diagnostics);
    REQUIRE (use.has_value());
    const auto after = applyRewires (before, { *use }, "test", diagnostics);
    REQUIRE (after.has_value());
    const double north = coilOhms (before, "bridge", 0), south = coilOhms (before, "bridge", 1);
    checkOhms (*after, { north + south, beside (north, south), north, south, north + south, north + beside (south, 4.7e3) });
}
}
