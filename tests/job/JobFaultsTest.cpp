#include "support/JobFixture.h"

namespace jobFaultsTest
{
using namespace coldiron;
using support::faultsOf;
using support::Folder;
using support::has;

namespace
{
const std::string head = "{ \"coldiron\": \"job 1\", \"guitar\": \"two-humbuckers-four-knobs\",\n";

/** A guitar in line: one coil through a volume. `parts` and `wires` follow on their own lines, 3 and 5. */
std::string smallGuitar (const std::string& parts, const std::string& wires)
{
    return "{ \"coldiron\": \"job 1\", \"guitar\": { \"scale_mm\": 650, \"strings\": [\"E2\"],\n \"parts\": {\n" + parts
           + "},\n \"wires\": [" + wires + "] } }";
}

const std::string goodParts = "\"p\": { \"pickup\": \"single-coil\", \"bridge_mm\": 50 }, \"jack\": { \"jack\": \"mono\" }";
const std::string goodWires = "[\"p.coil.start\", \"jack.tip\"], [\"p.coil.finish\", \"ground\"]";
}

TEST_CASE ("A good job has no faults")
{
    CHECK (faultsOf (head + "\"title\": \"x\" }").empty());
    CHECK (faultsOf (smallGuitar (goodParts, goodWires)).empty());
}

TEST_CASE ("All faults of a job come at once, each at its line")
{
    const auto diagnostics = faultsOf (head + R"("titel": "x",
"recording": { "cabel": "500p", "input": { "resistance": "-1" } },
"takes": [ { "file": "v.wav", "setting": { "selector": "midle", "bridge-volume": 11 }, "strings": ["F9"] } ],
"options": { "A": { "take": 2 },
  "B": { "rewires": [ { "use": "serial-parallel" } ] },
  "C": { "rewires": [ { "use": "series-parallel", "pickup": "bridge", "pott": "bridge-volume" } ] },
  "D": { "setting": { "bridge-vol": 5 } },
  "J": { } } })");
    CHECK (has (diagnostics, 2, { "titel", "did you mean \"title\"" }));
    CHECK (has (diagnostics, 3, { "cabel", "did you mean \"cable\"" }));
    CHECK (has (diagnostics, 3, { "resistance", "-1", "expected a number from 100" }));
    CHECK (has (diagnostics, 4, { "selector", "midle", "neck, both, bridge" }));
    CHECK (has (diagnostics, 4, { "bridge-volume", "found 11", "from 0 to 10" }));
    CHECK (has (diagnostics, 4, { "F9", "E2, A2" }));
    CHECK (has (diagnostics, 5, { "\"take\"", "number 2", "1 to 1" }));
    CHECK (has (diagnostics, 6, { "no rewire preset", "serial-parallel", "did you mean \"series-parallel\"" }));
    CHECK (has (diagnostics, 7, { "does not ask for \"pott\"", "\"pot\"" }));
    CHECK (has (diagnostics, 8, { "bridge-vol", "did you mean \"bridge-volume\"" }));
    CHECK (has (diagnostics, 9, { "\"J\"", "letters A to H" }));
    CHECK (diagnostics.size() == 11);
}

TEST_CASE ("What a file is must be said")
{
    CHECK (has (faultsOf ("{ \"guitar\": \"one-humbucker\" }"), 1, { "begin it with \"coldiron\": \"job 1\"" }));
    CHECK (has (faultsOf ("{\n \"coldiron\": \"guitar 1\", \"guitar\": \"one-humbucker\" }"), 2,
                { "found the text \"guitar 1\"", "job 1" }));
    CHECK (has (faultsOf ("[]"), 1, { "a list", "job 1" }));
    CHECK (has (faultsOf ("{ \"coldiron\": \"job 1\" }"), 1, { "no \"guitar\"" }));
    Diagnostics diagnostics;
    CHECK_FALSE (readJob ("/nowhere/at/all.json", support::shipped(), diagnostics));
    CHECK (diagnostics.size() == 1);
    const Folder folder;
    diagnostics.clear();
    CHECK_FALSE (readJob (folder.write ("empty.json", ""), support::shipped(), diagnostics));
    CHECK (has (diagnostics, 0, { "empty" }));
}

