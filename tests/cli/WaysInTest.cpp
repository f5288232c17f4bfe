// Every way into the program by a file it reads, each tried with everything that is no such file: one line that says so,
// 1 or 2, soon and small, and nothing written. A new command or path is a new row.

#include "WaysIn.h"

#include <catch2/catch.hpp>

namespace waysInTest
{
using namespace coldiron::support;

namespace
{
using Words = std::vector<std::string>;

/** A job that names the thing: the text around it. */
Make jobNaming (const std::string& takes, const std::string& more = "")
{
    return [=] (const Fixture& fixture) { fixture.write ("job.json", jobText (standardOptions(), takes, more)); };
}

/** A preset of that kind in a folder of one's own; `in` is the part of the job that names it. */
Make presetNamed (const std::string& in)
{
    return [=] (const Fixture& fixture)
    { fixture.write ("job.json", R"({ "coldiron": "job 1", "title": "A job", "guitar": )" + in + " }\n"); };
}

std::string guitarWith (const std::string& parts, const std::string& wires)
{
    return R"({ "coldiron": "guitar 1", "name": "G", "scale_mm": 647.7, "strings": ["E2", "A2"], "parts": { "jack": { "jack": "mono" }, )"
           + parts + R"( }, "wires": [ )" + wires + " ] }";
}

const std::string
    bridge = R"("bridge": { "pickup": "humbucker-moderate", "bridge_mm": 44 })",
    toJack =
        R"(["bridge.north.start", "jack.tip"], ["bridge.north.finish", "bridge.south.finish"], ["bridge.south.start", "ground"])";

std::vector<Way> ways()
{
    std::vector<Way> all;
    const auto add = [&all] (const std::string& name, Words arguments, Kind kind, const std::string& place, Make make = {}) {
        all.push_back ({ name, std::move (arguments), kind, place, std::move (make), {}, 1 });
    };

    for (const Words& command : { Words { "check" },
                                  { "compare" },
                                  { "ohms" },
                                  { "spice", "--option", "A" },
                                  { "response", "--option", "A" },
                                  { "offer" },
                                  { "card", "--out", "{shop}/written" },
                                  { "render", "--out", "{shop}/written" } })
    {
        Words arguments = command;
        arguments.push_back ("{it}");
        add ("the job of " + command[0], arguments, Kind::job, "it.json");
    }
    add ("the readings of fit", { "fit", "{it}", "--out", "{shop}/written.json" }, Kind::readings, "it.csv");

    const auto take = jobNaming ("{ \"file\": \"it.wav\" }");
    add ("a take, by check", { "check", "{job}" }, Kind::take, "it.wav", take);
    add ("a take, by compare", { "compare", "{job}" }, Kind::take, "it.wav", take);
    add ("a take, by render", { "render", "{job}", "--out", "{shop}/written" }, Kind::take, "it.wav", take);
    const auto impulse =
        jobNaming ("{ \"file\": \"take.wav\" }", ", \"after_the_jack\": { \"sound\": \"file\", \"file\": \"it.wav\" }");
    add ("--take of new", { "new", "one-humbucker", "--take", "{it}", "--out", "{shop}/written" }, Kind::take, "it.wav");
    add ("a job's impulse response, by check", { "check", "{job}" }, Kind::take, "it.wav", impulse);
    add ("a job's impulse response, by render", { "render", "{job}", "--out", "{shop}/written" }, Kind::take, "it.wav", impulse);
    add ("--after of render", { "render", "{job}", "--out", "{shop}/written", "--after", "{it}" }, Kind::take, "it.wav");

    const auto preset = [&] (const std::string& kind, const std::string& in)
    {
        add ("a preset among the " + kind, { "check", "{job}", "--presets", "{shop}/own" }, Kind::preset,
             "own/" + kind + "/it.json", presetNamed (in));
    };
    preset ("guitars", "\"it\"");
    preset ("pickups", guitarWith (R"("bridge": { "pickup": "it", "bridge_mm": 44 })", toJack));
    all.back().mostFaults = 5; // of a pickup that is not known no lead is known either
    preset ("switches", guitarWith (bridge + R"(, "mode": { "switch": "it" })", toJack));
    preset ("tapers", guitarWith (bridge + R"(, "volume": { "pot": "500k", "taper": "it" })", toJack));
    add ("a preset among the rewires", { "check", "{job}", "--presets", "{shop}/own" }, Kind::preset, "own/rewires/it.json",
         [] (const Fixture& fixture)
         { fixture.write ("job.json", jobText (R"("A": { "name": "A", "rewires": [ { "use": "it" } ] })")); });
    for (const char* kind : { "guitars", "pickups", "switches", "tapers", "rewires", "starters", "jobs" })
        add (std::string ("presets ") + kind + " NAME --json", { "presets", kind, "it", "--json", "--presets", "{shop}/own" },
             Kind::shown, std::string ("own/") + kind + "/it.json");
    const std::string job = "{job}";
    for (const Words& command : { Words { "check", job },
                                  { "compare", job },
                                  { "ohms", job },
                                  { "spice", job, "--option", "A" },
                                  { "response", job, "--option", "A" },
                                  { "offer", job },
                                  { "new", "one-humbucker", "--out", "{shop}/written" },
                                  { "card", job, "--out", "{shop}/written" },
                                  { "render", job, "--out", "{shop}/written" },
                                  { "presets" },
                                  { "fit", "{shop}/bench.csv", "--out", "{shop}/written.json" } })
    {
        Words arguments = command;
        arguments.insert (arguments.end(), { "--presets", "{it}" });
        const auto readings = [] (const Fixture& fixture)
        { fixture.write ("bench.csv", "pickup,humbucker-moderate\ndcr,8.4k\n"); };
        add ("--presets of " + command[0], arguments, Kind::folder, "it", readings);
    }
    add ("presets from the environment", { "presets" }, Kind::folder, "it");
    all.back().environment["COLDIRON_PRESETS"] = "{it}";
    return all;
}
}

TEST_CASE ("every file that is read may be anything", "[ways]")
{
    for (const auto& way : ways())
        for (const auto state : statesOf (way.kind))
            tryWay (way, state);
}

TEST_CASE ("the table itself stands on what works", "[ways]")
{
    for (const auto& way : ways())
        tryWorking (way);
}
}
