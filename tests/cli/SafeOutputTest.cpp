// What is printed of names and texts out of a file steers no terminal, and what cannot be done is said in plain words.

#include "Run.h"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include <sys/resource.h>
#include <unistd.h>

#include <algorithm>
#include <filesystem>

namespace safeOutputTest
{
using namespace coldiron::support;

namespace
{
/** ESC, BEL, DEL, a C1 character, and a right-to-left override (ECMA-48; Unicode Standard Annex 9). */
const std::string steering = "\\u001b[2J\\u0007\\u007f\\u009b1m\\u202e";

bool isSafe (const std::string& text)
{
    return std::none_of (text.begin(), text.end(),
                         [] (unsigned char c) { return (c < 32 && c != '\n' && c != '\t') || c == 127; })
           && text.find ("\xc2\x9b") == std::string::npos && text.find ("\xe2\x80\xae") == std::string::npos;
}

std::string steeringJob (const std::string& take = "take.wav")
{
    auto text = jobText ("\"A\": { \"name\": \"Grüße " + steering + "\" }", "{ \"file\": \"" + take + "\" }");
    const std::string title = "One humbucker on the bench";
    return text.replace (text.find (title), title.size(), "Title " + steering);
}
}

TEST_CASE ("names out of a job never steer the terminal")
{
    const Fixture fixture;
    fixture.write ("job.json", steeringJob());
    const auto job = fixture.path ("job.json");
    for (const auto& arguments : { std::vector<std::string> { "check", job },
                                   { "compare", job },
                                   { "compare", job, "--json" },
                                   { "ohms", job, "--option", "A" },
                                   { "ohms", job, "--json" },
                                   { "render", job, "--out", fixture.path ("out") },
                                   { "spice", job, "--option", "A" } })
    {
        const auto ran = run (arguments);
        INFO (arguments[0] << ": " << ran.out << ran.err);
        CHECK (ran.exitCode == 0);
        CHECK (isSafe (ran.out));
        CHECK (isSafe (ran.err));
    }
    CHECK (run ({ "compare", job }).out.find ("Grüße \\u001b[2J\\u0007\\u007f\\u009b1m\\u202e") != std::string::npos);
    const auto document = nlohmann::json::parse (run ({ "ohms", job, "--json" }).out);
    CHECK (document["job"]
           == "Title \x1b[2J\x07\x7f\xc2\x9b"
              "1m\xe2\x80\xae"); // a program reads what was written
}

TEST_CASE ("faults and names on the command line never steer the terminal")
{
    const Fixture fixture;
    fixture.write ("job.json", steeringJob (steering + "none.wav"));
    const std::string raw = "\x1b[2J\n\xc2\x9b"
                            "1m\xe2\x80\xae\x80";
    for (const auto& arguments : { std::vector<std::string> { "check", fixture.path ("job.json") },
                                   { "check", raw },
                                   { raw },
                                   { "presets", raw },
                                   { "presets", "--presets", raw },
                                   { "ohms", fixture.path ("job.json"), "--option", raw } })
    {
        const auto ran = run (arguments);
        INFO (ran.out << ran.err);
        CHECK (ran.exitCode != 0);
        CHECK (isSafe (ran.out));
        CHECK (isSafe (ran.err));
    }
}

TEST_CASE ("no exception of a library reaches a person")
{
    const Fixture fixture;
    const std::string job = fixture.path ("job.json"), longName (300, 'x');
    for (const auto& arguments : { std::vector<std::string> { "check", longName },
                                   { "render", job, "--out", longName },
                                   { "render", job, "--out", fixture.path ("out"), "--after", "" },
                                   { "render", job, "--out", fixture.path ("out"), "--after", longName },
                                   { "fit", longName, "--out", "-" },
                                   { "presets", "--presets", longName } })
    {
        const auto ran = run (arguments);
        INFO (ran.err);
        CHECK ((ran.exitCode == 1 || ran.exitCode == 2));
        CHECK (std::count (ran.err.begin(), ran.err.end(), '\n')
               == (ran.err.starts_with ("note: ") ? 2 : 1)); // an option of the job is silent
        for (const char* raw : { "filesystem", "what()", "std::", "basic_string" })
            CHECK (ran.err.find (raw) == std::string::npos);
    }
    CHECK (run ({ "render", job, "--out", fixture.path ("out"), "--after", "" }).exitCode == 2);
    CHECK (fixture.files ("out").empty());
}

TEST_CASE ("where there are no presets it says where it looked")
{
    const Fixture fixture;
    std::filesystem::create_directories (fixture.folder / "empty");
    setenv ("COLDIRON_PRESETS", fixture.path ("empty").c_str(), 1);
    setenv ("XDG_DATA_HOME", fixture.path ("empty").c_str(), 1);
    const auto all = run ({ "presets" }), one = run ({ "presets", "guitars" });
    setenv ("COLDIRON_PRESETS", fixture.path ("nowhere").c_str(), 1);
    const auto nowhere = run ({ "presets" }), check = run ({ "check", fixture.path ("job.json") });
    unsetenv ("COLDIRON_PRESETS");
    unsetenv ("XDG_DATA_HOME");
    for (const auto& ran : { all, one })
    {
        INFO (ran.err);
        CHECK (ran.exitCode == 1);
        CHECK (ran.out.empty());
        CHECK (ran.err.find ("looked in") != std::string::npos);
        CHECK (ran.err.find (fixture.path ("empty")) != std::string::npos);
    }
    for (const auto& ran : { nowhere, check })
    {
        INFO (ran.err);
        CHECK (ran.exitCode == 1);
        CHECK (ran.err.find ("COLDIRON_PRESETS: " + fixture.path ("nowhere")) == 0);
    }
}

TEST_CASE ("one broken preset hides no other in the list")
{
    const Fixture fixture;
    std::filesystem::create_directories (fixture.folder / "own/switches");
    fixture.write ("own/switches/mine.json", "{ \"name\":");
    std::filesystem::create_symlink (fixture.folder / "nowhere", fixture.folder / "own/switches/dangling.json");
    const auto ran = run ({ "presets", "switches", "--presets", fixture.path ("own") });
    INFO (ran.err);
    CHECK (ran.exitCode == 1);
    CHECK (ran.out.find ("mine") != std::string::npos);
    CHECK (ran.out.find ("toggle-3") != std::string::npos);
    CHECK (ran.err.find ("mine.json:1: this is not JSON") != std::string::npos);
}

#if ! defined(__SANITIZE_ADDRESS__) && ! defined(__SANITIZE_THREAD__) // those take the memory for themselves
TEST_CASE ("too little memory is said in plain words")
{
    const Fixture fixture;
    std::string lists = "[]";
    for (int i = 0; i < 190000; ++i)
        lists += ",[]";
    fixture.write ("job.json", "{ \"coldiron\": \"job 1\", \"heard\": [" + lists + "] }");
    rlimit before {}, small {};
    getrlimit (RLIMIT_AS, &before);
    small = before;
    small.rlim_cur = 40u << 20;
    setrlimit (RLIMIT_AS, &small);
    const auto ran = run ({ "check", fixture.path ("job.json") });
    setrlimit (RLIMIT_AS, &before);
    INFO (ran.err);
    CHECK (ran.exitCode == 1);
    CHECK (ran.err.find ("memory") != std::string::npos);
    CHECK (ran.err.find ("bad_alloc") == std::string::npos);
}
#endif
}
