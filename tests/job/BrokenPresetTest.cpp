// A preset of any kind, broken in any way and used twice: its faults are listed once, and nothing is computed with it.

#include "support/JobFixture.h"

#include "offer/Starter.h"

namespace brokenPresetTest
{
using namespace coldiron;

namespace
{
/** Where a preset of a kind is used twice in one job. */
struct Kind
{
    const char *folder, *name, *good, *job;
};

const Kind kinds[] = {
    { "switches", "mine",
      R"({ "coldiron": "switch 1", "points": ["a", "a-down", "a-up", "b", "b-down", "b-up"], "rest": "down",
  "positions": { "down": [["a", "a-down"], ["b", "b-down"]], "up": [["a", "a-up"], ["b", "b-up"]] } })",
      R"({ "coldiron": "job 1", "guitar": "two-humbuckers-four-knobs", "options": {
  "A": { "rewires": [ { "use": { "coldiron": "rewire 1", "name": "Fit", "steps": [ { "fit": "x", "as": { "switch": "mine" } } ] } } ] },
  "B": { "rewires": [ { "use": { "coldiron": "rewire 1", "name": "Fit", "steps": [ { "fit": "x", "as": { "switch": "mine" } } ] } } ] } } })" },
    { "switches", "toggle-3", // of the guitar itself, and of an option's own guitar
      R"({ "coldiron": "switch 1", "points": ["neck", "bridge", "out"],
  "positions": { "neck": [["neck","out"]], "both": [["neck","out"],["bridge","out"]], "bridge": [["bridge","out"]] } })",
      R"({ "coldiron": "job 1", "guitar": "two-humbuckers-four-knobs", "options": {
  "A": { "guitar": { "like": "two-humbuckers-four-knobs", "name": "Other" } }, "B": { "guitar": { "like": "two-humbuckers-four-knobs", "name": "Third" } } } })" },
    { "pickups", "mine",
      R"({ "coldiron": "pickup 1", "coupling": 0.1, "coils": { "coil": { "dcr": "6k", "inductance": 2.5 } } })",
      R"({ "coldiron": "job 1", "guitar": "two-humbuckers-four-knobs", "options": {
  "A": { "rewires": [ { "use": { "coldiron": "rewire 1", "name": "Fit", "steps": [ { "fit": "x", "as": { "pickup": "mine", "bridge_mm": 90 } } ] } } ] },
  "B": { "rewires": [ { "use": { "coldiron": "rewire 1", "name": "Fit", "steps": [ { "fit": "x", "as": { "pickup": "mine", "bridge_mm": 90 } } ] } } ] } } })" },
    { "tapers", "mine", R"({ "coldiron": "taper 1", "points": [[0, 0], [0.5, 0.2], [1, 1]] })",
      R"({ "coldiron": "job 1", "guitar": "two-humbuckers-four-knobs", "options": {
  "A": { "rewires": [ { "use": { "coldiron": "rewire 1", "name": "Fit", "steps": [ { "fit": "x", "as": { "pot": "500k", "taper": "mine" } } ] } } ] },
  "B": { "rewires": [ { "use": { "coldiron": "rewire 1", "name": "Fit", "steps": [ { "fit": "x", "as": { "pot": "500k", "taper": "mine" } } ] } } ] } } })" },
    { "rewires", "mine", R"({ "coldiron": "rewire 1", "asks": { "pot": "pot" }, "defaults": { "cap": "1n" },
  "steps": [ { "fit": "x", "as": { "capacitor": "{cap}" } }, { "solder": ["x.1", "{pot}.3"] } ] })",
      R"({ "coldiron": "job 1", "guitar": "two-humbuckers-four-knobs", "options": {
  "A": { "rewires": [ { "use": "mine", "pot": "bridge-volume" } ] }, "B": { "rewires": [ { "use": "mine", "pot": "bridge-volume" } ] } } })" },
    { "guitars", "mine", R"({ "coldiron": "guitar 1", "scale_mm": 648, "strings": ["E2", "A2", "D3", "G3", "B3", "E4"],
  "parts": { "p": { "pickup": "humbucker-moderate", "bridge_mm": 44 }, "s": { "switch": "mini-on-on" }, "jack": { "jack": "mono" } },
  "wires": [ ["p.north.start", "jack.tip"], ["p.north.finish", "p.south.finish"], ["p.south.start", "ground"] ] })",
      R"({ "coldiron": "job 1", "guitar": "mine", "options": { "A": { "guitar": "mine" }, "B": { "guitar": { "like": "mine", "name": "Again" } } } })" },
};

