// A job begun from a guitar's name: commented, whole, and over nothing.
#include "Run.h"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include <fstream>
#include <sstream>

namespace newTest
{
using namespace coldiron::support;
namespace fs = std::filesystem;

namespace
{
std::string textOf (const fs::path& path)
{
    std::ifstream file (path, std::ios::binary);
    std::ostringstream text;
    text << file.rdbuf();
    return text.str();
}

/** By the JSON library itself, comments passed over. */
nlohmann::ordered_json parsed (const fs::path& path)
{
    return nlohmann::ordered_json::parse (textOf (path), nullptr, true, true);
}

bool says (const std::string& text, const std::string& words) { return text.find (words) != std::string::npos; }
}

TEST_CASE ("Every guitar there is begins a job that is fine, with every control named")
{
    Fixture fixture;
    const auto guitars = nlohmann::json::parse (run ({ "presets", "guitars", "--json" }).out);
    REQUIRE (guitars.size() > 20);
    for (const auto& guitar : guitars)
    {
        const std::string name = guitar["preset"];
        INFO (name);
        const auto job = fixture.path (name + ".json");
        const auto made = run ({ "new", name, "--take", fixture.path ("take.wav"), "--out", job });
        INFO (made.err);
        REQUIRE (made.exitCode == 0);
        CHECK (made.err.empty());
        const auto tree = parsed (job);
        CHECK (tree["guitar"] == name);
        CHECK (tree["takes"][0]["file"] == "take.wav");
        const auto checked = run ({ "check", job });
        INFO (checked.err);
        CHECK (checked.exitCode == 0);

        // Every control, by the table that `ohms` prints a column of for each switch, and each position with words behind it.
        const auto whole = nlohmann::json::parse (run ({ "presets", "guitars", name, "--json" }).out);
        const auto text = textOf (job);
        for (const auto& [part, body] : whole["parts"].items())
            if ((body.contains ("pot") && ! body.contains ("shaft")) || body.contains ("switch"))
            {
                INFO (part);
                CHECK (tree["takes"][0]["setting"].contains (body.contains ("shaft") ? body["shaft"].get<std::string>() : part));
                if (! body.contains ("switch") || ! body["switch"].is_string())
                    continue;
                const auto type = nlohmann::json::parse (run ({ "presets", "switches", body["switch"], "--json" }).out);
                for (const auto& [position, groups] : type["positions"].items())
                    CHECK (says (text, "//   \"" + position + "\" "));
            }
    }
}

TEST_CASE ("A job without a take is fine too, and says how to record one")
{
    Fixture fixture;
    const auto made = run ({ "new", "one-humbucker", "--out", fixture.path ("walnut.json") });
    REQUIRE (made.exitCode == 0);
    CHECK (says (made.out, "coldiron card"));
    CHECK (run ({ "check", fixture.path ("walnut.json") }).exitCode == 0);
    CHECK (parsed (fixture.path ("walnut.json"))["takes"].empty());
    CHECK (parsed (fixture.path ("walnut.json"))["title"] == "Walnut");

    // The lines that wait for a take are a take once their // is gone.
    std::istringstream lines (textOf (fixture.path ("walnut.json")));
    std::string text, line;
    while (std::getline (lines, line))
    {
        if (const auto slashes = line.find ("    // ");
            slashes == 0
            && (says (line, "\"file\"") || says (line, "\"setting\": {") || says (line, "\": ") || says (line, "} }")))
            line.erase (0, 7);
        text += line + "\n";
    }
    std::ofstream (fixture.path ("filled.json"), std::ios::binary) << text;
    INFO (text);
    CHECK (parsed (fixture.path ("filled.json"))["takes"][0]["setting"].contains ("volume"));
    CHECK (run ({ "check", fixture.path ("filled.json") }).exitCode == 0);
}

TEST_CASE ("Names with quotes, spaces and odd letters work, and the next commands are ready for a shell")
{
    Fixture fixture;
    const auto folder = fixture.path ("the client's \"best\" guitar & \\ more");
    fs::create_directories (folder + "/takes");
    const auto take = folder + "/takes/vers\xc3\xa9 \"one\" \\ $HOME.wav";
    fs::copy_file (fixture.path ("take.wav"), take);
    const auto job = folder + "/it's \"the\" job.json";
    const auto made = run ({ "new", "one-humbucker", "--take", take, "--take", fixture.path ("take.wav"), "--at", "volume=7.5",
                             "--title", "Ann's \"blue\" \\ one", "--wish", "less // noise \"there\"", "--out", job });
    INFO (made.err);
    REQUIRE (made.exitCode == 0);
    const auto tree = parsed (job);
    CHECK (tree["title"] == "Ann's \"blue\" \\ one");
    CHECK (tree["wish"] == "less // noise \"there\"");
    CHECK (tree["takes"][0]["file"] == "takes/vers\xc3\xa9 \"one\" \\ $HOME.wav");
    CHECK (tree["takes"][1]["file"] == "../take.wav");
    CHECK (tree["takes"][0]["setting"]["volume"] == 7.5);
    CHECK (run ({ "check", job }).exitCode == 0);
    CHECK (says (made.out, "coldiron compare '" + folder.substr (0, folder.find ('\'')) + "'\\''s"));
}

TEST_CASE ("A take's place is seen from the job's folder, as it is named, through links too")
{
    Fixture fixture;
    fs::create_directories (fixture.path ("deep/in/here"));
    fs::create_directory_symlink (fixture.path ("deep/in/here"), fixture.path ("near"));
    REQUIRE (
        run ({ "new", "one-humbucker", "--take", fixture.path ("take.wav"), "--out", fixture.path ("near/job.json") }).exitCode
        == 0);
    CHECK (run ({ "check", fixture.path ("near/job.json") }).exitCode == 0);
    CHECK (parsed (fixture.path ("near/job.json"))["takes"][0]["file"] == "../take.wav");
}

TEST_CASE ("Nothing is written over, whatever it is")
{
    Fixture fixture;
    const auto job = textOf (fixture.path ("job.json")), take = textOf (fixture.path ("take.wav"));
    fs::create_directory (fixture.path ("folder"));
    fs::create_symlink (fixture.path ("nowhere"), fixture.path ("dangling"));
    for (const auto* name : { "job.json", "take.wav", "folder", "dangling", "take.wav/" })
    {
        INFO (name);
        const auto made = run ({ "new", "one-humbucker", "--take", fixture.path ("take.wav"), "--out", fixture.path (name) });
        CHECK (made.exitCode == 1);
        CHECK (std::count (made.err.begin(), made.err.end(), '\n') == 1);
        CHECK (made.out.empty());
    }
    CHECK (run ({ "new", "one-humbucker", "--out", "/dev/null" }).exitCode == 1);
    CHECK (textOf (fixture.path ("job.json")) == job);
    CHECK (textOf (fixture.path ("take.wav")) == take);
    CHECK_FALSE (fs::exists (fixture.path ("nowhere")));
    CHECK (run ({ "new", "one-humbucker", "--out", fixture.path ("no/such/folder/job.json") }).exitCode == 1);
}

TEST_CASE ("The take is read before anything is written")
{
    Fixture fixture;
    fixture.write ("text.wav", "no sound");
    for (const auto* take : { "text.wav", "absent.wav", "." })
    {
        INFO (take);
        const auto made = run ({ "new", "one-humbucker", "--take", fixture.path (take), "--out", fixture.path ("new.json") });
        CHECK (made.exitCode == 1);
        CHECK (says (made.err, fixture.path (take)));
        CHECK_FALSE (fs::exists (fixture.path ("new.json")));
    }
    CHECK (fixture.files() == std::vector<std::string> { "job.json", "take.wav", "text.wav" });
}

TEST_CASE ("A guitar misspelt or called otherwise is found or suggested")
{
    Fixture fixture;
    const auto misspelt = run ({ "new", "two-humbucker-four-knobs", "--out", fixture.path ("a.json") });
    CHECK (misspelt.exitCode == 2);
    CHECK (says (misspelt.err, "two-humbuckers-four-knobs"));
    const auto words = run ({ "new", "soapbars", "--out", fixture.path ("a.json") });
    CHECK (words.exitCode == 2);
    CHECK (says (words.err, "two-soapbars-four-knobs"));
    CHECK (run ({ "new", "a parrot", "--out", fixture.path ("a.json") }).exitCode == 2);
    CHECK_FALSE (fs::exists (fixture.path ("a.json")));

    // "SSS" for three single coils: common practice of the trade, no source.
    const auto called = run ({ "new", "SSS", "--out", fixture.path ("a.json") });
    INFO (called.err);
    CHECK (called.exitCode == 0);
    CHECK (says (called.out, "three-single-coils"));
    CHECK (parsed (fixture.path ("a.json"))["guitar"] == "three-single-coils");
}

TEST_CASE ("Where a control stood is checked")
{
    Fixture fixture;
    for (const auto* at : { "volume=11", "volume=nan", "volume", "=", "loudness=3", "volume=" })
    {
        INFO (at);
        const auto made = run ({ "new", "one-humbucker", "--at", at, "--out", fixture.path ("a.json") });
        CHECK (made.exitCode == 2);
        CHECK (std::count (made.err.begin(), made.err.end(), '\n') == 1);
    }
    const auto lever =
        run ({ "new", "two-humbuckers-four-knobs", "--at", "selector=sideways", "--out", fixture.path ("a.json") });
    CHECK (lever.exitCode == 2);
    CHECK (says (lever.err, "bridge"));
    REQUIRE (run ({ "new", "two-humbuckers-four-knobs", "--take", fixture.path ("take.wav"), "--at", "selector=bridge", "--at",
                    "bridge-tone=4", "--out", fixture.path ("a.json") })
                 .exitCode
             == 0);
    CHECK (parsed (fixture.path ("a.json"))["takes"][0]["setting"]["selector"] == "bridge");
    CHECK (parsed (fixture.path ("a.json"))["takes"][0]["setting"]["bridge-tone"] == 4);
}

TEST_CASE ("A blend begins at its detent")
{
    Fixture fixture;
    REQUIRE (run ({ "new", "bass-blend", "--take", fixture.path ("take.wav"), "--out", fixture.path ("a.json") }).exitCode == 0);
    CHECK (parsed (fixture.path ("a.json"))["takes"][0]["setting"]["blend"] == 5);
}
}
