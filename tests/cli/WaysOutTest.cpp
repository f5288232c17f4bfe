// Every path that is written to, and every number on the command line, tried with what they cannot be: one line, 1 or 2,
// nothing written. A new option is a new row.

#include "Attempt.h"

#include <catch2/catch.hpp>

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

namespace waysOutTest
{
using namespace coldiron::support;
namespace fs = std::filesystem;

namespace
{
using Words = std::vector<std::string>;

/** What writes a file; the target is the last word. */
std::vector<Words> writers (const Fixture& fixture)
{
    fixture.write ("bench.csv", "pickup,humbucker-moderate\ndcr,8.4k\n");
    return { { "response", fixture.path ("job.json"), "--option", "A", "--csv" },
             { "card", fixture.path ("job.json"), "--out" },
             { "fit", fixture.path ("bench.csv"), "--replace", "--out" } };
}

Words renderer (const Fixture& fixture) { return { "render", fixture.path ("job.json"), "--option", "A", "--out" }; }

int refuses (const Fixture& fixture, Words arguments, const std::string& target, const std::string& what,
             const Circumstances& around = {})
{
    arguments.push_back (target);
    const auto before = snapshot (fixture.folder);
    const auto ran = attempt (arguments, around);
    INFO (arguments[0] << " " << arguments[arguments.size() - 2] << ", " << what << ", ended with " << ran.exitCode << ", signal "
                       << ran.signal << ": " << ran.err);
    CHECK_FALSE (ran.hung());
    CHECK ((ran.exitCode == 1 || ran.exitCode == 2));
    CHECK (ran.diagnostics().size() == 1);
    CHECK (isPlain (ran.err));
    CHECK (ran.cpuSeconds < 2.0);
    CHECK (ran.megabytes < 500.0);
    CHECK (snapshot (fixture.folder) == before);
    return ran.exitCode;
}
}

TEST_CASE ("every path that is written to may be anything", "[ways]")
{
    const Fixture fixture;
    auto all = writers (fixture);
    fs::create_directories (fixture.folder / "folder");
    fixture.write ("file", "in the way");
    REQUIRE (mkfifo (fixture.path ("pipe").c_str(), 0666) == 0);
    fs::create_symlink ("round", fixture.folder / "round");
    for (const auto& writer : all)
    {
        refuses (fixture, writer, fixture.path ("folder"), "a folder");
        refuses (fixture, writer, fixture.path ("pipe"), "a pipe nobody reads");
        refuses (fixture, writer, "/dev/full", "a device that is full");
    }
    all.push_back (renderer (fixture));
    refuses (fixture, all.back(), "/dev/null", "a device");
    refuses (fixture, all.back(), fixture.path ("pipe"), "a pipe");
    refuses (fixture, all.back(), fixture.path ("file"), "a file");
    for (const auto& writer : all)
    {
        refuses (fixture, writer, "", "no name");
        refuses (fixture, writer, fixture.path ("file/inside"), "in what is no folder");
        refuses (fixture, writer, fixture.path (std::string (300, 'n')), "a name of 300 letters");
        refuses (fixture, writer, fixture.path ("file/\x1b[31m\xff"), "a name of control characters");
        refuses (fixture, writer, fixture.path ("round"), "a link to itself");
    }
    for (const auto& writer : writers (fixture))
        refuses (fixture, writer, fixture.path ("no/such/it"), "in no folder");
}

TEST_CASE ("a folder that may not be written to is said", "[ways]")
{
    if (const auto reason = whyNobodyCannotRun(); ! reason.empty())
    {
        WARN (reason);
        return;
    }
    const Fixture fixture;
    auto all = writers (fixture);
    all.push_back (renderer (fixture));
    fs::create_directories (fixture.folder / "closed");
    REQUIRE (chmod (fixture.path ("closed").c_str(), 0555) == 0);
    REQUIRE (chmod (fixture.folder.c_str(), 0777) == 0);
    for (const auto& writer : all)
        refuses (fixture, writer, fixture.path ("closed") + (writer[0] == "render" ? "" : "/it"), "a closed folder",
                 { .asNobody = true });
}

TEST_CASE ("a rendering of which one file cannot be written is not begun", "[ways]")
{
    const Fixture fixture;
    fs::create_directories (fixture.folder / "out" / "C.wav");
    refuses (fixture, { "render", fixture.path ("job.json"), "--out" }, fixture.path ("out"), "a folder in a file's place");
    fs::remove (fixture.folder / "out" / "C.wav");
    REQUIRE (mkfifo (fixture.path ("out/C.wav").c_str(), 0666) == 0);
    refuses (fixture, { "render", fixture.path ("job.json"), "--out" }, fixture.path ("out"), "a pipe in a file's place");
}

TEST_CASE ("every number on the command line must be one", "[ways]")
{
    const Fixture fixture;
    const auto job = fixture.path ("job.json");
    const Words render { "render", job, "--out", fixture.path ("out"), "--after", "amplifier" },
        response { "response", job, "--option", "A" };
    const std::pair<Words, Words> all[] = { { render, { "--hum", "--mains", "--facing", "--buzz", "--hiss", "--drive" } },
                                            { response, { "--from", "--to", "--points" } } };
    for (const auto& [command, options] : all)
        for (const auto& option : options)
            for (const char* value :
                 { "nan", "-nan", "NaN(1)", "inf", "-inf", "1e999", "-1e999", "loud", "", "1,5", "0x", "99999999999999999999" })
            {
                auto arguments = command;
                arguments.push_back (option);
                CHECK (refuses (fixture, arguments, value, std::string ("the value \"") + value + "\"") == 2);
            }
}
}
