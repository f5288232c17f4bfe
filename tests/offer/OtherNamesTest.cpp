// Rewires are found by the words a player or another bench uses: common practice of the trade, no source.
#include "support/JobFixture.h"

#include <algorithm>
#include <map>
#include <set>

namespace otherNamesTest
{
using namespace coldiron;

namespace
{
std::vector<RewireInfo> allRewires()
{
    std::vector<RewireInfo> infos;
    const auto presets = support::shipped();
    for (const auto& name : presets.list ("rewires"))
    {
        Diagnostics diagnostics;
        auto info = readRewireInfo (name, presets, diagnostics);
        REQUIRE (info.has_value());
        infos.push_back (std::move (*info));
    }
    return infos;
}
}

TEST_CASE ("Every rewire has other names of its own and a wish that it serves")
{
    std::map<std::string, int> wishes;
    for (const auto& info : allRewires())
    {
        INFO (info.preset);
        CHECK (info.alsoCalled.size() >= 2);
        CHECK (std::set<std::string> (info.alsoCalled.begin(), info.alsoCalled.end()).size() == info.alsoCalled.size());
        CHECK (std::find (info.alsoCalled.begin(), info.alsoCalled.end(), info.name) == info.alsoCalled.end());
        ++wishes[info.wish];
    }
    CHECK (wishes.size() == 7);
}

TEST_CASE ("Words of the trade find what they mean")
{
    const auto infos = allRewires();
    const auto found = [&] (const std::string& words)
    {
        std::set<std::string> presets;
        for (const auto& info : infos)
            for (const auto& other : info.alsoCalled)
                if (other.find (words) != std::string::npos)
                    presets.insert (info.preset);
        return presets;
    };
    CHECK (found ("coil split").count ("split-shorted") == 1);
    CHECK (found ("coil cut").count ("split-open") == 1);
    CHECK (found ("treble bypass").size() == 3);
    CHECK (found ("fifties wiring") == std::set<std::string> { "tone-on-output" });
    CHECK (found ("pan pot") == std::set<std::string> { "blend" });
    CHECK (found ("no-load pot") == std::set<std::string> { "tone-no-load" });
    CHECK (found ("low cut").size() == 2);
    CHECK (found ("shielded wire") == std::set<std::string> { "screened-lead" });
    CHECK (found ("decoupled volumes") == std::set<std::string> { "independent-volumes" });
}
}