/** Every key at the top of a preset taken away, renamed, emptied, and put in place of something else; and no JSON at all. */
std::vector<std::string> breakages (const std::string& good)
{
    std::vector<std::string> bad { "",         " ",
                                   "{",        "nonsense",
                                   "[]",       "null",
                                   "{ }",      good.substr (0, good.size() / 2),
                                   good + "}", "{ \"coldiron\": \"jar 1\"" + good.substr (good.find (',')) };
    Json tree;
    Diagnostics diagnostics;
    REQUIRE (parseJson (good, "good", tree, diagnostics));
    for (size_t i = 0; i < tree.members.size(); ++i)
    {
        auto without = tree;
        without.members.erase (without.members.begin() + static_cast<std::ptrdiff_t> (i));
        bad.push_back (without.dump());
        auto renamed = tree;
        renamed.members[i].first += "s-of-it";
        bad.push_back (renamed.dump());
        for (const char* other :
             { "null", "{}", "[]", "[[]]", "{ \"\": [] }", "{ \"up\": null }", "\"\"", "true", "-1", "1e300", "\"nonsense\"" })
        {
            auto changed = tree;
            REQUIRE (parseJson (other, "other", changed.members[i].second, diagnostics));
            bad.push_back (changed.dump());
        }
        bad.push_back ("{" + tree.dump().substr (1, tree.dump().size() - 2) + ",\"" + tree.members[i].first
                       + "\":" + tree.members[i].second.dump() + "}"); // twice
    }
    return bad;
}
}

TEST_CASE ("A broken preset of any kind, used twice, is refused once and computed with never")
{
    for (const auto& kind : kinds)
    {
        const support::Folder folder;
        const auto presets = support::shipped().behind (folder.path);
        const auto file = folder.write (std::string (kind.folder) + "/" + kind.name + ".json", kind.good);
        INFO (kind.folder << "/" << kind.name);
        CHECK (support::faultsOf (kind.job, presets).empty());
        int refused = 0;
        for (const auto& text : breakages (kind.good))
        {
            folder.write (std::string (kind.folder) + "/" + kind.name + ".json", text);
            INFO (text);
            Diagnostics diagnostics;
            const auto job = readJobText (kind.job, "/", presets, diagnostics);
            CHECK (job.has_value() == diagnostics.empty());
            refused += job ? 0 : 1;
            for (size_t i = 0; i < diagnostics.size(); ++i)
                for (size_t j = i + 1; j < diagnostics.size(); ++j)
                    CHECK (diagnostics[i].text() != diagnostics[j].text());
        }
        CHECK (refused >= 20);
    }
}

TEST_CASE ("A broken starter set is refused")
{
    const std::string good = R"({ "coldiron": "starter 1", "says": "Brighter", "proof": "brighter",
  "candidates": [ { "name": "{pickup} split", "asks": { "pickup": "pickup" }, "rewires": [ { "use": "coil-tap" } ] } ] })";
    for (const auto& text : breakages (good))
    {
        const support::Folder folder;
        folder.write ("starters/mine.json", text);
        INFO (text);
        Diagnostics diagnostics;
        const auto starter = readStarter ("mine", support::shipped().behind (folder.path), diagnostics);
        CHECK (starter.has_value() == diagnostics.empty());
    }
}

TEST_CASE ("A preset that cannot be read leaves no part behind that a second use could trip over")
{
    for (const char* text : { "{", R"({ "coldiron": "switch 1", "points": ["a", "b"] })",
                              R"({ "coldiron": "switch 1", "points": ["a", "b"], "positions": {} })",
                              R"({ "coldiron": "switch 1", "points": ["a", "b"], "postions": { "up": [["a", "b"]] } })" })
    {
        const support::Folder folder;
        folder.write ("switches/mine.json", text);
        INFO (text);
        const auto diagnostics = support::faultsOf (kinds[0].job, support::shipped().behind (folder.path));
        CHECK_FALSE (diagnostics.empty());
        CHECK (diagnostics.raised() >= 2);
        CHECK (diagnostics.front().file == (folder.path / "switches/mine.json").string());
    }
}
}
