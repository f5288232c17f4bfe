#include "Run.h"

#include <catch2/catch.hpp>

#include <fstream>
#include <sstream>

namespace fitCommandTest
{
using namespace coldiron::support;

namespace
{
std::string contents (const std::string& path)
{
    std::ifstream file (path);
    std::ostringstream text;
    text << file.rdbuf();
    return text.str();
}

const char* const meter =
    "pickup,humbucker-moderate\nname,Walnut bridge\ntemperature,20\ndcr,8.4k\nlcr,series,120,4.5\nlcr,series,1k,4.55\n";
}

TEST_CASE ("fit writes a pickup preset that a job can use, and says what stays assumed", "[fit]")
{
    const Fixture fixture;
    fixture.write ("bench.csv", meter);
    std::filesystem::create_directories (fixture.path ("own/pickups"));
    const auto out = fixture.path ("own/pickups/walnut-bridge.json");
    const auto ran = run ({ "fit", fixture.path ("bench.csv"), "--out", out });
    INFO (ran.err << ran.out);
    CHECK (ran.exitCode == 0);
    CHECK (ran.err.empty());
    CHECK (ran.out.find ("winding capacitance") != std::string::npos);
    CHECK (ran.out.find ("assumed: not in the readings") != std::string::npos);
    CHECK (ran.out.find ("Residual") != std::string::npos);
    CHECK (contents (out).find ("\"known\": \"from ohms\"") != std::string::npos);
    CHECK (fixture.files ("own/pickups") == std::vector<std::string> { "walnut-bridge.json" }); // nothing half beside it

    // Found by its name: the presets command shows it.
    const auto shown = run ({ "presets", "pickups", "walnut-bridge", "--presets", fixture.path ("own") });
    INFO (shown.err);
    CHECK (shown.exitCode == 0);

    // Never written over unless asked.
    const auto before = contents (out);
    fixture.write ("bench.csv", std::string (meter) + "resonance,6.1k\n");
    const auto again = run ({ "fit", fixture.path ("bench.csv"), "--out", out });
    CHECK (again.exitCode == 1);
    CHECK (again.err.find ("--replace") != std::string::npos);
    CHECK (contents (out) == before);
    const auto replaced = run ({ "fit", fixture.path ("bench.csv"), "--out", out, "--replace" });
    INFO (replaced.err);
    CHECK (replaced.exitCode == 0);
    CHECK (contents (out) != before);
}

TEST_CASE ("fit refuses what makes no sense, by line, and writes nothing", "[fit]")
{
    const Fixture fixture;
    const auto out = fixture.path ("out.json");
    const auto refused = [&] (const std::string& text, const std::vector<std::string>& words)
    {
        fixture.write ("bench.csv", text);
        const auto ran = run ({ "fit", fixture.path ("bench.csv"), "--out", out });
        INFO (text << ran.err);
        CHECK (ran.exitCode == 1);
        for (const auto& word : words)
            CHECK (ran.err.find (word) != std::string::npos);
        CHECK_FALSE (std::filesystem::exists (out));
    };
    refused ("pickup,humbucker-moderate\ndcr,-8k\nlcr,series,1k,x\n", { "bench.csv:2:", "bench.csv:3:" });
    refused ("pickup,humbucker-moderate\ndcr,8.1\n", { "bench.csv:2:", "is a k missing" });
    refused ("pickup,no-such-pickup\ndcr,8.1k\n", { "bench.csv:1:" });
    refused (std::string (meter) + "resonance,90k\n", { "bench.csv" });
    refused ("", { "bench.csv" });

    const auto missing = run ({ "fit", fixture.path ("none.csv"), "--out", out });
    CHECK (missing.exitCode == 1);
    CHECK (run ({ "fit", fixture.path ("bench.csv") }).exitCode == 2);

    fixture.write ("bench.csv", meter);
    const auto itself = run ({ "fit", fixture.path ("bench.csv"), "--out", fixture.path ("humbucker-moderate.json") });
    CHECK (itself.exitCode == 1);
    CHECK (itself.err.find ("choose another") != std::string::npos);
}
}
