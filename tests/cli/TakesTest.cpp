// Several takes, one string alone, and what a take's own noise allows: by the real command.
#include "Run.h"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>
#include <sndfile.h>

#include <cmath>

namespace takesTest
{
using namespace coldiron::support;
using Json = nlohmann::json;

namespace
{
const char* twoTakes = R"({ "coldiron": "job 1", "title": "Two takes", "guitar": "two-humbuckers-four-knobs",
    "takes": [ { "file": "bridge.wav", "setting": { "selector": "bridge" } }, { "file": "neck.wav", "setting": { "selector": "neck" } } ],
    "options": { "A": { "name": "Neck", "setting": { "selector": "neck" } },
                 "B": { "name": "Bridge, tone down", "setting": { "bridge-tone": 2 } },
                 "C": { "name": "Neck, from the bridge", "take": 1, "setting": { "selector": "neck" } } } })";

/** With a second of noise alone after it. */
std::vector<float> withPause (std::vector<float> x, double noise)
{
    x.resize (x.size() + 48000, 0.0f);
    uint64_t state = 88172645463325252ull;
    for (float& sample : x)
    {
        state ^= state << 13;
        state ^= state >> 7;
        state ^= state << 17;
        sample += static_cast<float> (noise * (static_cast<double> (state >> 11) / 9007199254740992.0 - 0.5));
    }
    return x;
}

Fixture& prepared (Fixture& fixture)
{
    const auto take = withPause (pluckedTake (96000, 48000.0), 1e-5);
    writeAudio (fixture.path ("bridge.wav"), take, 1, 48000, SF_FORMAT_WAV | SF_FORMAT_FLOAT);
    auto softer = take;
    for (float& sample : softer)
        sample *= 0.7f;
    writeAudio (fixture.path ("neck.wav"), softer, 1, 48000, SF_FORMAT_WAV | SF_FORMAT_FLOAT);
    fixture.write ("two.json", twoTakes);
    return fixture;
}
}

TEST_CASE ("compare and render derive each option from the take nearest to it and say so")
{
    Fixture fixture;
    prepared (fixture);
    const auto ran = run ({ "compare", fixture.path ("two.json"), "--json" });
    INFO (ran.err);
    REQUIRE (ran.exitCode == 0);
    const auto columns = Json::parse (ran.out)["columns"];
    CHECK (columns[1]["take_number"] == 2);
    CHECK (columns[1]["take_words"] == "from take 2, neck alone: same coils");
    CHECK (columns[1]["sure"]["playing"] == "same coils");
    CHECK (columns[1]["loudness_lu"].get<double>() == Approx (0.0).margin (0.01)); // nothing differs from its own take
    CHECK (columns[2]["take_number"] == 1);
    CHECK (columns[3]["take_number"] == 1); // asked for
    CHECK (columns[3]["sure"]["playing"] == "fair");
    CHECK (columns[3]["better_take"] == "surer from take 2, neck alone: same coils");

    const auto rendered = run ({ "render", fixture.path ("two.json"), "--out", fixture.path ("out") });
    REQUIRE (rendered.exitCode == 0);
    CHECK (rendered.out.find ("A.wav  Neck, from take 2, neck alone: same coils") != std::string::npos);
    CHECK (readAudio (fixture.path ("out/A.wav")).samples.size() == readAudio (fixture.path ("neck.wav")).samples.size());
    const auto a = readAudio (fixture.path ("out/A.wav")).samples, neck = readAudio (fixture.path ("neck.wav")).samples;
    double worst = 0.0;
    for (size_t i = 0; i < a.size(); ++i)
        worst = std::max (worst, static_cast<double> (std::abs (a[i] - neck[i])));
    CHECK (worst < 2e-4); // the neck take as it is
}

TEST_CASE ("one string alone can be asked for, and strings differ")
{
    Fixture fixture;
    prepared (fixture);
    const auto at = [&] (const std::string& string)
    {
        std::vector<std::string> asked {
            "response", fixture.path ("two.json"), "--option", "C", "--relative", "--from", "700", "--to", "701", "--points", "2"
        };
        if (! string.empty())
            asked.insert (asked.end(), { "--string", string });
        const auto ran = run (asked);
        INFO (ran.err);
        REQUIRE (ran.exitCode == 0);
        return std::stod (ran.out.substr (ran.out.find (",", ran.out.find ('\n')) + 1));
    };
    const double low = at ("E2"), high = at ("E4"), all = at ("");
    CHECK (std::abs (low - high) > 3.0);
    CHECK (all > std::min (low, high));
    CHECK (all < std::max (low, high));
    CHECK (run ({ "response", fixture.path ("two.json"), "--option", "C", "--string", "X9" }).exitCode == 2);
    const auto rendered =
        run ({ "render", fixture.path ("two.json"), "--out", fixture.path ("out"), "--option", "C", "--string", "E2" });
    REQUIRE (rendered.exitCode == 0);
    CHECK (rendered.out.find ("as the E2 string alone would change") != std::string::npos);
}

TEST_CASE ("compare says how far up a noisy take can be trusted, and what is wrong with a take")
{
    Fixture fixture;
    prepared (fixture);
    writeAudio (fixture.path ("bridge.wav"), withPause (pluckedTake (96000, 48000.0), 2e-3), 1, 48000,
                SF_FORMAT_WAV | SF_FORMAT_FLOAT);
    fixture.write ("noisy.json", R"({ "coldiron": "job 1", "title": "Recorded dark", "guitar": "two-humbuckers-four-knobs",
        "takes": [ { "file": "bridge.wav", "setting": { "selector": "bridge", "bridge-tone": 0 } } ],
        "options": { "A": { "name": "As it was" }, "B": { "name": "Tone up", "setting": { "bridge-tone": 10 } } } })");
    const auto ran = run ({ "compare", fixture.path ("noisy.json"), "--json" });
    REQUIRE (ran.exitCode == 0);
    const auto document = Json::parse (ran.out);
    CHECK (document["columns"][1]["trusted_to_hz"].is_null());
    REQUIRE (document["columns"][2]["trusted_to_hz"].is_number());
    CHECK (document["columns"][2]["trusted_to_hz"].get<double>() < 3000.0);
    CHECK (document["columns"][2]["noise"]["words"].get<std::string>().find ("tone at 10") != std::string::npos);
    CHECK (document["takes"][0]["noise_db_re_playing"].get<double>() < -20.0);
    const auto table = run ({ "compare", fixture.path ("noisy.json") });
    CHECK (table.out.find ("to be trusted up to [Hz]") != std::string::npos);
    CHECK (table.out.find ("trust it up to") != std::string::npos);
    CHECK (table.out.find ("noisy, ") != std::string::npos);
}
}
