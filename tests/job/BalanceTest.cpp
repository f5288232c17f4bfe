// How loud pickups are beside each other: common practice of the trade, no source.
#include "support/Rewired.h"

#include "job/Library.h"
#include "job/Readers.h"

namespace balanceTest
{
using namespace coldiron;
using namespace coldiron::support;

namespace
{
Pickup pickupOf (const std::string& name)
{
    Diagnostics diagnostics;
    const auto presets = shipped();
    Library library (presets, diagnostics);
    auto pickup = readPickup (library.resolve ("pickup", name)->json, diagnostics);
    REQUIRE (diagnostics.empty());
    return pickup;
}

double db (double ratio) { return 20.0 * std::log10 (ratio); }

/** Of all coils that hear strings, in series. */
double strengthDb (const std::string& name)
{
    double sum = 0.0;
    for (const auto& coil : pickupOf (name).coils)
        sum += coil.stringSign() == 0 ? 0.0 : coil.output;
    return db (sum);
}

double oneCoilDb (const std::string& name) { return db (pickupOf (name).coils.front().output); }
}

TEST_CASE ("Output follows turns where a file does not say it", "[balance]")
{
    int coils = 0;
    for (const auto& name : shipped().list ("pickups"))
        for (const auto& coil : pickupOf (name).coils)
        {
            INFO (name);
            CHECK (coil.output == Approx (coil.turns / 5000.0).epsilon (1e-12));
            ++coils;
        }
    CHECK (coils > 30);
}

TEST_CASE ("The balances of pickups are those of the trade", "[balance]")
{
    // Hot against moderate +2 to +4 dB.
    const double hot = strengthDb ("humbucker-hot") - strengthDb ("humbucker-moderate");
    CHECK (hot > 2.0);
    CHECK (hot < 4.0);
    // A split humbucker is weaker than a true single coil, a whole one louder.
    for (const char* name :
         { "humbucker-low-wind", "humbucker-moderate", "humbucker-hot", "humbucker-wide", "mini-humbucker", "twin-blade" })
    {
        INFO (name);
        CHECK (oneCoilDb (name) < strengthDb ("single-coil") - 1.0);
        CHECK (strengthDb (name) > strengthDb ("single-coil") + 0.5);
    }
    CHECK (strengthDb ("humbucker-low-wind") < strengthDb ("humbucker-moderate") - 0.5);
    CHECK (strengthDb ("single-high-turn") > strengthDb ("single-coil") + 1.0);
    CHECK (strengthDb ("soapbar") > strengthDb ("single-coil") + 1.0);
    CHECK (std::abs (strengthDb ("soapbar") - strengthDb ("humbucker-moderate")) < 1.0); // about as loud as a humbucker
    CHECK (strengthDb ("single-coil-stacked") < strengthDb ("single-coil"));
    // Each string passes one coil of a split-coil pickup.
    CHECK (oneCoilDb ("bass-split-coil") > strengthDb ("bass-single"));
    CHECK (strengthDb ("bass-humbucker") > strengthDb ("bass-single") + 2.0);
}

TEST_CASE ("A hot humbucker at the bridge is 2 to 4 dB louder than a moderate one there", "[balance]")
{
    const auto guitar = guitarOf ("two-humbuckers-four-knobs");
    const auto moderate = rewired (guitar, { { "pickup-swap", { { "pickup", "bridge" }, { "new", "humbucker-moderate" } } } });
    Setting bridge;
    bridge.levers["selector"] = "bridge";
    for (const double hz : { 200.0, 400.0, 800.0 })
    {
        const double louder = levelDb (guitar, guitar.harness, bridge, hz) - levelDb (guitar, moderate, bridge, hz);
        INFO (hz << " Hz: " << louder << " dB");
        CHECK (louder > 2.0);
        CHECK (louder < 4.0);
    }
}
}
