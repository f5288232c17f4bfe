// The jobs most asked for in a shop, each from the guitar on the bench to a rendered option by the command alone: the client's or
// the trade's words find the rewire, it goes into the job, and what it does is measured. That these are the jobs, and what they
// are called, is common practice of the trade, no source. Ohms at the jack: pickup and volume in parallel at full volume, the
// tone's capacitor blocks DC (series-parallel circuits, Lessons in Electric Circuits, vol. I DC, from memory).
#include "WholeJob.h"

#include <catch2/catch.hpp>
#include <sndfile.h>

#include <algorithm>
#include <functional>

namespace shopFloorTest
{
using namespace coldiron::support;

namespace
{
/** Within what the floor of 1e-6 ohm under a pot's ends leaves. */
void isOhms (double found, double expected) { CHECK (found == Approx (expected).epsilon (1e-6)); }

/** How far 4 kHz stands above 400 Hz, option against the guitar as it is with the same knobs. */
double brighterDb (const ShopFloor& floor)
{
    return (floor.db (4000) - floor.db (400)) - (floor.db (4000, true) - floor.db (400, true));
}

/** What is soldered elsewhere than in the pickup's way at DC leaves the reading. */
void keepsOhms (const ShopFloor& floor, const std::map<std::string, std::string>& levers)
{
    isOhms (floor.ohms (levers), floor.ohms (levers, true));
}

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
        { "split",
          fourKnobs,
          { "selector=bridge" },
          "coil-split",
          "split-shorted",
          [=] (const auto& floor)
          {
              isOhms (floor.ohms ({ { "selector", "bridge" }, { "bridge-volume-pull", "up" } }), beside (coil(), 500e3));
              isOhms (floor.ohms ({ { "selector", "bridge" }, { "bridge-volume-pull", "down" } }), beside (2 * coil(), 500e3));
              CHECK (floor.renderedDb() < -3.0); // one of two coils that add: about 6 dB
              CHECK (floor.renderedDb() > -9.0);
          } },
        { "series or parallel",
          fourKnobs,
          { "selector=bridge" },
          "series/parallel switch",
          "series-parallel",
          [=] (const auto& floor)
          {
              isOhms (floor.ohms ({ { "selector", "bridge" }, { "bridge-volume-pull", "up" } }), beside (coil() / 2, 500e3));
              CHECK (brighterDb (floor) > 3.0); // a quarter of the inductance
          } },
        { "either coil",
          "one-humbucker",
          {},
          "coil selector",
          "split-either",
          [] (const auto& floor)
          {
              const double one = oneCoilOhms ("humbucker-moderate");
              for (const auto* position : { "up", "down" })
                  isOhms (floor.ohms ({ { "bridge-toggle", position } }), beside (one, 500e3));
          } },
        { "another pickup",
          "three-single-coils",
          { "blade=bridge" },
          "single-size humbucker",
          "humbucker-for-single",
          [] (const auto& floor) {
              isOhms (floor.ohms ({ { "blade", "bridge" } }), beside (pickupOhms ("twin-blade"), 250e3));
          } },
        { "dummy coil",
          "three-single-coils",
          { "blade=bridge" },
          "hum coil",
          "dummy-coil",
          [] (const auto& floor)
          {
              // The bridge's coil and the dummy in series. Their hum is opposed: [calc] the sign of the hum EMF is the winding's.
              isOhms (floor.ohms ({ { "blade", "bridge" } }),
                      beside (pickupOhms ("single-coil") + pickupOhms ("dummy-coil"), 250e3));
          } },
    };
}

