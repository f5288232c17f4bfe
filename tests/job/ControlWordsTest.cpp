// What a job says of a guitar's controls. What they do is common practice of the trade, no source.
#include "support/Catalogue.h"

#include "job/ControlWords.h"

namespace controlWordsTest
{
using namespace coldiron;

namespace
{
std::map<std::string, ControlWords> wordsOf (const std::string& guitar)
{
    const auto read = support::allGuitars ({ guitar }).front();
    StringSet strings;
    strings.strings = read.strings;
    strings.played.assign (read.strings.size(), true);
    std::map<std::string, ControlWords> all;
    for (auto& words : controlWords ({ read.harness, {}, {}, strings }))
        all[words.control.name] = words;
    return all;
}

bool begins (const std::string& text, const std::string& with) { return text.rfind (with, 0) == 0; }
}

TEST_CASE ("Volumes, tones and blends are told apart by what they do")
{
    const auto four = wordsOf ("two-humbuckers-four-knobs");
    for (const auto* name : { "neck-volume", "bridge-volume" })
        CHECK (begins (four.at (name).about, "volume"));
    for (const auto* name : { "neck-tone", "bridge-tone" })
        CHECK (begins (four.at (name).about, "tone"));
    CHECK (begins (wordsOf ("bass-blend").at ("blend").about, "blend, 0 to 10: at 0 neck"));
    CHECK (begins (wordsOf ("bass-two-single-coils").at ("neck-volume").about, "volume"));
}

TEST_CASE ("Positions say which pickups are heard, and what sets two of the same pickups apart")
{
    const auto toggle = wordsOf ("two-humbuckers-four-knobs").at ("selector").positions;
    REQUIRE (toggle.size() == 3);
    CHECK (toggle[0].second == "neck alone");
    CHECK (toggle[1].second == "bridge and neck together");
    CHECK (toggle[2].second == "bridge alone");

    // In series two pickups are louder and darker than in parallel.
    const auto rotary = wordsOf ("two-single-coils-rotary").at ("rotary").positions;
    REQUIRE (rotary.size() == 4);
    CHECK (rotary[3].second.find ("louder") != std::string::npos);

    // Between middle and bridge the humbucker is split by the blade.
    bool split = false;
    for (const auto& [position, heard] : wordsOf ("humbucker-single-single").at ("blade").positions)
        split = split || heard.find ("its north coil alone") != std::string::npos;
    CHECK (split);
}
}