TEST_CASE ("Preset names lead nowhere but into the folders")
{
    for (const char* name : { "../guitars/one-humbucker", "/etc/passwd", "One-Humbucker", "", "one humbucker", "one-humbuker" })
    {
        INFO (name);
        const auto diagnostics = faultsOf (std::string ("{ \"coldiron\": \"job 1\",\n \"guitar\": \"") + name + "\" }");
        CHECK (has (diagnostics, 2, { "no guitar preset" }));
    }
    CHECK_FALSE (support::shipped().has ("guitars", "../guitars/one-humbucker"));
}

TEST_CASE ("Wires go to points that are there")
{
    CHECK (has (faultsOf (smallGuitar (goodParts, goodWires + ",\n[\"p.coil.stert\",\n\"jack.tip\"]")), 5,
                { "p.coil.stert", "did you mean \"p.coil.start\"" }));
    CHECK (has (faultsOf (smallGuitar (goodParts, goodWires + ",\n[\"q.1\", \"jack.tip\"]")), 5, { "q.1", "no part \"q\"" }));
    CHECK (has (faultsOf (smallGuitar (goodParts, goodWires + ",\n[\"jack.tip\"]")), 5, { "a list of 1", "two solder points" }));
    CHECK (has (faultsOf (smallGuitar (goodParts, goodWires + ",\n7")), 5, { "number 7" }));
    CHECK (
        has (faultsOf (smallGuitar ("\"p\": { \"pickup\": \"single-coil\", \"bridge_mm\": 50 }", goodWires)), 2, { "no jack" }));
}

TEST_CASE ("Parts say what they are, within range")
{
    const auto part = [] (const std::string& text)
    { return faultsOf (smallGuitar (goodParts + ",\n\"x\": " + text, goodWires)); };
    CHECK (part ("{ \"pot\": \"500k\" }").empty());
    CHECK (has (part ("{ \"pott\": \"500k\" }"), 4, { "does not say what it is", "did you mean \"pot\"" }));
    CHECK (has (part ("{ \"pot\": \"500k\", \"capacitor\": \"1n\" }"), 4, { "several things" }));
    CHECK (has (part ("{ \"pot\": \"500K\" }"), 4, { "500K", "expected a number" }));
    CHECK (has (part ("{ \"pot\": 0 }"), 4, { "found 0", "expected a number from 100 to 100M ohm" }));
    CHECK (has (part ("{ \"pot\": \"500k\", \"taper\": \"log-99\" }"), 4, { "no taper \"log-99\"" }));
    CHECK (has (part ("{ \"capacitor\": \"22nF\" }"), 4, { "22nF", "no unit" }));
    CHECK (has (part ("{ \"capacitor\": 22 }"), 4, { "found 22", "1m F" }));
    CHECK (has (part ("{ \"switch\": \"toggle-3\", \"on\": \"volume\" }"), 4, { "\"on\"", "no pot" }));
    CHECK (has (part ("{ \"resistor\": \"1k\", \"serves\": \"neck\" }"), 4, { "\"serves\"", "no pickup" }));
    CHECK (has (part ("{ \"jack\": \"mono\" }"), 2, { "2 jacks" }));
    CHECK (has (part ("{ \"jack\": \"quad\" }"), 4, { "mono, stereo" }));
    CHECK (
        has (part ("{ \"pickup\": { \"like\": \"single-coil\", \"coils\": { \"coil\": { \"dcr\": true } } }, \"bridge_mm\": 9 }"),
             4, { "\"dcr\"", "found true" }));
    CHECK (has (
        part ("{ \"pickup\": { \"like\": \"single-coil\", \"inside\": [[\"coil.start\", \"coil.end\"]] }, \"bridge_mm\": 9 }"), 4,
        { "coil.end" }));
    CHECK (has (
        part (
            "{ \"pickup\": { \"like\": \"single-coil\", \"coils\": { \"coil\": { \"hears\": [\"D3\"] } } }, \"bridge_mm\": 9 }"),
        1, { "D3" }));
    CHECK (has (part ("{ \"switch\": { \"points\": [\"a\", \"b\"], \"positions\": { \"on\": [[\"a\", \"c\"]] } } }"), 4,
                { "no point \"c\"" }));
    CHECK (has (part ("{ \"switch\": { \"points\": [\"a\", \"b\"], \"rest\": \"off\", \"positions\": { \"on\": [] } } }"), 4,
                { "\"off\"", "there are on" }));
}