std::vector<Row> aroundPickups()
{
    return {
        { "both in series",
          blade,
          { "blade=both" },
          "series switch",
          "both-in-series",
          [] (const auto& floor)
          {
              const double both = pickupOhms ("single-coil") + pickupOhms ("single-coil-reverse");
              isOhms (floor.ohms ({ { "blade", "both" }, { "volume-pull", "up" } }), beside (both, 250e3));
              CHECK (floor.renderedDb() > 0.5); // louder: common practice of the trade, no source
          } },
        { "out of phase",
          blade,
          { "blade=both" },
          "phase switch",
          "phase-pull",
          [] (const auto& floor)
          {
              keepsOhms (floor, { { "blade", "both" } });
              CHECK (floor.renderedDb() < -3.0); // thin and quieter: common practice of the trade, no source
          } },
        { "independent volumes",
          fourKnobs,
          { "selector=both" },
          "one volume kills both",
          "independent-volumes",
          [] (const auto& floor)
          {
              bool muted = false;
              const auto now = floor.column (true), option = floor.column(); // held while their volumes are read
              for (const auto& volume : now["volumes"])
                  muted = muted || volume["mutes_others"] == true;
              CHECK (muted); // as it came in
              CHECK_FALSE (option["volumes"].empty());
              for (const auto& volume : option["volumes"])
                  CHECK (volume["mutes_others"] != true);
          } },
        { "blend", fourKnobs, { "selector=both" }, "pan pot", "blend", [] (const auto& floor) { isHeard (floor); } },
        { "master volume",
          fourKnobs,
          { "selector=bridge" },
          "one volume for all",
          "master-volume",
          [] (const auto& floor) { isHeard (floor); } },
    };
}

std::vector<Row> aroundControls()
{
    return {
        { "tone on the output side",
          "one-humbucker",
          { "volume=5" },
          "fifties wiring",
          "tone-on-output",
          [] (const auto& floor)
          {
              keepsOhms (floor, {});
              CHECK (brighterDb (floor) > 0.5); // loses less treble: common practice of the trade, no source
          } },
        { "treble bleed",
          "one-humbucker",
          { "volume=5" },
          "cap and resistor in parallel",
          "treble-bleed-parallel",
          [] (const auto& floor)
          {
              keepsOhms (floor, {});
              CHECK (brighterDb (floor) > 1.0);
          } },
        { "pot of another value",
          "one-humbucker",
          {},
          "1M pots",
          "pot-value",
          [] (const auto& floor) { isOhms (floor.ohms(), beside (pickupOhms ("humbucker-moderate"), 1e6)); } },
        { "no-load tone",
          "one-humbucker",
          {},
          "no-load pot",
          "tone-no-load",
          [] (const auto& floor)
          {
              keepsOhms (floor, {});
              CHECK (floor.db (3000) > floor.db (3000, true)); // a load less, so the peak stands higher
          } },
        { "another tone capacitor",
          "one-humbucker",
          { "tone=0" },
          "smaller tone cap",
          "tone-cap-value",
          [] (const auto& floor)
          {
              keepsOhms (floor, {});
              CHECK (floor.db (2000) > floor.db (2000, true) + 1.0); // half the capacitance, so it takes less away
          } },
        { "kill switch",
          "one-humbucker",
          {},
          "stutter button",
          "kill-switch",
          [] (const auto& floor)
          {
              CHECK (floor.reads ({ { "kill", "pressed" } }) == "short");
              isOhms (floor.ohms ({ { "kill", "free" } }), floor.ohms ({}, true));
          } },
        { "straight to the jack",
          fourKnobs,
          { "selector=bridge" },
          "bypass switch",
          "straight-through",
          [] (const auto& floor)
          {
              isOhms (floor.ohms ({ { "selector", "bridge" }, { floor.option()["setting"].begin().key(), "up" } }),
                      pickupOhms ("humbucker-hot"));
          } },
    };
}

const std::string noSplit = "humbucker-single-single-no-split", threeSingles = "three-single-coils";

