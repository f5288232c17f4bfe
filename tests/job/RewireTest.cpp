#include "support/JobFixture.h"

namespace rewireTest
{
using namespace coldiron;
using support::faultsOf;
using support::has;

namespace
{
std::string jobWith (const std::string& guitar, const std::string& rewires)
{
    return "{ \"coldiron\": \"job 1\", \"guitar\": " + guitar + ",\n \"options\": { \"A\": { \"rewires\": [\n" + rewires
           + " ] } } }";
}

const std::string two = "\"two-humbuckers-four-knobs\"";
const std::string twoLeads = R"({ "like": "one-humbucker", "parts": { "bridge": { "pickup": "humbucker-moderate-two-lead" } },
 "wires": [ ["bridge.north.start", "volume.3", "tone.1"], ["bridge.shield", "ground"], ["volume.1", "volume.case", "ground"],
            ["volume.2", "jack.tip"], ["tone.2", "cap.1"], ["cap.2", "ground"] ] })";
}

TEST_CASE ("Asks are checked against the guitar at that moment")
{
    CHECK (faultsOf (jobWith (two, R"({ "use": "series-parallel", "pickup": "bridge", "pot": "bridge-volume" })")).empty());
    CHECK (has (faultsOf (jobWith (two, R"({ "use": "series-parallel", "pickup": "brigde", "pot": "bridge-volume" })")), 3,
                { "asks for a pickup", "did you mean \"bridge\"" }));
    CHECK (has (faultsOf (jobWith (two, R"({ "use": "series-parallel", "pickup": "bridge", "pot": "selector" })")), 3,
                { "asks for a pot", "\"selector\"" }));
    CHECK (has (faultsOf (jobWith (two, R"({ "use": "series-parallel", "pickup": "bridge" })")), 3, { "needs \"pot\"" }));
    CHECK (has (faultsOf (jobWith (two, R"({ "use": "both-in-series", "first": "neck", "second": "neck", "pot": "neck-tone" })")),
                3, { "both \"neck\"", "must differ" }));
    CHECK (has (faultsOf (jobWith (two, R"({ "use": "treble-bleed-cap", "pot": "bridge-volume", "cap": "lots" })")), 3,
                { "cannot be used so" }));
    CHECK (has (faultsOf (jobWith (two, R"({ "use": "tone-on-output", "tone": "bridge-tone.9", "volume": "bridge-volume" })")), 3,
                { "bridge-tone.9", "1, 2, 3, case" }));
}

TEST_CASE ("Defaults fill in, arguments override, and reach into parts and words")
{
    Diagnostics diagnostics;
    const auto job = readJobText (jobWith (two, R"({ "use": "treble-bleed-parallel", "pot": "bridge-volume", "cap": "680p" })"),
                                  "/", support::shipped(), diagnostics);
    REQUIRE (job.has_value());
    const auto& option = job->options.at (0);
    CHECK (option.harness.find ("bridge-volume-bleed-cap")->as<CapacitorPart>()->farads == 680e-12);
    CHECK (option.harness.find ("bridge-volume-bleed-r")->as<ResistorPart>()->ohms == 150e3);
    CHECK (option.rewires.at (0).gives.find ("680p") != std::string::npos);
    CHECK (option.rewires.at (0).arguments.at ("resistor") == "150k");
}

TEST_CASE ("A pickup with its joint inside cannot be split, and the words say why")
{
    const auto diagnostics =
        faultsOf (jobWith (twoLeads, R"({ "use": "series-parallel", "pickup": "bridge", "pot": "volume" })"));
    CHECK (has (diagnostics, 5, { "four leads", "joined inside" }));
    CHECK (has (faultsOf (jobWith (twoLeads, R"({ "use": "phase-pull", "pickup": "bridge", "pot": "volume" })")), 5,
                { "braid", "four leads" }));
    CHECK (faultsOf (jobWith (twoLeads, R"({ "use": "bass-cut", "pickup": "bridge", "pot": "volume" })")).empty());
}

