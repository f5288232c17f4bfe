// The jobs most asked for in a shop, each from the guitar on the bench to a rendered option by the command alone: the client's or
// the trade's words find the rewire, it goes into the job, and what it does is measured. That these are the jobs, and what they
// are called, is common practice of the trade, no source. Ohms at the jack: pickup and volume in parallel at full volume, the
// tone's capacitor blocks DC (series-parallel circuits, Lessons in Electric Circuits, vol. I DC, from memory).
#include "ShopFloor.h"

#include <catch2/catch.hpp>

#include <functional>

using namespace coldiron::bench;

namespace
{
/** Within what the floor of 1e-6 ohm under a pot's ends leaves. */
void isOhms (double found, double expected) { CHECK (found == Approx (expected).epsilon (1e-6)); }

/** How far 4 kHz stands above 400 Hz, option against the guitar as it is with the same knobs. */
double brighterDb (const ShopFloor& floor) { return (floor.db (4000) - floor.db (400)) - (floor.db (4000, true) - floor.db (400, true)); }

/** What is soldered elsewhere than in the pickup's way at DC leaves the reading. */
void keepsOhms (const ShopFloor& floor, const std::map<std::string, std::string>& levers) { isOhms (floor.ohms (levers), floor.ohms (levers, true)); }

/** A rendered option is heard, and within what a wiring can do to a level. */
void isHeard (const ShopFloor& floor)
{
    const double db = floor.renderedDb();
    CHECK (db > -40.0);
    CHECK (db < 15.0);
}

struct Row
{
    std::string job, guitar;
    std::vector<std::string> at;
    std::string wish, rewire;
    std::function<void (const ShopFloor&)> check;
};

const std::string fourKnobs = "two-humbuckers-four-knobs", blade = "two-single-coils-blade";

std::vector<Row> inCoils()
{
    const auto coil = [] { return oneCoilOhms ("humbucker-hot"); };
    return {
        { "split", fourKnobs, { "selector=bridge" }, "coil-split", "split-shorted",
          [=] (const auto& floor)
          {
              isOhms (floor.ohms ({ { "selector", "bridge" }, { "bridge-volume-pull", "up" } }), beside (coil(), 500e3));
              isOhms (floor.ohms ({ { "selector", "bridge" }, { "bridge-volume-pull", "down" } }), beside (2 * coil(), 500e3));
              CHECK (floor.renderedDb() < -3.0); // one of two coils that add: about 6 dB
              CHECK (floor.renderedDb() > -9.0);
          } },
        { "series or parallel", fourKnobs, { "selector=bridge" }, "series/parallel switch", "series-parallel",
          [=] (const auto& floor)
          {
              isOhms (floor.ohms ({ { "selector", "bridge" }, { "bridge-volume-pull", "up" } }), beside (coil() / 2, 500e3));
              CHECK (brighterDb (floor) > 3.0); // a quarter of the inductance
          } },
        { "either coil", "one-humbucker", {}, "coil selector", "split-either",
          [] (const auto& floor)
          {
              const double one = oneCoilOhms ("humbucker-moderate");
              for (const auto* position : { "up", "down" })
                  isOhms (floor.ohms ({ { "bridge-toggle", position } }), beside (one, 500e3));
          } },
        { "another pickup", "three-single-coils", { "blade=bridge" }, "single-size humbucker", "humbucker-for-single",
          [] (const auto& floor) { isOhms (floor.ohms ({ { "blade", "bridge" } }), beside (pickupOhms ("twin-blade"), 250e3)); } },
        { "dummy coil", "three-single-coils", { "blade=bridge" }, "hum coil", "dummy-coil",
          [] (const auto& floor)
          {
              // The bridge's coil and the dummy in series. Their hum is opposed: [calc] the sign of the hum EMF is the winding's.
              isOhms (floor.ohms ({ { "blade", "bridge" } }), beside (pickupOhms ("single-coil") + pickupOhms ("dummy-coil"), 250e3));
          } },
    };
}

std::vector<Row> aroundPickups()
{
    return {
        { "both in series", blade, { "blade=both" }, "series switch", "both-in-series",
          [] (const auto& floor)
          {
              const double both = pickupOhms ("single-coil") + pickupOhms ("single-coil-reverse");
              const auto pull = floor.option()["setting"].begin().key();
              CHECK (floor.ohms ({ { "blade", "both" }, { pull, "up" } }) == Approx (beside (both, 250e3)).epsilon (0.3));
              CHECK (floor.renderedDb() > 0.5); // louder: common practice of the trade, no source
          } },
        { "out of phase", blade, { "blade=both" }, "phase switch", "phase-pull",
          [] (const auto& floor)
          {
              keepsOhms (floor, { { "blade", "both" } });
              CHECK (floor.renderedDb() < -3.0); // thin and quieter: common practice of the trade, no source
          } },
        { "independent volumes", fourKnobs, { "selector=both" }, "one volume kills both", "independent-volumes",
          [] (const auto& floor)
          {
              bool muted = false;
              for (const auto& volume : floor.column (true)["volumes"])
                  muted = muted || volume["mutes_others"] == true;
              CHECK (muted); // as it came in
              for (const auto& volume : floor.column()["volumes"])
                  CHECK (volume["mutes_others"] != true);
          } },
        { "blend", fourKnobs, { "selector=both" }, "pan pot", "blend", [] (const auto& floor) { isHeard (floor); } },
        { "master volume", fourKnobs, { "selector=bridge" }, "one volume for all", "master-volume",
          [] (const auto& floor) { isHeard (floor); } },
    };
}

std::vector<Row> aroundControls()
{
    return {
        { "tone on the output side", "one-humbucker", { "volume=5" }, "fifties wiring", "tone-on-output",
          [] (const auto& floor)
          {
              keepsOhms (floor, {});
              CHECK (brighterDb (floor) > 0.5); // loses less treble: common practice of the trade, no source
          } },
        { "treble bleed", "one-humbucker", { "volume=5" }, "cap and resistor in parallel", "treble-bleed-parallel",
          [] (const auto& floor)
          {
              keepsOhms (floor, {});
              CHECK (brighterDb (floor) > 1.0);
          } },
        { "pot of another value", "one-humbucker", {}, "1M pots", "pot-value",
          [] (const auto& floor) { isOhms (floor.ohms(), beside (pickupOhms ("humbucker-moderate"), 1e6)); } },
        { "no-load tone", "one-humbucker", {}, "no-load pot", "tone-no-load",
          [] (const auto& floor)
          {
              keepsOhms (floor, {});
              CHECK (floor.db (3000) > floor.db (3000, true)); // a load less, so the peak stands higher
          } },
        { "another tone capacitor", "one-humbucker", { "tone=0" }, "smaller tone cap", "tone-cap-value",
          [] (const auto& floor)
          {
              keepsOhms (floor, {});
              CHECK (floor.db (2000) > floor.db (2000, true) + 1.0); // half the capacitance, so it takes less away
          } },
        { "kill switch", "one-humbucker", {}, "stutter button", "kill-switch",
          [] (const auto& floor)
          {
              CHECK (floor.reads ({ { "kill", "pressed" } }) == "short");
              isOhms (floor.ohms ({ { "kill", "free" } }), floor.ohms ({}, true));
          } },
        { "straight to the jack", fourKnobs, { "selector=bridge" }, "bypass switch", "straight-through",
          [] (const auto& floor)
          { isOhms (floor.ohms ({ { "selector", "bridge" }, { floor.option()["setting"].begin().key(), "up" } }), pickupOhms ("humbucker-hot")); } },
    };
}

void runAll (const std::vector<Row>& rows)
{
    for (const auto& row : rows)
    {
        INFO (row.job << ": " << row.guitar << ", \"" << row.wish << "\"");
        const ShopFloor floor (row.guitar, row.at, row.wish, row.rewire);
        INFO (floor.option().dump());
        row.check (floor);
    }
}
}

