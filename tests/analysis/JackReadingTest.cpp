// A pickup's own ohms from what a meter reads at the jack.
// Values: R_pickup parallel R_volume, closed form; 8k with 500k reads 7874.02 ohm, 6k with 250k reads 5859.38 ohm.

#include "analysis/JackReading.h"
#include "job/Job.h"

#include <catch2/catch.hpp>

namespace jackReadingTest
{
using namespace coldiron;
using Refusal = LeadsReading::Refusal;

namespace
{
Guitar guitar (const char* preset)
{
    const PresetFolders folders ({ std::filesystem::path (COLDIRON_SOURCE) / "presets" });
    Diagnostics diagnostics;
    auto read = readGuitar (preset, folders, diagnostics);
    REQUIRE (read);
    return *read;
}
}

TEST_CASE ("the volume pot is taken out of a reading at the jack", "[jack]")
{
    const auto g = guitar ("one-humbucker");
    const auto setting = aloneAtJack (g.harness, "bridge");
    REQUIRE (setting);
    const auto eight = leadsFromJack (g.harness, *setting, "bridge", 8000.0 * 500e3 / 508e3);
    CHECK (eight.refusal == Refusal::none);
    CHECK (eight.ohms == Approx (8000.0).epsilon (1e-6));
    // Pots 20 % up or down: 1 / (1/R - 1/P), closed form.
    const double jack = 8000.0 * 500e3 / 508e3;
    CHECK (eight.lowOhms == Approx (1.0 / (1.0 / jack - 1.0 / 600e3)).epsilon (1e-6));
    CHECK (eight.highOhms == Approx (1.0 / (1.0 / jack - 1.0 / 400e3)).epsilon (1e-6));
    const auto six =
        leadsFromJack (guitar ("three-single-coils").harness, *aloneAtJack (guitar ("three-single-coils").harness, "bridge"),
                       "bridge", 6000.0 * 250e3 / 256e3);
    CHECK (six.ohms == Approx (6000.0).epsilon (1e-6));
}

TEST_CASE ("each pickup of a guitar with a switch is found alone, a blend has none", "[jack]")
{
    const auto two = guitar ("two-humbuckers-four-knobs");
    const auto neck = aloneAtJack (two.harness, "neck"), bridge = aloneAtJack (two.harness, "bridge");
    REQUIRE (neck);
    REQUIRE (bridge);
    CHECK (neck->levers.at ("selector") == "neck");
    CHECK (bridge->levers.at ("selector") == "bridge");
    CHECK_FALSE (aloneAtJack (guitar ("bass-two-single-coils").harness, "bridge"));
    CHECK_FALSE (aloneAtJack (guitar ("one-humbucker-buffered").harness, "bridge"));
}

TEST_CASE ("readings that no pickup gives are refused", "[jack]")
{
    const auto g = guitar ("one-humbucker");
    const auto setting = *aloneAtJack (g.harness, "bridge");
    const auto much = leadsFromJack (g.harness, setting, "bridge", 600e3);
    CHECK (much.refusal == Refusal::abovePots);
    CHECK (much.potsOhms == Approx (500e3).epsilon (0.005)); // one volume pot of 500k across the jack
    CHECK (leadsFromJack (g.harness, setting, "bridge", 0.1).refusal == Refusal::tooLittle);
    CHECK (leadsFromJack (g.harness, setting, "neck", 8e3).refusal == Refusal::noSuchPickup);
    CHECK (leadsFromJack (guitar ("one-humbucker-buffered").harness, {}, "bridge", 8e3).refusal == Refusal::buffered);
}
}