std::vector<Row> onBlades()
{
    const auto hot = [] { return oneCoilOhms ("humbucker-hot"); };
    const auto single = [] { return pickupOhms ("single-coil"); }; // the reverse-wound one reads the same
    return {
        { "auto-split",
          noSplit,
          { "blade=middle-bridge" },
          "split in positions 2 and 4",
          "auto-split",
          [=] (const auto& floor)
          {
              isOhms (floor.ohms ({ { "blade", "middle-bridge" } }), beside (beside (hot(), single()), 500e3));
              isOhms (floor.ohms ({ { "blade", "bridge" } }), beside (2 * hot(), 500e3));
          } },
        { "auto-split taken out",
          "humbucker-single-single",
          { "blade=middle-bridge" },
          "no auto split",
          "auto-split-off",
          [=] (const auto& floor) {
              isOhms (floor.ohms ({ { "blade", "middle-bridge" } }), beside (beside (2 * hot(), single()), 500e3));
          } },
        { "series or parallel beside an auto-split",
          "humbucker-single-single",
          { "blade=bridge" },
          "series-parallel",
          "series-parallel",
          [=] (const auto& floor) {
              isOhms (floor.ohms ({ { "blade", "bridge" }, { "volume-pull", "up" } }), beside (hot() / 2, 500e3));
          } },
        { "neck on",
          threeSingles,
          { "blade=bridge" },
          "neck-on switch",
          "neck-on",
          [=] (const auto& floor)
          {
              isOhms (floor.ohms ({ { "blade", "bridge" }, { "volume-pull", "up" } }), beside (single() / 2, 250e3));
              isOhms (floor.ohms ({ { "blade", "bridge" }, { "volume-pull", "down" } }), beside (single(), 250e3));
          } },
        { "bridge on",
          threeSingles,
          { "blade=neck" },
          "bridge-on switch",
          "bridge-on",
          [=] (const auto& floor) {
              isOhms (floor.ohms ({ { "blade", "neck" }, { "volume-pull", "up" } }), beside (single() / 2, 250e3));
          } },
        { "seven sounds",
          threeSingles,
          { "blade=middle-bridge" },
          "seven-way mod",
          "seven-sounds",
          [=] (const auto& floor) {
              isOhms (floor.ohms ({ { "blade", "middle-bridge" }, { "volume-pull", "up" } }), beside (single() / 3, 250e3));
          } },
        { "bridge tone",
          threeSingles,
          { "blade=bridge", "neck-tone=0", "middle-tone=0" },
          "bridge tone mod",
          "bridge-tone",
          [] (const auto& floor)
          {
              keepsOhms (floor, { { "blade", "bridge" } });
              CHECK (floor.db (3000) < floor.db (3000, true) - 6.0); // the tone is down, and now works here too
          } },
        { "250k for singles, 500k for the humbucker",
          noSplit,
          { "blade=neck" },
          "load resistor for singles",
          "single-coil-load",
          [=] (const auto& floor)
          {
              isOhms (floor.ohms ({ { "blade", "neck" } }), beside (single(), beside (500e3, 470e3)));
              isOhms (floor.ohms ({ { "blade", "bridge" } }), beside (2 * hot(), 500e3));
          } },
        { "four-way blade",
          blade,
          { "blade=both" },
          "four-way switch",
          "blade-4-series",
          [=] (const auto& floor)
          {
              isOhms (floor.ohms ({ { "blade", "series" } }), beside (2 * single(), 250e3));
              isOhms (floor.ohms ({ { "blade", "both" } }), beside (single() / 2, 250e3));
          } },
    };
}