TEST_CASE ("Shop jobs inside a pickup") { runAll (inCoils()); }
TEST_CASE ("Shop jobs around the pickups") { runAll (aroundPickups()); }
TEST_CASE ("Shop jobs around the controls") { runAll (aroundControls()); }

TEST_CASE ("Each shop job on every guitar it fits: offered, put in, rendered; elsewhere the reason")
{
    // On how many of the shipped guitars a technician can do the job at least: those with such pickups and such controls.
    const std::vector<std::pair<std::string, int>> jobs { { "split-shorted", 8 }, { "series-parallel", 8 }, { "both-in-series", 10 }, { "phase-pull", 10 },
                                                          { "independent-volumes", 4 }, { "tone-on-output", 10 }, { "treble-bleed-parallel", 20 },
                                                          { "kill-switch", 30 }, { "blend", 4 }, { "pot-value", 30 }, { "tone-cap-value", 20 },
                                                          { "master-volume", 4 }, { "tone-no-load", 20 }, { "straight-through", 20 }, { "dummy-coil", 8 } };
    const auto guitars = printed ({ "presets", "guitars", "--json" });
    Shop shop;
    writeAudio (shop.path ("short.wav"), pluckedTake (9600, 48000.0), 1, 48000, 0x010002); // WAV, 16 bit
    for (const auto& [rewire, least] : jobs)
    {
        int fits = 0;
        for (const auto& guitar : guitars)
        {
            const std::string name = guitar["preset"];
            INFO (rewire << " on " << name);
            const auto job = shop.path (rewire + "-" + name + ".json");
            REQUIRE (run ({ "new", name, "--take", shop.path ("short.wav"), "--out", job }).exitCode == 0);
            const auto offered = run ({ "offer", job, "--wish", rewire, "--add" });
            if (offered.exitCode != 0)
            {
                CHECK (offered.out.find ("not here  " + rewire + ": ") != std::string::npos);
                continue;
            }
            ++fits;
            const auto rendered = run ({ "render", job, "--option", "A", "--out", shop.path ("sounds") });
            INFO (rendered.err);
            CHECK (rendered.exitCode == 0);
        }
        INFO (rewire << " fits " << fits << " guitars");
        CHECK (fits >= least);
    }
}