TEST_CASE ("A taper that falls is refused, where it falls")
{
    const auto taper = [] (const std::string& points)
    {
        return faultsOf (
            smallGuitar (goodParts + ", \"x\": { \"pot\": \"500k\", \"taper\": { \"points\": [\n" + points + "] } }", goodWires));
    };
    CHECK (taper ("[0, 0],\n[0.5, 0.2],\n[1, 1]").empty());
    CHECK (has (taper ("[0, 0],\n[0.5, 0.2],\n[0.7, 0.1],\n[1, 1]"), 6, { "falls from 0.2 to 0.1" }));
    CHECK (has (taper ("[0, 0],\n[0.5, 0.2],\n[0.5, 0.3],\n[1, 1]"), 6, { "travel goes from" }));
    CHECK (has (taper ("[0, 0.1],\n[1, 1]"), 4, { "first point" }));
    CHECK (has (taper ("[0, 0],\n[1, 0.9]"), 5, { "last point" }));
    CHECK (has (taper ("[0, 0],\n[1, 2]"), 5, { "share", "found 2" }));
}

TEST_CASE ("Silence at every setting is a fault, at the option's own a note, at the take's own a fault")
{
    CHECK (has (faultsOf (smallGuitar (goodParts, "[\"p.coil.start\", \"jack.tip\"]")), 1, { "no coil reaches the jack" }));
    CHECK (has (faultsOf (smallGuitar (goodParts, goodWires + ", [\"jack.tip\", \"ground\"]")), 1, { "shorted" }));

    const std::string killed = head + R"("options": { "A": { "rewires": [ { "use": {
  "coldiron": "rewire 1", "name": "Kill",
  "steps": [ { "fit": "kill", "as": { "switch": { "points": ["a", "b"], "positions": { "on": [], "off": [["a", "b"]] } } } },
             { "solder": ["kill.a", "jack.tip"] }, { "solder": ["kill.b", "ground"] } ] } } ],
  "setting": { "kill": "off" } } } })";
    Diagnostics diagnostics;
    const auto job = readJobText (killed, "/", support::shipped(), diagnostics);
    CHECK (diagnostics.empty());
    REQUIRE (job.has_value());
    CHECK (has (job->warnings, 6, { "option A", "silent", "shorted" }));

    const std::string taken = head + R"("takes": [ { "file": "v.wav", "rewires": [ { "use": {
  "coldiron": "rewire 1", "name": "Kill",
  "steps": [ { "fit": "kill", "as": { "switch": { "points": ["a", "b"], "positions": { "on": [], "off": [["a", "b"]] } } } },
             { "solder": ["kill.a", "jack.tip"] }, { "solder": ["kill.b", "ground"] } ] } } ],
  "setting": { "kill": "off" } } ] })";
    CHECK (has (faultsOf (taken), 6, { "the take", "shorted" }));
}

TEST_CASE ("A fault in a preset names the preset's file and line")
{
    const Folder folder;
    folder.write ("pickups/bad.json",
                  "{ \"coldiron\": \"pickup 1\",\n \"coils\": { \"coil\": {\n \"dcr\": \"6k\", \"inductance\": 1e9 } } }");
    folder.write ("pickups/loop.json", "{ \"coldiron\": \"pickup 1\", \"like\": \"loop\" }");
    const auto presets = support::shipped().behind (folder.path);
    const auto job = [] (const std::string& name)
    {
        return smallGuitar ("\"p\": { \"pickup\": \"" + name + "\", \"bridge_mm\": 50 }, \"jack\": { \"jack\": \"mono\" }",
                            goodWires);
    };
    const auto diagnostics = faultsOf (job ("bad"), presets);
    REQUIRE (diagnostics.size() == 1);
    CHECK (diagnostics[0].file == (folder.path / "pickups/bad.json").string());
    CHECK (has (diagnostics, 3, { "inductance", "found 1G" }));
    CHECK (faultsOf (job ("loop"), presets).size() >= 1);
}

TEST_CASE ("Presets of one's own come before the shipped ones, and like merges deeply")
{
    const Folder folder;
    folder.write ("pickups/single-coil.json",
                  "{ \"coldiron\": \"pickup 1\", \"coils\": { \"coil\": { \"dcr\": 1000, \"inductance\": 1,\n \"loss\": [ { "
                  "\"inductance\": 1, \"resistance\": 1000 }, { \"inductance\": 2, \"resistance\": 1000 } ] } } }");
    folder.write ("pickups/mine.json",
                  "{ \"coldiron\": \"pickup 1\", \"like\": \"single-coil\", \"known\": \"from ohms\", \"coils\": { \"coil\": { "
                  "\"dcr\": \"2k\", \"loss\": [ { \"inductance\": 3, \"resistance\": 1000 } ] } } }");
    const auto presets = support::shipped().behind (folder.path);
    Diagnostics diagnostics;
    const auto job = readJobText (
        smallGuitar ("\"p\": { \"pickup\": \"mine\", \"bridge_mm\": 50 }, \"jack\": { \"jack\": \"mono\" }", goodWires), "/",
        presets, diagnostics);
    REQUIRE (job.has_value());
    const auto& pickup = job->guitar.harness.find ("p")->as<PickupPart>()->pickup;
    CHECK (pickup.known == Provenance::fromOhms);
    CHECK (pickup.coils.at (0).dcrOhms == 2000.0);
    CHECK (pickup.coils.at (0).henries == 1.0);
    REQUIRE (pickup.coils.at (0).losses.size() == 1);
    CHECK (pickup.coils.at (0).losses[0].henries == 3.0);
}