std::vector<Row> moreJobs()
{
    return {
        { "split by degrees",
          "one-humbucker",
          {},
          "variable split",
          "split-knob",
          [] (const auto& floor)
          {
              const double coil = oneCoilOhms ("humbucker-moderate");
              isOhms (floor.ohms(), beside (coil + beside (coil, 500e3), 500e3)); // its knob at 10: the track beside one coil
              CHECK (floor.renderedDb() < -3.0);                                  // offered at the split end
          } },
        { "latching kill",
          "one-humbucker",
          {},
          "latching kill switch",
          "kill-latching",
          [] (const auto& floor)
          {
              CHECK (floor.reads ({ { "kill-latching", "on" } }) == "short");
              isOhms (floor.ohms ({ { "kill-latching", "off" } }), floor.ohms ({}, true));
          } },
        { "blend and master",
          "bass-two-single-coils",
          {},
          "volume and blend",
          "blend-with-master",
          [] (const auto& floor) { isHeard (floor); } },
        { "six-way selector with an inductor",
          "one-humbucker",
          {},
          "inductor selector",
          "notch-rotary",
          [] (const auto& floor)
          {
              for (const auto* position : { "1", "2", "6" })
                  isOhms (floor.ohms ({ { "notch", position } }), floor.ohms ({}, true)); // capacitors block DC
              isHeard (floor);
          } },
        { "stacked single coil",
          threeSingles,
          { "blade=bridge" },
          "noiseless single coil",
          "stacked-for-single",
          [] (const auto& floor) {
              isOhms (floor.ohms ({ { "blade", "bridge" } }), beside (pickupOhms ("single-coil-stacked"), 250e3));
          } },
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
TEST_CASE ("Shop jobs on blades and selectors") { runAll (onBlades()); }
TEST_CASE ("Shop jobs with parts of their own") { runAll (moreJobs()); }
TEST_CASE ("Shop jobs around the controls") { runAll (aroundControls()); }

namespace
{
/** Every shop job, and on how many of the shipped guitars it can be done at least. */
const std::vector<std::pair<std::string, int>> everyJob { { "split-shorted", 16 },
                                                          { "series-parallel", 16 },
                                                          { "both-in-series", 20 },
                                                          { "phase-pull", 30 },
                                                          { "independent-volumes", 7 },
                                                          { "tone-on-output", 25 },
                                                          { "treble-bleed-parallel", 30 },
                                                          { "kill-switch", 34 },
                                                          { "blend", 7 },
                                                          { "pot-value", 34 },
                                                          { "tone-cap-value", 30 },
                                                          { "master-volume", 7 },
                                                          { "tone-no-load", 30 },
                                                          { "straight-through", 30 },
                                                          { "dummy-coil", 16 },
                                                          { "auto-split", 1 },
                                                          { "auto-split-off", 3 },
                                                          { "neck-on", 16 },
                                                          { "bridge-on", 16 },
                                                          { "seven-sounds", 4 },
                                                          { "bridge-tone", 1 },
                                                          { "single-coil-load", 1 },
                                                          { "blade-4-series", 2 },
                                                          { "split-knob", 16 },
                                                          { "kill-latching", 34 },
                                                          { "blend-with-master", 7 },
                                                          { "notch-rotary", 34 },
                                                          { "stacked-for-single", 16 } };
constexpr size_t atOnce = 6; // letters there are eight
}

TEST_CASE ("Each shop job on every guitar it fits: offered, put in, rendered; elsewhere the reason")
{
    Fixture fixture;
    writeAudio (fixture.path ("short.wav"), pluckedTake (9600, 48000.0), 1, 48000, SF_FORMAT_WAV | SF_FORMAT_PCM_16);
    std::map<std::string, int> fits;
    for (const auto& guitar : printed ({ "presets", "guitars", "--json" }))
        for (size_t first = 0; first < everyJob.size(); first += atOnce)
        {
            const std::string name = guitar["preset"];
            const auto job = fixture.path (name + std::to_string (first) + ".json");
            REQUIRE (run ({ "new", name, "--take", fixture.path ("short.wav"), "--out", job }).exitCode == 0);
            std::vector<std::string> command { "offer", job, "--add", "--json" };
            for (size_t i = first; i < std::min (first + atOnce, everyJob.size()); ++i)
                command.insert (command.end(), { "--wish", everyJob[i].first });
            size_t added = 0, wish = first;
            for (const auto& answer : nlohmann::json::parse (run (command).out))
            {
                INFO (everyJob[wish].first << " on " << name << ": " << answer.dump());
                added += answer["added"].size();
                for (const auto& rewire : answer["rewires"])
                    if (rewire["preset"] == everyJob[wish].first)
                    {
                        fits[everyJob[wish].first] += rewire["fits"] == true ? 1 : 0;
                        CHECK ((rewire["fits"] == true ? answer["added"].size() + answer["already_there"].size() > 0
                                                       : rewire["why"].get<std::string>().size() > 10));
                    }
                ++wish;
            }
            const auto rendered = run ({ "render", job, "--out", fixture.path ("sounds-" + name + std::to_string (first)) });
            INFO (name << ": " << rendered.err);
            CHECK (rendered.exitCode == 0);
            CHECK (fixture.files ("sounds-" + name + std::to_string (first)).size() == added + 1);
        }
    for (const auto& [rewire, least] : everyJob)
    {
        INFO (rewire << " fits " << fits[rewire] << " guitars");
        CHECK (fits[rewire] >= least);
    }
}
}
