// Damaged files: whatever is in them, reading ends with faults or a job, never with an exception or a crash.

#include "support/JobFixture.h"

#include <random>

namespace garbageTest
{
using namespace coldiron;

namespace
{
std::string textOf (const std::filesystem::path& path)
{
    std::ifstream stream (path, std::ios::binary);
    return { std::istreambuf_iterator<char> (stream), {} };
}

/** One to four places changed: a byte, a stretch cut out or doubled, a value put in place of another. */
std::string damaged (std::string text, std::mt19937& random)
{
    static const std::vector<std::string> values { "null", "-1",      "1e308",           "\"\"",       "[]", "{}",
                                                   "true", "\"nan\"", "\"@bridge.hot\"", "\"ground\"", "0",  "99999999999" };
    const auto below = [&random] (size_t n) { return static_cast<size_t> (random() % std::max<size_t> (n, 1)); };
    for (size_t i = 0; i <= below (4); ++i)
    {
        const auto at = below (text.size());
        const auto length = below (std::min<size_t> (30, text.size() - at));
        switch (below (4))
        {
        case 0: text[at] = static_cast<char> (random()); break;
        case 1: text.erase (at, length); break;
        case 2: text.insert (at, text.substr (at, length)); break;
        default:
            if (const auto from = text.find_first_of ("\"[", at),
                to = from == std::string::npos ? from : text.find_first_of ("\"]", from + 1);
                to != std::string::npos)
                text.replace (from, to - from + 1, values[below (values.size())]);
        }
        if (text.empty())
            text = "{";
    }
    return text;
}
}

TEST_CASE ("Damaged jobs, guitars and rewires never throw")
{
    const auto root = std::filesystem::path (COLDIRON_SOURCE) / "presets";
    std::string job = textOf (root / "jobs/hum-6-the-finished-guitar.json");
    const auto guitar = textOf (root / "guitars/two-humbuckers-four-knobs.json");
    const auto rewire = textOf (root / "rewires/series-parallel.json");
    const auto inLine =
        "{ \"coldiron\": \"job 1\",\n\"guitar\": " + guitar + ",\n\"options\": { \"A\": { \"rewires\": [ { \"use\": " + rewire
        + ",\n\"pickup\": \"bridge\", \"pot\": \"bridge-volume\" } ], \"setting\": { \"bridge-volume-pull\": \"up\" } } } }";
    REQUIRE (support::faultsOf (inLine).empty());
    std::mt19937 random (1);
    int fine = 0, refused = 0;
    for (int i = 0; i < 3000; ++i)
    {
        const auto text = damaged (i % 3 == 0 ? job : inLine, random);
        INFO (text);
        Diagnostics diagnostics;
        const auto read = readJobText (text, "/", support::shipped(), diagnostics);
        CHECK (read.has_value() == diagnostics.empty());
        for (const auto& fault : diagnostics)
            CHECK (fault.message.find ('\n') == std::string::npos);
        ++(read ? fine : refused);
    }
    CHECK (refused > 1000);
    CHECK (fine > 10);
}

TEST_CASE ("A rewire may not take the jack away, nor give two controls one name")
{
    const auto own = [] (const std::string& step)
    {
        return "{ \"coldiron\": \"job 1\", \"guitar\": \"one-humbucker\", \"options\": { \"A\": { \"rewires\": [ { \"use\": { "
               "\"coldiron\": \"rewire 1\", \"name\": \"Own\",\n \"steps\": [ "
               + step + " ] } } ] } } }";
    };
    CHECK (support::has (support::faultsOf (own ("{ \"remove\": \"jack\" }")), 1, { "exactly one jack" }));
    CHECK (support::has (support::faultsOf (own ("{ \"fit\": \"other\", \"as\": { \"jack\": \"mono\" } }")), 1,
                         { "exactly one jack" }));
    CHECK (support::has (
        support::faultsOf (own ("{ \"fit\": \"x\", \"as\": { \"switch\": \"push-pull\", \"shaft\": \"volume\" } }")), 1,
        { "two controls" }));
}
}
