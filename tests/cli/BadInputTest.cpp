#include "Run.h"

#include <catch2/catch.hpp>
#include <sndfile.h>

#include <algorithm>
#include <fstream>
#include <regex>
#include <sstream>

namespace badInputTest
{
using namespace coldiron::support;

// Everything wrong in a job or a take: exit 1, one clear line each on stderr, nothing written, nothing lost.
namespace
{
std::string replaced (std::string text, const std::string& what, const std::string& by)
{
    const auto at = text.find (what);
    REQUIRE (at != std::string::npos);
    return text.replace (at, what.size(), by);
}

/** What is said of faults: notes, such as that an option is silent, are none. */
std::vector<std::string> lines (const std::string& text)
{
    std::vector<std::string> all;
    std::istringstream stream (text);
    std::string line;
    while (std::getline (stream, line))
        if (! line.starts_with ("note: "))
            all.push_back (line);
    return all;
}

void put32 (std::string& bytes, size_t at, uint32_t value)
{
    for (int i = 0; i < 4; ++i)
        bytes[at + static_cast<size_t> (i)] = static_cast<char> (value >> (8 * i));
}

std::string bytesOf (const std::string& path)
{
    std::ifstream file (path, std::ios::binary);
    std::ostringstream text;
    text << file.rdbuf();
    return text.str();
}

/** Asks every command that reads the job; all must end with 1 and leave nothing. */
void expectFault (const Fixture& fixture, const std::string& what, bool aboutTheTake = false)
{
    const auto before = fixture.files();
    const auto out = fixture.path ("out"), job = fixture.path ("job.json");
    for (const auto& arguments :
         { std::vector<std::string> { "check", job }, { "render", job, "--out", out }, { "compare", job } })
    {
        const auto ran = run (arguments);
        INFO (what << ", " << arguments[0] << " said: " << ran.err);
        CHECK (ran.exitCode == 1);
        CHECK_FALSE (ran.err.empty());
        CHECK (ran.out.find ("columns") == std::string::npos);
        CHECK (lines (ran.err).size() <= 7); // guitar, take and each of five options
        CHECK (ran.err.find (aboutTheTake ? ".wav" : "job.json") != std::string::npos);
    }
    auto after = fixture.files();
    after.erase (std::remove (after.begin(), after.end(), "out"), after.end());
    CHECK (after == before);
    CHECK (fixture.files ("out").empty());
}
}

TEST_CASE ("what is wrong in a job")
{
    const auto good = jobText (standardOptions());
    const std::pair<const char*, std::string> bad[] = {
        { "wrong JSON", replaced (good, "\"options\": {", "\"options\": {{") },
        { "cut short", good.substr (0, good.size() / 2) },
        { "empty", "" },
        { "not an object", "[1, 2, 3]\n" },
        { "unknown key", replaced (good, "\"title\":", "\"titel\":") },
        { "duplicate key", replaced (good, "\"title\":", "\"title\": \"twice\", \"title\":") },
        { "missing preset", replaced (good, "{ \"pot\": \"500k\", \"taper\": \"log-15\" }, \"tone\"",
                                      "{ \"pot\": \"500k\", \"taper\": \"no-such-taper\" }, \"tone\"") },
        { "wire to a point that is not there", replaced (good, "[\"volume.2\", \"jack.tip\"]", "[\"volume.4\", \"jack.tip\"]") },
        { "no path to the jack at every setting", replaced (good, "[\"volume.2\", \"jack.tip\"]", "[\"volume.2\", \"tone.3\"]") },
        { "shorted output at every setting",
          replaced (good, "[\"volume.2\", \"jack.tip\"]", "[\"volume.2\", \"jack.tip\", \"ground\"]") },
        { "knob 11", replaced (good, "\"volume\": 5 }", "\"volume\": 11 }") },
        { "a position that is not there", replaced (good, "\"mode\": \"split\"", "\"mode\": \"sideways\"") },
        { "a taper that falls", replaced (good, "\"taper\": \"log-15\" }, \"tone\"",
                                          "\"taper\": { \"coldiron\": \"taper 1\", \"name\": \"x\", \"points\": [[0, 0], [0.5, "
                                          "0.7], [0.6, 0.5], [1, 1]] } }, \"tone\"") },
        { "a quantity that is none",
          replaced (good, "\"cap\": { \"capacitor\": \"22n\" }", "\"cap\": { \"capacitor\": \"22 apples\" }") },
        { "shorted for the take's own setting",
          jobText (standardOptions(), "{ \"file\": \"take.wav\", \"setting\": { \"mode\": \"off\" } }") },
        { "a take that is missing", jobText (standardOptions(), "{ \"file\": \"nowhere.wav\" }") },
    };
    for (const auto& [what, text] : bad)
    {
        const Fixture fixture;
        fixture.write ("job.json", text);
        const bool aboutTheTake = std::string (what) == "a take that is missing";
        expectFault (fixture, what, aboutTheTake);
    }
}

TEST_CASE ("faults name file and line, all of them at once")
{
    const Fixture fixture;
    auto text = jobText (standardOptions());
    text = replaced (text, "\"volume\": 5 }", "\"volume\": 11 }");
    text = replaced (text, "\"mode\": \"split\"", "\"mode\": \"sideways\"");
    fixture.write ("job.json", text);
    const auto ran = run ({ "check", fixture.path ("job.json") });
    CHECK (ran.exitCode == 1);
    const auto said = lines (ran.err);
    INFO (ran.err);
    CHECK (said.size() == 2);
    for (const auto& line : said)
        CHECK (std::regex_search (line, std::regex ("job\\.json:[0-9]+: .+")));
    CHECK (run ({ "check", fixture.path ("nothing.json") }).exitCode == 1);
    CHECK (run ({ "check", fixture.folder.string() }).exitCode == 1); // a folder is no job
}

TEST_CASE ("what is wrong with a take")
{
    const Fixture original;
    const auto good = bytesOf (original.path ("take.wav"));
    REQUIRE (good.substr (0, 4) == "RIFF");
    auto zeroChannels = good;
    zeroChannels[22] = zeroChannels[23] = 0;
    auto zeroBits = good;
    zeroBits[34] = zeroBits[35] = 0;
    auto rate = good;
    put32 (rate, 24, 384000);
    auto rateZero = good;
    put32 (rateZero, 24, 0);
    auto huge = good;
    put32 (huge, good.find ("data") + 4, 0xfffffff0u);
    const std::pair<const char*, std::string> bad[] = {
        { "empty file", "" },
        { "header alone", good.substr (0, good.find ("data") + 8) },
        { "truncated", good.substr (0, good.size() / 2) },
        { "truncated in its header", good.substr (0, 30) },
        { "0 channels", zeroChannels },
        { "0 bits", zeroBits },
        { "384 kHz", rate },
        { "0 Hz", rateZero },
        { "data longer than the file", huge },
        { "no audio at all", "This is a letter to the client.\n" },
    };
    for (const auto& [what, bytes] : bad)
    {
        const Fixture fixture;
        fixture.write ("take.wav", bytes);
        expectFault (fixture, what, true);
        CHECK (bytesOf (fixture.path ("take.wav")) == bytes);
    }
    const Fixture fixture;
    writeAudio (fixture.path ("take.wav"), std::vector<float> (3000, 0.1f), 3, 48000, SF_FORMAT_WAV | SF_FORMAT_PCM_24);
    expectFault (fixture, "three channels", true);
}

TEST_CASE ("a folder that cannot be written is said, and what was there stays")
{
    const Fixture fixture;
    fixture.write ("out", "a file in the way");
    const auto ran = run ({ "render", fixture.path ("job.json"), "--out", fixture.path ("out") });
    CHECK (ran.exitCode == 1);
    CHECK (lines (ran.err).size() == 1);
    CHECK (bytesOf (fixture.path ("out")) == "a file in the way");
}
}
