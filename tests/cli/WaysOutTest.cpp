// Every path that is written to, and every number on the command line, tried with what they cannot be: one line, 1 or 2,
// nothing written. A new option is a new row.

#include "Attempt.h"

#include <catch2/catch.hpp>

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

namespace waysOutTest
{
using namespace coldiron::bench;
namespace fs = std::filesystem;

namespace
{
using Words = std::vector<std::string>;

/** What writes a file; the target is the last word. */
std::vector<Words> writers (const Shop& shop)
{
    shop.write ("bench.csv", "pickup,humbucker-moderate\ndcr,8.4k\n");
    return { { "response", shop.path ("job.json"), "--option", "A", "--csv" },
             { "card", shop.path ("job.json"), "--out" },
             { "fit", shop.path ("bench.csv"), "--replace", "--out" } };
}

Words renderer (const Shop& shop) { return { "render", shop.path ("job.json"), "--option", "A", "--out" }; }

int refuses (const Shop& shop, Words arguments, const std::string& target, const std::string& what, const Circumstances& around = {})
{
    arguments.push_back (target);
    const auto before = snapshot (shop.folder);
    const auto ran = attempt (arguments, around);
    INFO (arguments[0] << " " << arguments[arguments.size() - 2] << ", " << what << ", ended with " << ran.exitCode << ", signal " << ran.signal << ": " << ran.err);
    CHECK_FALSE (ran.hung());
    CHECK ((ran.exitCode == 1 || ran.exitCode == 2));
    CHECK (ran.faults().size() == 1);
    CHECK (isPlain (ran.err));
    CHECK (ran.cpuSeconds < 2.0);
    CHECK (ran.megabytes < 500.0);
    CHECK (snapshot (shop.folder) == before);
    return ran.exitCode;
}
}

TEST_CASE ("every path that is written to may be anything", "[ways]")
{
    const Shop shop;
    auto all = writers (shop);
    fs::create_directories (shop.folder / "folder");
    shop.write ("file", "in the way");
    REQUIRE (mkfifo (shop.path ("pipe").c_str(), 0666) == 0);
    fs::create_symlink ("round", shop.folder / "round");
    for (const auto& writer : all)
    {
        refuses (shop, writer, shop.path ("folder"), "a folder");
        refuses (shop, writer, shop.path ("pipe"), "a pipe nobody reads");
        refuses (shop, writer, "/dev/full", "a device that is full");
    }
    all.push_back (renderer (shop));
    refuses (shop, all.back(), "/dev/null", "a device");
    refuses (shop, all.back(), shop.path ("pipe"), "a pipe");
    refuses (shop, all.back(), shop.path ("file"), "a file");
    for (const auto& writer : all)
    {
        refuses (shop, writer, "", "no name");
        refuses (shop, writer, shop.path ("file/inside"), "in what is no folder");
        refuses (shop, writer, shop.path (std::string (300, 'n')), "a name of 300 letters");
        refuses (shop, writer, shop.path ("file/\x1b[31m\xff"), "a name of control characters");
        refuses (shop, writer, shop.path ("round"), "a link to itself");
    }
    for (const auto& writer : writers (shop))
        refuses (shop, writer, shop.path ("no/such/it"), "in no folder");
}

TEST_CASE ("a folder that may not be written to is said", "[ways]")
{
    if (const auto reason = whyNobodyCannotRun(); ! reason.empty())
    {
        WARN (reason);
        return;
    }
    const Shop shop;
    auto all = writers (shop);
    all.push_back (renderer (shop));
    fs::create_directories (shop.folder / "closed");
    REQUIRE (chmod (shop.path ("closed").c_str(), 0555) == 0);
    REQUIRE (chmod (shop.folder.c_str(), 0777) == 0);
    for (const auto& writer : all)
        refuses (shop, writer, shop.path ("closed") + (writer[0] == "render" ? "" : "/it"), "a closed folder", { .asNobody = true });
}

TEST_CASE ("a rendering of which one file cannot be written is not begun", "[ways]")
{
    const Shop shop;
    fs::create_directories (shop.folder / "out" / "C.wav");
    refuses (shop, { "render", shop.path ("job.json"), "--out" }, shop.path ("out"), "a folder in a file's place");
    fs::remove (shop.folder / "out" / "C.wav");
    REQUIRE (mkfifo (shop.path ("out/C.wav").c_str(), 0666) == 0);
    refuses (shop, { "render", shop.path ("job.json"), "--out" }, shop.path ("out"), "a pipe in a file's place");
}

TEST_CASE ("every number on the command line must be one", "[ways]")
{
    const Shop shop;
    const auto job = shop.path ("job.json");
    const Words render { "render", job, "--out", shop.path ("out"), "--after", "amplifier" }, response { "response", job, "--option", "A" };
    const std::pair<Words, Words> all[] = { { render, { "--hum", "--mains", "--facing", "--buzz", "--hiss", "--drive" } }, { response, { "--from", "--to", "--points" } } };
    for (const auto& [command, options] : all)
        for (const auto& option : options)
            for (const char* value : { "nan", "-nan", "NaN(1)", "inf", "-inf", "1e999", "-1e999", "loud", "", "1,5", "0x", "99999999999999999999" })
            {
                auto arguments = command;
                arguments.push_back (option);
                CHECK (refuses (shop, arguments, value, std::string ("the value \"") + value + "\"") == 2);
            }
}
}