TEST_CASE ("No step reaches inside a pickup, and none may bring a joint out")
{
    const auto own = [] (const std::string& step)
    {
        return R"({ "use": { "coldiron": "rewire 1", "name": "Own",
 "steps": [ )" + step
               + " ] } }";
    };
    CHECK (has (faultsOf (jobWith (twoLeads, own (R"({ "solder": ["bridge.north.finish", "volume.3"] })"))), 5,
                { "step 1 of \"Own\"", "joined inside" }));
    CHECK (has (faultsOf (jobWith (twoLeads, own (R"({ "solder": ["volume.3", "@bridge.south.finish"] })"))), 5,
                { "joined inside" }));
    // A four-lead pickup on a switch cannot be replaced by one whose joint is inside.
    const auto diagnostics = faultsOf (jobWith (two, R"({ "use": "series-parallel", "pickup": "bridge", "pot": "bridge-volume" },
)" + own (R"({ "replace": "bridge", "as": { "pickup": "humbucker-moderate-two-lead" } })")));
    REQUIRE (diagnostics.size() == 1);
    CHECK (has (diagnostics, 4, { "joined inside", "four leads" }));
}

TEST_CASE ("A refusal names the step, its file and line, and whether another order works")
{
    const auto series = R"({ "use": "series-parallel", "pickup": "bridge", "pot": "bridge-volume" })";
    const auto diagnostics = faultsOf (jobWith (
        two, std::string (series) + ",\n" + R"({ "use": "series-parallel", "pickup": "neck", "pot": "bridge-volume" })"));
    REQUIRE (diagnostics.size() == 1);
    CHECK (has (diagnostics, 4, { "step 1 of", "series-parallel.json:", "bridge-volume", "No other order works" }));
}

TEST_CASE ("A rewire that another one stands in the way of is told the order that works")
{
    // The tone moves to the output side only while its lug has the one wire.
    const auto diagnostics = faultsOf (jobWith (
        two,
        R"({ "use": { "coldiron": "rewire 1", "name": "Second wire", "steps": [ { "solder": ["bridge-tone.1", "bridge-volume.2"] } ] } },
{ "use": { "coldiron": "rewire 1", "name": "First wire away", "steps": [ { "move": "bridge-tone.1", "to": "jack.tip" } ] } })"));
    REQUIRE (diagnostics.size() == 1);
    CHECK (has (diagnostics, 4,
                { "\"First wire away\"", "several wires", "Another order works: \"First wire away\", \"Second wire\"" }));
}

TEST_CASE ("A rewire that changes nothing is refused")
{
    CHECK (has (faultsOf (jobWith (two, R"({ "use": "tone-on-input", "tone": "bridge-tone.1", "volume": "bridge-volume" })")), 3,
                { "changes nothing" }));
}

TEST_CASE ("An unknown {name}, a wrong step and an unknown key of a rewire are faults in its own line")
{
    const auto diagnostics = faultsOf (jobWith (two, R"({ "use": { "coldiron": "rewire 1", "asks": { "pot": "pot" },
 "steps": [ { "solder": ["{pto}.1", "ground"] },
  { "sodler": ["a", "b"] },
  { "swap": ["a"] },
  { "fit": "x", "as": { "capacitor": "1n", "colour": "red" } } ] }, "pot": "bridge-tone" })"));
    CHECK (has (diagnostics, 4, { "{pto}", "did you mean {pot}" }));
    CHECK (has (diagnostics, 5, { "does not say what to do", "did you mean \"solder\"" }));
    CHECK (has (diagnostics, 6, { "found 1 points, expected two" }));
    CHECK (has (diagnostics, 7, { "no key \"colour\"" }));
}

TEST_CASE ("An option starts from its take's setting, as far as the controls are the same")
{
    Diagnostics diagnostics;
    const auto job = readJobText (R"({ "coldiron": "job 1", "guitar": "two-humbuckers-four-knobs",
 "takes": [ { "file": "a.wav" }, { "file": "sub/../b.wav", "setting": { "selector": "bridge", "bridge-volume": 7, "neck-tone": "3.5" }, "strings": ["E2"] } ],
 "options": { "A": { "take": 2, "setting": { "neck-tone": 1 } }, "B": { "take": 2, "guitar": "one-humbucker" }, "C": { "listening": { "cable": "1n" } } } })",
                                  "/music", support::shipped(), diagnostics);
    REQUIRE (job.has_value());
    const auto* a = job->find ("A");
    REQUIRE (a != nullptr);
    CHECK (a->take == 1);
    CHECK (a->setting.knobs == std::map<std::string, double> { { "bridge-volume", 7.0 }, { "neck-tone", 1.0 } });
    CHECK (a->setting.levers.at ("selector") == "bridge");
    CHECK (job->find ("B")->setting.levers.empty());
    CHECK (job->find ("B")->guitar.preset == "one-humbucker");
    CHECK (job->find ("C")->listening.cableFarads == 1e-9);
    CHECK (job->find ("C")->listening.inputOhms == 1e6);
    CHECK (job->takes.at (1).file == "/music/b.wav");
    CHECK (job->recordedConfig (1).strings.played == std::vector<bool> { true, false, false, false, false, false });
    CHECK (job->optionConfig (*job->find ("C")).strings.played == std::vector<bool> (6, true));
    CHECK (job->find ("D") == nullptr);
}
}
