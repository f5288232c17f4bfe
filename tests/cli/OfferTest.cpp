// What fits a guitar, found by a client's words, put into the job as it is written.
#include "Run.h"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include <fstream>
#include <sstream>

namespace offerTest
{
using namespace coldiron::support;

namespace
{
std::string textOf (const std::string& path)
{
    std::ifstream file (path, std::ios::binary);
    std::ostringstream text;
    text << file.rdbuf();
    return text.str();
}

nlohmann::ordered_json parsed (const std::string& path)
{
    return nlohmann::ordered_json::parse (textOf (path), nullptr, true, true);
}

bool says (const std::string& text, const std::string& words) { return text.find (words) != std::string::npos; }

std::string newJob (const Fixture& fixture, const std::string& guitar, const std::vector<std::string>& more = {})
{
    const auto job = fixture.path ("bench.json");
    std::vector<std::string> words { "new", guitar, "--take", fixture.path ("take.wav"), "--out", job };
    words.insert (words.end(), more.begin(), more.end());
    const auto made = run (words);
    INFO (made.err);
    REQUIRE (made.exitCode == 0);
    return job;
}
}

TEST_CASE ("From a guitar on the bench to three rendered options: three commands, no JSON typed")
{
    Fixture fixture;
    const auto job = newJob (fixture, "two-humbuckers-four-knobs", { "--at", "selector=bridge" }); // one
    const auto offered = run ({ "offer", job, "--wish", "It is too dark for me", "--add" });       // two
    INFO (offered.err);
    REQUIRE (offered.exitCode == 0);
    CHECK (says (offered.out, "added A"));
    const auto rendered = run ({ "render", job, "--out", fixture.path ("sounds") }); // three
    INFO (rendered.err);
    REQUIRE (rendered.exitCode == 0);
    CHECK (fixture.files ("sounds") == std::vector<std::string> { "A.wav", "B.wav", "C.wav", "now.wav" });
    CHECK (run ({ "compare", job }).exitCode == 0);
}

TEST_CASE ("Without a wish everything is listed, what fits and what does not, each on a line")
{
    Fixture fixture;
    const auto job = newJob (fixture, "two-humbuckers-two-lead");
    const auto before = textOf (job);
    const auto offered = run ({ "offer", job });
    REQUIRE (offered.exitCode == 0);
    CHECK (textOf (job) == before);
    const auto all = nlohmann::json::parse (run ({ "presets", "rewires", "--json" }).out);
    for (const auto& rewire : all)
    {
        const auto at = offered.out.find ("  " + rewire["preset"].get<std::string>() + ": ");
        INFO (rewire["preset"]);
        CHECK (at != std::string::npos);
    }
    for (const auto& set : nlohmann::json::parse (run ({ "presets", "starters", "--json" }).out))
        CHECK (says (offered.out, "Starter set " + set["preset"].get<std::string>() + ":"));
    // Common practice of the trade, no source: two leads cannot be split.
    CHECK (says (offered.out, "not here  split-shorted"));
    CHECK (says (offered.out, "fits      pot-value"));
}

TEST_CASE ("Options go into the text, and what stands there stays")
{
    Fixture fixture;
    const auto job = newJob (fixture, "two-humbuckers-four-knobs");
    auto text = textOf (job);
    const std::string mine =
        "  \"options\": {\n    \"B\": { \"name\": \"Mine\", \"setting\": { \"bridge-volume\": 6 } } // as she plays it\n  }";
    text.replace (text.find ("  \"options\": {\n  }"), 18, mine);
    fixture.write ("bench.json", text);
    REQUIRE (run ({ "offer", job, "--wish", "split-shorted", "--add" }).exitCode == 0);
    const auto after = textOf (job);
    INFO (after);
    CHECK (says (after, "bridge-volume\": 6 } }, // as she plays it\n    \"A\": {"));
    auto tree = parsed (job);
    CHECK (tree["options"]["B"]["name"] == "Mine");
    CHECK (tree["options"]["A"]["rewires"][0]["use"] == "split-shorted");
    CHECK (tree["options"].size() == 2);
    CHECK (says (after, "// volume, 0 to 10")); // the comments of `new`
    CHECK (run ({ "check", job }).exitCode == 0);

    // The same again is not put in twice.
    const auto again = run ({ "offer", job, "--wish", "split-shorted", "--add" });
    CHECK (again.exitCode == 0);
    CHECK (says (again.out, "there already"));
    CHECK (textOf (job) == after);
}

TEST_CASE ("When no letter is left it says so and the job stays as it was")
{
    Fixture fixture;
    const auto job = newJob (fixture, "two-humbuckers-four-knobs");
    for (const auto* wish : { "brighter", "more voices", "independent" })
        run ({ "offer", job, "--wish", wish, "--add" });
    const auto full = run ({ "offer", job, "--wish", "quieter", "--wish", "pot-value", "--wish", "phase", "--add" });
    INFO (full.out);
    CHECK (full.exitCode == 1);
    CHECK (says (full.out, "no letter of A to H is left"));
    CHECK (parsed (job)["options"].size() == 8);
    const auto before = textOf (job);
    CHECK (run ({ "offer", job, "--wish", "kill-switch", "--add" }).exitCode == 1);
    CHECK (textOf (job) == before);
}

TEST_CASE ("Wishes that nothing answers, and what does not fit, are told apart")
{
    Fixture fixture;
    const auto job = newJob (fixture, "two-humbuckers-two-lead");
    const auto before = textOf (job);
    const auto parrot = run ({ "offer", job, "--wish", "a parrot", "--add" });
    CHECK (parrot.exitCode == 2);
    CHECK (says (parrot.err, "parrot"));
    CHECK (std::count (parrot.err.begin(), parrot.err.end(), '\n') == 1);
    const auto split = run ({ "offer", job, "--wish", "split-shorted", "--add" });
    CHECK (split.exitCode == 1);
    CHECK (says (split.out, "nothing was added"));
    CHECK (run ({ "offer", job, "--add" }).exitCode == 2); // no wish anywhere
    CHECK (run ({ "offer", fixture.path ("absent.json") }).exitCode == 1);
    CHECK (textOf (job) == before);
    CHECK (fixture.files() == std::vector<std::string> { "bench.json", "job.json", "take.wav" });
}

TEST_CASE ("A wish written in the job is the wish")
{
    Fixture fixture;
    const auto job = newJob (fixture, "three-single-coils", { "--wish", "It hums where I play." });
    const auto offered = run ({ "offer", job, "--add" });
    INFO (offered.err);
    REQUIRE (offered.exitCode == 0);
    CHECK (says (offered.out, "Starter set quieter"));
    CHECK (parsed (job)["options"].size() == 3);
}

TEST_CASE ("Offers for programs are JSON")
{
    Fixture fixture;
    const auto job = newJob (fixture, "two-humbuckers-four-knobs");
    const auto all =
        nlohmann::json::parse (run ({ "offer", job, "--json", "--wish", "coil-split", "--wish", "brighter", "--add" }).out);
    REQUIRE (all.size() == 2);
    for (const auto& rewire : all[0]["rewires"])
        CHECK ((rewire["fits"] == true ? rewire["option"].contains ("rewires") : rewire.contains ("why")));
    CHECK (all[0]["added"][0]["letter"] == "A");
    CHECK (all[1]["sets"][0]["preset"] == "brighter");
}

TEST_CASE ("A rewire asked for by another name shows what it is called here")
{
    const auto found = run ({ "presets", "rewires", "coil-split" });
    CHECK (found.exitCode == 0);
    CHECK (says (found.out, "split-shorted"));
    CHECK (says (found.out, "split-open"));
    CHECK_FALSE (says (found.out, "kill-switch"));
    CHECK (run ({ "presets", "rewires", "no-such-thing-at-all" }).exitCode == 2);
    CHECK (run ({ "presets", "rewires", "coil-split", "--json" }).exitCode == 2); // a program asks by the name itself
}

TEST_CASE ("A push-pull left down says that it must be pulled")
{
    Fixture fixture;
    const auto job = newJob (fixture, "two-humbuckers-four-knobs", { "--at", "selector=bridge" });
    auto text = textOf (job);
    text.replace (text.find ("  \"options\": {\n  }"), 18,
                  "  \"options\": {\n    \"A\": { \"name\": \"Down\", \"rewires\": [ { \"use\": \"series-parallel\", \"pickup\": "
                  "\"bridge\", \"pot\": \"bridge-volume\" } ] },\n"
                  "    \"B\": { \"name\": \"Up\", \"rewires\": [ { \"use\": \"series-parallel\", \"pickup\": \"bridge\", "
                  "\"pot\": \"bridge-volume\" } ], \"setting\": { \"bridge-volume-pull\": \"up\" } } }");
    fixture.write ("bench.json", text);
    const auto table = run ({ "compare", job });
    INFO (table.err);
    REQUIRE (table.exitCode == 0);
    const auto down = table.out.find ("A  Down"), up = table.out.find ("B  Up");
    REQUIRE (up != std::string::npos);
    CHECK (says (table.out.substr (down, up - down), "sounds like as recorded until bridge-volume-pull"));
    CHECK_FALSE (says (table.out.substr (up), "sounds like as recorded"));
}

TEST_CASE ("What the marks mean stands once in a table, however many options there are")
{
    Fixture fixture;
    const auto job = newJob (fixture, "two-humbuckers-four-knobs", { "--at", "selector=bridge" });
    REQUIRE (run ({ "offer", job, "--wish", "brighter", "--wish", "pot-value", "--wish", "treble-bleed-cap", "--add" }).exitCode
             == 0);
    const auto table = run ({ "compare", job }).out;
    const std::string meaning = "hears the strings just as the take did";
    const auto first = table.find (meaning);
    REQUIRE (first != std::string::npos);
    CHECK (table.find (meaning, first + 1) == std::string::npos);
    CHECK_FALSE (says (table, "give or take"));
}
}
