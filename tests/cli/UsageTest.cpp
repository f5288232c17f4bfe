#include "Run.h"

#include <catch2/catch.hpp>

#include <algorithm>

namespace usageTest
{
using namespace coldiron::support;

TEST_CASE ("wrong usage ends with 2 and says what is there")
{
    const Fixture fixture;
    const auto job = fixture.path ("job.json");
    CHECK (run ({}).exitCode == 2);
    CHECK (run ({ "solder" }).exitCode == 2);
    CHECK (run ({ "check" }).exitCode == 2);
    CHECK (run ({ "response", job }).exitCode == 2); // no option named
    CHECK (run ({ "response", job, "--option", "A", "--from", "100", "--to", "50" }).exitCode == 2);
    CHECK (run ({ "response", job, "--option", "A", "--points", "1" }).exitCode == 2);
    CHECK (run ({ "response", job, "--option", "A", "--points", "many" }).exitCode == 2);
    CHECK (run ({ "render", job }).exitCode == 2); // no --out
    CHECK (run ({ "render", job, "--out", fixture.path ("out"), "--hum", "loud" }).exitCode == 2);
    CHECK (run ({ "render", job, "--out", fixture.path ("out"), "--mains", "55" }).exitCode == 2);
    CHECK (run ({ "presets", "amplifiers" }).exitCode == 2);
    CHECK (run ({ "presets", "guitars", "no-such-guitar" }).exitCode == 2);
    CHECK (run ({ "check", job, "--presets", fixture.path ("nowhere") }).exitCode == 2);

    const auto missing = run ({ "response", job, "--option", "Z" });
    CHECK (missing.exitCode == 2);
    CHECK (missing.out.empty());
    CHECK (missing.err.find ("recorded, A, B, C, D, E") != std::string::npos);
    CHECK (run ({ "render", job, "--out", fixture.path ("out"), "--option", "Z" }).exitCode == 2);
    CHECK (fixture.files() == std::vector<std::string> { "job.json", "take.wav" }); // nothing was made
}

TEST_CASE ("help and version are fine")
{
    CHECK (run ({ "--help" }).exitCode == 0);
    CHECK (run ({ "render", "--help" }).exitCode == 0);
    CHECK (run ({ "--version" }).out.starts_with ("coldiron "));
    for (const char* command : { "check", "response", "render", "compare", "ohms", "spice", "presets" })
        CHECK (run ({ "--help" }).out.find (command) != std::string::npos);
}

TEST_CASE ("check")
{
    const Fixture fixture;
    const auto good = run ({ "check", fixture.path ("job.json") });
    CHECK (good.exitCode == 0);
    CHECK (std::count (good.err.begin(), good.err.end(), '\n') == 1);
    CHECK (good.err.starts_with ("note: ")); // of the silent option
    CHECK (good.out.find ("1 take, 5 options") != std::string::npos);
}

TEST_CASE ("presets are listed and shown")
{
    const auto kinds = run ({ "presets" });
    CHECK (kinds.exitCode == 0);
    for (const char* kind : { "guitars", "pickups", "switches", "tapers", "rewires", "jobs" })
        CHECK (kinds.out.find (kind) != std::string::npos);

    // One's own folder is looked at first.
    const Fixture fixture;
    std::filesystem::create_directories (fixture.folder / "mine" / "tapers");
    fixture.write ("mine/tapers/bench-taper.json",
                   R"({ "coldiron": "taper 1", "name": "From the bench", "points": [[0, 0], [0.5, 0.2], [1, 1]] })");
    const auto mine = run ({ "presets", "tapers", "--presets", fixture.path ("mine") });
    CHECK (mine.exitCode == 0);
    CHECK (mine.out.find ("bench-taper") != std::string::npos);
    CHECK (mine.out.find ("From the bench") != std::string::npos);
    const auto shown = run ({ "presets", "taper", "bench-taper", "--json", "--presets", fixture.path ("mine") });
    CHECK (shown.exitCode == 0);
    CHECK (shown.out.find ("\"From the bench\"") != std::string::npos);
}

TEST_CASE ("the take card is written whole, for the guitar of the job")
{
    const Fixture fixture;
    CHECK (run ({ "card", fixture.path ("job.json") }).exitCode == 2); // no --out
    const auto written = run ({ "card", fixture.path ("job.json"), "--out", fixture.path ("card.html") });
    CHECK (written.exitCode == 0);
    const auto shown = run ({ "card", fixture.path ("job.json"), "--out", "-" });
    CHECK (shown.out.find ("Take card") != std::string::npos);
    CHECK (shown.out.find ("</html>") != std::string::npos);
    CHECK (fixture.files() == std::vector<std::string> { "card.html", "job.json", "take.wav" });
    CHECK (run ({ "card", fixture.path ("nothing.json"), "--out", "-" }).exitCode == 1);
}
}
