// What a technician would offer first on the ten commonest guitars, wish by wish. Which guitars and which offers: common
// practice of the trade, no source.
#include "support/Rewired.h"

#include "offer/Starter.h"

namespace firstOffersTest
{
using namespace coldiron;
using namespace coldiron::support;

namespace
{
const std::vector<std::string> commonest { "three-single-coils",       "two-humbuckers-four-knobs",
                                           "two-single-coils-blade",   "humbucker-single-single",
                                           "two-humbuckers-two-knobs", "humbucker-single-humbucker",
                                           "two-soapbars-four-knobs",  "two-humbuckers-five-positions",
                                           "bass-split-coil",          "bass-two-single-coils" };

/** The rewires of each option in turn; "as it is" for a setting alone; "none" where nothing is offered. */
std::vector<std::string> offers (const std::string& starter, const std::string& guitar)
{
    Diagnostics diagnostics;
    const auto read = readStarter (starter, shipped(), diagnostics);
    REQUIRE (read.has_value());
    std::vector<std::string> names;
    for (const auto& option : offerStarter (*read, guitarOf (guitar), {}, {}, shipped()).options)
        names.push_back (option.rewires.empty() ? "as it is" : option.rewires.front().first);
    return names.empty() ? std::vector<std::string> { "none" } : names;
}

void checkFirst (const std::string& starter, const std::map<std::string, std::string>& first)
{
    for (const auto& guitar : commonest)
    {
        const auto all = offers (starter, guitar);
        std::string told;
        for (const auto& name : all)
            told += name + " ";
        INFO (starter << " on " << guitar << ": " << told);
        REQUIRE (first.count (guitar) == 1);
        CHECK (all.front() == first.at (guitar));
    }
}
}

TEST_CASE ("Asked for quiet, a technician first throws the switch, then changes what hums", "[offers]")
{
    checkFirst ("quieter", { { "three-single-coils", "as it is" },
                             { "two-single-coils-blade", "as it is" },
                             { "two-soapbars-four-knobs", "as it is" },
                             { "humbucker-single-single", "as it is" },
                             { "humbucker-single-humbucker", "stacked-for-single" }, // the middle pickup is what hums
                             { "two-humbuckers-four-knobs", "as it is" }, // what little hums in one goes down against two playing
                             { "two-humbuckers-two-knobs", "as it is" },
                             { "two-humbuckers-five-positions", "as it is" },
                             { "bass-split-coil", "screened-lead" },
                             { "bass-two-single-coils", "both-in-series" } }); // both on are quiet already, and stay so
}

TEST_CASE ("Asked for a brighter voice, a technician opens up humbuckers and unloads single coils", "[offers]")
{
    checkFirst ("brighter", { { "three-single-coils", "tone-no-load" },
                              { "two-single-coils-blade", "tone-no-load" },
                              { "two-soapbars-four-knobs", "tone-no-load" },
                              { "humbucker-single-single", "tone-no-load" }, // the neck single is on
                              { "humbucker-single-humbucker", "series-parallel" },
                              { "two-humbuckers-four-knobs", "series-parallel" },
                              { "two-humbuckers-two-knobs", "series-parallel" },
                              { "two-humbuckers-five-positions", "series-parallel" },
                              { "bass-split-coil", "tone-no-load" },
                              { "bass-two-single-coils", "straight-through" } }); // a tone's load is little beside two volumes'
}

TEST_CASE ("Asked for a volume that stays clear, a technician fits a treble bleed", "[offers]")
{
    std::map<std::string, std::string> first;
    for (const auto& guitar : commonest)
        first[guitar] = "treble-bleed-parallel";
    checkFirst ("clear-when-turned-down", first);
}

TEST_CASE ("Asked for volumes that do not mute each other, a technician puts the pickups on the wipers", "[offers]")
{
    std::map<std::string, std::string> first;
    for (const auto& guitar : commonest)
        first[guitar] = "none"; // one volume, or independent already
    first["two-humbuckers-four-knobs"] = first["two-soapbars-four-knobs"] = "independent-volumes";
    checkFirst ("independent", first);
}

TEST_CASE ("Asked for more voices, a technician uses what the guitar has not used yet", "[offers]")
{
    checkFirst ("more-voices", { { "three-single-coils", "seven-sounds" },
                                 { "two-single-coils-blade", "blade-4-series" },
                                 { "two-soapbars-four-knobs", "both-in-series" },
                                 { "humbucker-single-single", "series-split-parallel" },
                                 { "humbucker-single-humbucker", "series-split-parallel" },
                                 { "two-humbuckers-four-knobs", "series-split-parallel" },
                                 { "two-humbuckers-two-knobs", "series-split-parallel" },
                                 { "two-humbuckers-five-positions", "series-split-parallel" },
                                 { "bass-split-coil", "mid-scoop" },
                                 { "bass-two-single-coils", "both-in-series" } });
}
}
