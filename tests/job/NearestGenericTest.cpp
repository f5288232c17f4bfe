// Which generic pickup a reading of ohms is scaled from. Ranges of the trade: a humbucker of 12 to 17k has 7 to 10 H, a
// single coil of 7 to 9k with many turns 5 to 7 H; common practice of the trade, no source.
#include "support/JobFixture.h"

#include "coilfit/CoilFit.h"
#include "job/NearestGeneric.h"
#include "job/Readers.h"

namespace nearestGenericTest
{
using namespace coldiron;

namespace
{
GenericPickup shippedPickup (const std::string& name)
{
    Diagnostics diagnostics;
    const auto folders = support::shipped();
    Library library (folders, diagnostics);
    const auto resolved = library.resolve ("pickup", name);
    REQUIRE (resolved.has_value());
    return { name, readPickup (resolved->json, diagnostics) };
}

CoilFit fitted (const GenericPickup& generic, double ohms)
{
    PickupReadings readings;
    readings.readings.push_back ({ OhmsReading { ohms }, 0 });
    return fitCoil (generic.pickup, readings);
}
}

TEST_CASE ("Far from the pickup it began with, ohms are scaled from the nearest of its kind", "[ohms]")
{
    const auto moderate = shippedPickup ("humbucker-moderate");
    CHECK (nearestGeneric (moderate, 8.9e3, support::shipped()).preset == "humbucker-moderate");
    const auto hot = nearestGeneric (moderate, 14.2e3, support::shipped());
    CHECK (hot.preset.rfind ("humbucker-hot", 0) == 0);
    CHECK (hot.pickup.name == moderate.pickup.name); // its own, with other values
    const auto fit = fitted (hot, 14.2e3);
    REQUIRE (fit.accepted());
    CHECK (fit.values[CoilFit::inductance].value > 7.0);
    CHECK (fit.values[CoilFit::inductance].value < 10.0);
    CHECK (fit.pickup.known == Provenance::fromOhms);

    const auto single = nearestGeneric (shippedPickup ("single-coil"), 7.9e3, support::shipped());
    CHECK (single.preset == "single-high-turn");
    CHECK (nearestGeneric (shippedPickup ("bass-single"), 9.4e3, support::shipped()).preset.rfind ("bass-", 0) == 0);
    const auto reverse = nearestGeneric (shippedPickup ("single-coil-reverse"), 7.9e3, support::shipped());
    CHECK (reverse.pickup.coils.front().magnet == Magnet::south);
}

TEST_CASE ("Beyond 20 % of any it stays assumed and says why", "[ohms]")
{
    const auto moderate = shippedPickup ("humbucker-moderate");
    const auto far = fitted (moderate, 14.2e3);
    REQUIRE (far.accepted());
    CHECK (far.pickup.known == Provenance::assumed);
    CHECK (far.values[CoilFit::inductance].value < 10.5); // as DCR squared it would be 14 H
    CHECK (std::any_of (far.notes.begin(), far.notes.end(),
                        [] (const FitNote& note) { return note.kind == FitNote::Kind::farFromGeneric; }));
    CHECK (fitted (moderate, 9.0e3).pickup.known == Provenance::fromOhms);
}
}
