// What a guitar's controls do is common practice of the trade, no source.
#include "support/Catalogue.h"

#include "response/ControlUse.h"

namespace controlUseTest
{
using namespace coldiron;
using Kind = ControlUse::Kind;

namespace
{
std::map<std::string, ControlUse> usesOf (const std::string& guitar)
{
    const auto read = support::allGuitars ({ guitar }).front();
    StringSet strings;
    strings.strings = read.strings;
    strings.played.assign (read.strings.size(), true);
    std::map<std::string, ControlUse> all;
    for (auto& use : controlUses ({ read.harness, {}, {}, strings }))
        all[use.control.name] = use;
    return all;
}

PickupsOn alone (const std::string& pickup) { return { { pickup, {} } }; }
}

TEST_CASE ("Volumes, tones and blends are told apart by what they do")
{
    const auto four = usesOf ("two-humbuckers-four-knobs");
    for (const auto* name : { "neck-volume", "bridge-volume" })
        CHECK (four.at (name).kind == Kind::volume);
    for (const auto* name : { "neck-tone", "bridge-tone" })
        CHECK (four.at (name).kind == Kind::tone);
    const auto blend = usesOf ("bass-blend").at ("blend");
    CHECK (blend.kind == Kind::blend);
    CHECK (blend.blended[0] == alone ("neck"));
    CHECK (blend.blended[1].size() == 2);
    CHECK (blend.blended[2] == alone ("bridge"));
    CHECK (usesOf ("bass-two-single-coils").at ("neck-volume").kind == Kind::volume);
}

TEST_CASE ("Positions say which pickups are heard, and what sets two of the same pickups apart")
{
    const auto toggle = usesOf ("two-humbuckers-four-knobs").at ("selector").positions;
    REQUIRE (toggle.size() == 3);
    CHECK (toggle[0].heard == alone ("neck"));
    CHECK (toggle[1].heard == PickupsOn { { "bridge", {} }, { "neck", {} } });
    CHECK (toggle[2].heard == alone ("bridge"));

    // In series two pickups are louder and darker than in parallel.
    const auto rotary = usesOf ("two-single-coils-rotary").at ("rotary").positions;
    REQUIRE (rotary.size() == 4);
    CHECK (rotary[3].louder > 0);
    CHECK_FALSE (rotary[3].likePosition.empty());

    // Between middle and bridge the humbucker is split by the blade.
    bool split = false;
    const auto blade = usesOf ("humbucker-single-single").at ("blade").positions;
    for (const auto& use : blade)
        for (const auto& on : use.heard)
            split = split || on.coils == std::vector<std::string> { "north" };
    CHECK (split);
}
}
