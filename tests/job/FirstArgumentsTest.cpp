// What a rewire is filled with before a person chooses, on the shipped guitars.
#include "support/Catalogue.h"

#include "job/FirstArguments.h"

#include <algorithm>

namespace firstArgumentsTest
{
using namespace coldiron;

namespace
{
RewireInfo infoOf (const std::string& preset)
{
    Diagnostics diagnostics;
    auto info = readRewireInfo (preset, support::shipped(), diagnostics);
    REQUIRE (info.has_value());
    return *info;
}

Guitar guitarOf (const std::string& name) { return support::allGuitars ({ name }).front(); }
}

TEST_CASE ("the pickup heard comes first, and its own pot with it", "[first-arguments]")
{
    using Filled = std::map<std::string, std::string>;
    const auto harness = guitarOf ("two-humbuckers-four-knobs").harness;
    const auto info = infoOf ("series-parallel");
    CHECK (firstArguments (info, harness, { "neck" }) == Filled { { "pickup", "neck" }, { "pot", "neck-volume" } });
    CHECK (firstArguments (info, harness, { "bridge" }) == Filled { { "pickup", "bridge" }, { "pot", "bridge-volume" } });
    CHECK (firstArguments (info, harness, { "neck", "bridge" }) == Filled { { "pickup", "bridge" }, { "pot", "bridge-volume" } });
    CHECK (firstArguments (info, harness, {}) == Filled { { "pickup", "bridge" }, { "pot", "bridge-volume" } });
    CHECK (firstArguments (info, harness, { "bridge" }, "neck") == Filled { { "pickup", "neck" }, { "pot", "neck-volume" } });
}

TEST_CASE ("every ask is filled with what it may be, no part twice", "[first-arguments]")
{
    int filled = 0;
    for (const auto& guitar : support::allGuitars (support::shipped().list ("guitars")))
        for (const auto& preset : support::shipped().list ("rewires"))
        {
            const auto info = infoOf (preset);
            const auto arguments = firstArguments (info, guitar.harness, {});
            CHECK (arguments.size() == info.asks.size());
            std::set<std::string> used;
            for (const auto& ask : info.asks)
            {
                INFO (guitar.preset << " " << preset << " " << ask.name);
                const auto& value = arguments.at (ask.name);
                const auto names = candidates (ask.kind, guitar.harness);
                if (value.empty() || ask.hasStandard)
                    continue;
                CHECK (std::find (names.begin(), names.end(), value) != names.end());
                CHECK (used.insert (value).second);
                ++filled;
            }
        }
    CHECK (filled > 1000);
}
}
