// Each coil's hum has the sign of its winding as connected, its string EMF that sign times its magnet: so of two coils that
// both add the strings, those of opposite magnets cancel the hum [calc].
#include "response/CoilChoice.h"
#include "response/Responses.h"

#include <catch2/catch.hpp>

namespace coilChoiceTest
{
using namespace coldiron;
using namespace coldiron::support;

namespace
{
/** Neck and bridge humbuckers, both split to one coil, straight on the jack; the coil kept is named. */
Harness bothSplit (const std::string& neckKeeps, const std::string& bridgeKeeps, Part neck = humbucker ("neck"),
                   Part bridge = humbucker ("bridge"))
{
    Harness harness;
    harness.addPart (std::move (neck));
    harness.addPart (std::move (bridge));
    harness.addPart (jack());
    for (const auto& [pickup, keeps] : { std::pair<std::string, std::string> { "neck", neckKeeps }, { "bridge", bridgeKeeps } })
    {
        const std::string other = keeps == "north" ? "south" : "north";
        // String sign from start to finish is + for the north coil and - for the south one: turned over, they add.
        harness.solder ({ pickup + "." + keeps + (keeps == "north" ? ".start" : ".finish"), "jack.tip" });
        harness.solder ({ pickup + "." + keeps + (keeps == "north" ? ".finish" : ".start"), "jack.sleeve" });
        harness.solder ({ pickup + "." + other + ".start", "jack.sleeve" });
        harness.solder ({ pickup + "." + other + ".finish", "jack.sleeve" });
    }
    return harness;
}

CircuitConfig configOf (Harness harness) { return { std::move (harness), {}, {}, sixStrings() }; }

double left (const CircuitConfig& config)
{
    double sum = 0.0;
    for (const CoilHum& coil : coilHums (config.response()))
        sum += coil.share;
    return std::abs (sum);
}
}

TEST_CASE ("two coils of the same magnet hum together, and the other coil of either is offered")
{
    const CircuitConfig alike = configOf (bothSplit ("north", "north"));
    const auto offered = otherCoils (alike);
    REQUIRE (offered.size() == 2);
    CHECK (offered[0].pickup == "bridge");
    CHECK (offered[0].kept == "north");
    CHECK (offered[0].other == "south");
    CHECK (offered[1].pickup == "neck");
    CHECK (offered[0].humDb == Approx (6.02).margin (0.01));

    // Done so, the circuit itself says that the hum goes and the strings still add.
    const CircuitConfig done = configOf (bothSplit ("north", "south"));
    CHECK (otherCoils (done).empty());
    CHECK (left (done) < 0.03 * left (alike));
    CHECK (db (std::abs (done.response().unisonResponse (200.0)) / std::abs (alike.response().unisonResponse (200.0)))
           == Approx (0.0).margin (0.5));
}

TEST_CASE ("the turns of the other coil say what is left")
{
    auto bridge = humbucker ("bridge");
    bridge.as<PickupPart>()->pickup.coils[1].turns *= 1.05; // the south coil: 5 % leave -26.02 dB [calc]
    const auto offered = otherCoils (configOf (bothSplit ("north", "north", humbucker ("neck"), bridge)));
    REQUIRE (offered.size() == 2);
    CHECK (offered[0].otherHumDb == Approx (-26.02).margin (0.1));
    CHECK (offered[1].otherHumDb < -60.0);
}

TEST_CASE ("nothing is offered where nothing is to be won")
{
    CHECK (otherCoils (configOf (bothSplit ("south", "north"))).empty()); // cancels already
    CHECK (otherCoils (configOf (seriesHumbucker())).empty());
    auto neck = single ("neck"), bridge = single ("bridge"); // two single coils wound alike have no other coil
    Harness harness;
    for (Part* part : { &neck, &bridge })
        harness.addPart (std::move (*part));
    harness.addPart (jack());
    for (const char* name : { "neck", "bridge" })
    {
        harness.solder ({ std::string (name) + ".coil.start", "jack.tip" });
        harness.solder ({ std::string (name) + ".coil.finish", "jack.sleeve" });
    }
    CHECK (otherCoils (configOf (harness)).empty());
}
}