TEST_CASE ("A job named without a folder finds its takes where it lies")
{
    Diagnostics diagnostics;
    const auto job = readJobText (
        R"({ "coldiron": "job 1", "title": "Bare", "guitar": "one-humbucker", "takes": [ { "file": "verse.wav" } ] })",
        std::filesystem::path ("job.json").parent_path(),
        PresetFolders { { std::filesystem::path (COLDIRON_SOURCE) / "presets" } }, diagnostics);
    REQUIRE (job);
    CHECK (job->takes.front().file == std::filesystem::current_path() / "verse.wav");
}

TEST_CASE ("Runs of wire are read with their point and size")
{
    const auto withRuns = [] (const std::string& runs)
    {
        return "{ \"coldiron\": \"job 1\", \"guitar\": { \"scale_mm\": 650, \"strings\": [\"E2\"], \"parts\": {" + goodParts
               + "}, \"wires\": [" + goodWires + "],\n\"runs\": [" + runs + "] } }";
    };
    CHECK (
        faultsOf (
            withRuns (R"({ "at": "jack.tip", "mm": 450, "per_metre": "150p" }, { "at": "p.coil.start", "capacitance": "60p" })"))
            .empty());
    CHECK (has (faultsOf (withRuns (R"({ "at": "jack.tipp", "capacitance": "60p" })")), 2,
                { "jack.tipp", "did you mean \"jack.tip\"" }));
    CHECK (has (faultsOf (withRuns (R"({ "at": "ground", "capacitance": "60p" })")), 2, { "is ground", "carries the signal" }));
    CHECK (has (faultsOf (withRuns (R"({ "at": "jack.tip" })")), 2, { "either \"capacitance\", or \"mm\" and \"per_metre\"" }));
    CHECK (has (faultsOf (withRuns (R"({ "at": "jack.tip", "mm": 450 })")), 2, { "per_metre" }));
    CHECK (has (faultsOf (withRuns (R"({ "at": "jack.tip", "mm": 450, "per_metre": "150n" })")), 2, { "150n", "per_metre" }));
    CHECK (has (faultsOf (withRuns (R"({ "capacitance": "60p" })")), 2, { "\"at\"" }));
    CHECK (has (faultsOf (withRuns (R"({ "at": "jack.tip", "capacitance": "60p", "length": 3 })")), 2, { "length" }));

    // 450 mm of 150 pF a metre [calc]: 67.5 pF.
    Diagnostics diagnostics;
    const auto job =
        readJobText (withRuns (R"({ "at": "jack.tip", "mm": 450, "per_metre": "150p" })"), "/", support::shipped(), diagnostics);
    REQUIRE (job.has_value());
    REQUIRE (job->guitar.harness.runs().size() == 1);
    CHECK (job->guitar.harness.runs()[0].farads == Approx (67.5e-12));
}

TEST_CASE ("What is plugged in is read")
{
    Diagnostics diagnostics;
    const auto job =
        readJobText (R"({ "coldiron": "job 1", "guitar": "two-humbuckers-stereo", "recording": { "plug": "stereo-ring" },
 "options": { "A": { "listening": { "plug": "mono" } } } })",
                     "/", support::shipped(), diagnostics);
    REQUIRE (job.has_value());
    CHECK (job->recording.plug == Plug::stereoRing);
    CHECK (job->listening.plug == Plug::stereoRing);
    CHECK (job->options[0].listening.plug == Plug::mono);
    CHECK (has (faultsOf ("{ \"coldiron\": \"job 1\", \"guitar\": \"one-humbucker\",\n\"recording\": { \"plug\": \"jack\" } }"),
                2, { "plug", "stereo-tip" }));
}
}
