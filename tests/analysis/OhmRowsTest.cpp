// Rows of the ohm table that differ, and volumes that are always on read apart. Pickup and pots in parallel, meter at DC
// (series-parallel circuits, Lessons in Electric Circuits, vol. I DC, from memory).
#include "support/JobFixture.h"

#include "analysis/OhmRows.h"

#include <algorithm>
#include <cmath>

namespace ohmRowsTest
{
using namespace coldiron;

namespace
{
Harness rewired (const std::string& guitar,
                 const std::vector<std::pair<std::string, std::map<std::string, std::string>>>& rewires)
{
    Diagnostics diagnostics;
    const auto read = readGuitar (guitar, support::shipped(), diagnostics);
    REQUIRE (read.has_value());
    std::vector<RewireUse> uses;
    auto harness = std::make_optional (read->harness);
    for (const auto& [preset, arguments] : rewires)
    {
        const auto use = fillRewire (preset, arguments, *harness, support::shipped(), diagnostics);
        REQUIRE (use.has_value());
        uses.push_back (*use);
        harness = applyRewires (read->harness, uses, {}, diagnostics);
        REQUIRE (harness.has_value());
    }
    return *harness;
}
}

TEST_CASE ("Four push-pulls give the rows that differ, and those give the whole table again")
{
    const auto harness =
        rewired ("two-humbuckers-four-knobs", { { "split-shorted", { { "pickup", "bridge" }, { "pot", "bridge-volume" } } },
                                                { "split-shorted", { { "pickup", "neck" }, { "pot", "neck-volume" } } },
                                                { "phase-pull", { { "pickup", "bridge" }, { "pot", "bridge-tone" } } },
                                                { "bass-cut", { { "pickup", "neck" }, { "pot", "neck-tone" } } } });
    const auto whole = ohmTable (harness);
    CHECK (whole.size() == 48); // 3 x 2 x 2 x 2 x 2
    const auto rows = rowsThatDiffer (whole);
    CHECK (rows.size() < 20);
    for (const auto& full : whole)
    {
        int fits = 0;
        for (const auto& row : rows)
        {
            bool is = true;
            for (size_t i = 0; i < row.levers.size(); ++i)
                is = is && (row.levers[i].second == "any" || row.levers[i].second == full.levers[i].second);
            if (! is)
                continue;
            ++fits;
            CHECK (row.kind == full.kind);
            CHECK (std::abs (row.ohms - full.ohms) <= 2e-3 * full.ohms);
        }
        CHECK (fits == 1);
    }
    // Whether reversed or not, a pickup reads the same.
    const auto phase = static_cast<size_t> (std::find_if (rows[0].levers.begin(), rows[0].levers.end(),
                                                          [] (const auto& lever) { return lever.first == "bridge-tone-pull"; })
                                            - rows[0].levers.begin());
    for (const auto& row : rows)
        CHECK (row.levers.at (phase).second == "any");
}

TEST_CASE ("Rows that all differ stay as they are")
{
    const auto whole = ohmTable (rewired ("three-single-coils", {}));
    CHECK (rowsThatDiffer (whole).size() <= whole.size());
    CHECK (rowsThatDiffer ({}).empty());
}

TEST_CASE ("A bass with two volumes and no selector reads each pickup with the other volume at 0")
{
    const auto harness = rewired ("bass-two-single-coils", {});
    const auto apart = volumesApart (harness);
    REQUIRE (apart.size() == 2);
    const auto ohmsOf = [&] (const std::string& pickup)
    { return harness.find (pickup)->as<PickupPart>()->pickup.coils.front().dcrOhms; };
    const auto potOf = [&] (const std::string& pot) { return harness.find (pot)->as<PotPart>()->ohms; };
    for (const auto& [volume, reading] : apart)
    {
        const auto pickup = volume.substr (0, volume.find ('-')),
                   other = pickup == "neck" ? std::string ("bridge") : std::string ("neck");
        // Pickups on the wipers: the one turned down is shorted and leaves its whole track across the jack.
        const double expected = 1.0 / (1.0 / ohmsOf (pickup) + 1.0 / potOf (volume) + 1.0 / potOf (other + "-volume"));
        INFO (volume);
        CHECK (reading.ohms == Approx (expected).epsilon (1e-6));
    }
    CHECK (volumesApart (rewired ("two-humbuckers-four-knobs", {})).empty()); // the toggle tells them apart
    CHECK (volumesApart (rewired ("one-humbucker", {})).empty());
    CHECK (volumesApart (rewired ("bass-blend", {})).empty()); // a blend is no volume of a pickup
}
}
