#include "guitar/Bench.h"

#include "guitar/Nets.h"

#include <catch2/catch.hpp>

namespace solderingTest
{
using namespace coldiron;
using namespace coldiron::support;

namespace
{
std::string lug (const Harness& harness, const std::string& lead) { return harness.landings().at (lead).lug; }

Harness loose()
{
    Harness harness;
    harness.addPart (humbucker ("neck"));
    harness.addPart (pot ("volume"));
    harness.addPart (capacitor ("cap", 1e-9));
    harness.addPart (jack());
    return harness;
}
}

TEST_CASE ("In a chain a lead lands on its nearest lug and lugs are wired one to the next", "[harness]")
{
    auto harness = loose();
    harness.solder ({ "neck.north.start", "volume.3", "jack.tip", "neck.south.start" });
    CHECK (lug (harness, "neck.north.start") == "volume.3");
    CHECK (lug (harness, "neck.south.start") == "jack.tip");
    CHECK (harness.hasWire ("volume.3", "jack.tip"));
    CHECK (harness.wires().size() == 1);
}

TEST_CASE ("A lead given two lugs lands on the first and a wire joins the two", "[harness]")
{
    auto harness = loose();
    harness.solder ({ "volume.3", "neck.north.start", "volume.2" });
    CHECK (lug (harness, "neck.north.start") == "volume.3");
    CHECK (harness.hasWire ("volume.3", "volume.2"));
    harness.solder ({ "neck.north.start", "volume.1" });
    CHECK (lug (harness, "neck.north.start") == "volume.3");
    CHECK (harness.hasWire ("volume.3", "volume.1"));
}

TEST_CASE ("Air joints: named by any lead, landing whole, gone when one lead is left", "[harness]")
{
    auto harness = loose();
    harness.solder ({ "neck.north.finish", "neck.south.finish", "cap.1" });
    CHECK (harness.leadsInJoint (harness.landings().at ("cap.1").joint).size() == 3);

    SECTION ("lands whole")
    {
        harness.solder ({ "cap.1", "volume.2" });
        for (const char* lead : { "cap.1", "neck.north.finish", "neck.south.finish" })
            CHECK (lug (harness, lead) == "volume.2");
        CHECK_THROWS_WITH (harness.unsolder ("cap.1", "neck.north.finish"), Catch::Contains ("only share volume.2"));
    }
    SECTION ("unsoldering lifts the first; a joint of one is no joint")
    {
        harness.unsolder ("neck.north.finish", "cap.1");
        CHECK (harness.landings().at ("neck.north.finish").isFree());
        harness.unsolder ("cap.1", "neck.south.finish");
        CHECK (harness.landings().at ("neck.south.finish").isFree());
        CHECK_THROWS_WITH (harness.unsolder ("cap.1", "neck.south.finish"), Catch::Contains ("not joined"));
    }
    SECTION ("two joints become one")
    {
        harness.solder ({ "neck.north.start", "neck.south.start" });
        harness.solder ({ "neck.north.start", "cap.1" });
        CHECK (harness.leadsInJoint (harness.landings().at ("cap.1").joint).size() == 5);
    }
}

TEST_CASE ("Swapping lugs exchanges everything on them, a wire between the two stays", "[harness]")
{
    auto harness = loose();
    harness.solder ({ "neck.north.start", "volume.3", "volume.2", "jack.tip" });
    harness.solder ({ "cap.1", "volume.2" });
    harness.swapLugs ("volume.3", "volume.2");
    CHECK (lug (harness, "neck.north.start") == "volume.2");
    CHECK (lug (harness, "cap.1") == "volume.3");
    CHECK (harness.hasWire ("volume.3", "volume.2"));
    CHECK (harness.hasWire ("volume.3", "jack.tip"));
    CHECK_FALSE (harness.hasWire ("volume.2", "jack.tip"));
}

TEST_CASE ("The two ends of a capacitor are interchangeable, those of a coil are not", "[harness]")
{
    auto one = loose(), two = loose();
    one.solder ({ "cap.1", "volume.3" });
    one.solder ({ "cap.2", "volume.2" });
    two.solder ({ "cap.2", "volume.3" });
    two.solder ({ "cap.1", "volume.2" });
    CHECK (one.sameAs (two));
    one.solder ({ "neck.north.start", "volume.3" });
    two.solder ({ "neck.north.finish", "volume.3" });
    CHECK_FALSE (one.sameAs (two));
}

TEST_CASE ("A point that is not there names those that are", "[harness]")
{
    auto harness = loose();
    CHECK_THROWS_WITH (harness.solder ({ "volume.4", "jack.tip" }),
                       Catch::Contains ("volume.4") && Catch::Contains ("1, 2, 3, case"));
    CHECK_THROWS_WITH (harness.solder ({ "tone.1", "jack.tip" }), Catch::Contains ("no part \"tone\""));
    CHECK_THROWS_WITH (harness.addPart (pot ("volume")), Catch::Contains ("already"));
    CHECK_THROWS_WITH (harness.unsolder ("volume.3", "jack.tip"), Catch::Contains ("no wire"));
    CHECK_THROWS_WITH (harness.unsolder ("cap.1", "jack.tip"), Catch::Contains ("it is free"));
}

TEST_CASE ("Contacts join nets only where the setting closes them", "[harness]")
{
    const auto harness = fourKnobs();
    Setting both;
    both.levers["selector"] = "both";
    CHECK_FALSE (Nets (harness).joined ("selector.neck", "jack.tip"));
    CHECK (Nets (harness, both).joined ("selector.neck", "selector.bridge"));
    CHECK (Nets (harness, Setting {}).joined ("selector.neck", "jack.tip"));
    CHECK (Nets (harness).joined ("neck.south.start", "jack.sleeve"));
}

TEST_CASE ("Replacing keeps what is soldered on points of the same name, or as mapped", "[harness]")
{
    auto harness = seriesHumbucker();
    harness.replacePart ("volume", pot ("x", 250e3), {});
    CHECK (harness.find ("volume")->as<PotPart>()->ohms == 250e3);
    CHECK (lug (harness, "bridge.north.start") == "volume.3");
    CHECK (harness.hasWire ("volume.2", "jack.tip"));

    CHECK_THROWS_WITH (harness.replacePart ("bridge", single ("x"), {}), Catch::Contains ("north.start is in use"));
    harness.replacePart ("bridge", single ("x"), { { "north.start", "coil.start" }, { "south.start", "coil.finish" } });
    CHECK (lug (harness, "bridge.coil.start") == "volume.3");
    CHECK (lug (harness, "bridge.coil.finish") == "volume.case");
}
}
