// No command writes over the job, a take of it or the impulse response, by whatever name it is called.

#include "Attempt.h"

#include <catch2/catch.hpp>
#include <sndfile.h>

namespace overwriteTest
{
using namespace coldiron::bench;
namespace fs = std::filesystem;

namespace
{
/** A job whose takes are called as renderings are, with a response of its own. */
void prepare (const Shop& shop)
{
    for (const char* name : { "now.wav", "A.wav" })
        fs::copy_file (shop.path ("take.wav"), shop.path (name));
    fs::rename (shop.path ("take.wav"), shop.path ("impulse.wav"));
    shop.write ("job.json", jobText (standardOptions(), "{ \"file\": \"now.wav\" }, { \"file\": \"A.wav\" }",
                                     ", \"after_the_jack\": { \"sound\": \"file\", \"file\": \"impulse.wav\" }"));
}

void refuses (const Shop& shop, const std::vector<std::string>& arguments, const std::string& word)
{
    std::string line;
    for (const auto& argument : arguments)
        line += argument + " ";
    const auto before = snapshot (shop.folder);
    const auto ran = attempt (arguments);
    INFO (line << "said " << ran.err);
    CHECK (ran.exitCode == 1);
    CHECK (ran.faults().size() == 1);
    CHECK (ran.err.find (word) != std::string::npos);
    CHECK (snapshot (shop.folder) == before);
}
}

TEST_CASE ("no rendering takes the place of a take, of the job or of the impulse response", "[overwrite]")
{
    const Shop shop;
    prepare (shop);
    const auto job = shop.path ("job.json");
    refuses (shop, { "render", job, "--out", shop.folder.string() }, "a take of the job");
    refuses (shop, { "render", job, "--out", shop.folder.string(), "--option", "A" }, "a take of the job");

    fs::create_directories (shop.folder / "out");
    fs::create_symlink (shop.path ("job.json"), shop.folder / "out" / "B.wav");
    refuses (shop, { "render", job, "--out", shop.path ("out"), "--option", "A", "--option", "B" }, "B.wav: is the job itself");
    fs::remove (shop.folder / "out" / "B.wav");
    fs::create_hard_link (shop.path ("A.wav"), shop.folder / "out" / "B.wav");
    refuses (shop, { "render", job, "--out", shop.path ("out"), "--option", "B" }, "B.wav: is a take of the job");
    fs::remove (shop.folder / "out" / "B.wav");
    fs::copy_file (shop.path ("impulse.wav"), shop.folder / "out" / "B.wav");
    refuses (shop, { "render", job, "--out", shop.path ("out"), "--option", "B", "--after", shop.path ("out/B.wav") }, "B.wav: is the impulse response");
    fs::create_directory_symlink (shop.folder, shop.folder / "out" / "again");
    refuses (shop, { "render", job, "--out", shop.path ("out/again") }, "a take of the job");
    CHECK (attempt ({ "render", job, "--out", shop.path ("fine"), "--option", "A" }).exitCode == 0);
    CHECK (attempt ({ "render", job, "--out", shop.path ("fine"), "--option", "A" }).exitCode == 0); // a rendering may
}

TEST_CASE ("no curve and no card takes the place of anything unasked, and of what the job reads not even then", "[overwrite]")
{
    const Shop shop;
    prepare (shop);
    const auto job = shop.path ("job.json");
    fs::create_symlink ("now.wav", shop.folder / "link.csv");
    fs::create_hard_link (shop.path ("impulse.wav"), shop.path ("hard.csv"));
    shop.write ("old.csv", "old");
    for (const auto& command : { std::vector<std::string> { "response", job, "--option", "A", "--csv" }, { "card", job, "--out" } })
    {
        const auto to = [&] (const std::string& target, bool replace)
        {
            auto arguments = command;
            arguments.push_back (target);
            if (replace)
                arguments.push_back ("--replace");
            return arguments;
        };
        for (const char* name : { "job.json", "now.wav", "A.wav", "impulse.wav", "link.csv", "hard.csv" })
            for (const bool replace : { false, true })
                refuses (shop, to (shop.path (name), replace), "left as it is");
        refuses (shop, to (shop.path ("old.csv"), false), "--replace");
        CHECK (attempt (to (shop.path ("old.csv"), true)).exitCode == 0);
        CHECK (attempt (to ("/dev/null", false)).exitCode == 0);
        CHECK (fs::is_character_file ("/dev/null"));
        CHECK (attempt (to ("/dev/stdout", false)).out.size() > 100);
        fs::remove (shop.path ("new.csv"));
        CHECK (attempt (to (shop.path ("new.csv"), false)).exitCode == 0);
    }

    // A take that is not there yet keeps its name.
    shop.write ("job.json", jobText (standardOptions(), "{ \"file\": \"later.wav\" }"));
    refuses (shop, { "response", job, "--option", "A", "--csv", shop.path ("later.wav") }, "a take of the job");
    fs::create_symlink ("later.wav", shop.folder / "later.csv");
    refuses (shop, { "response", job, "--option", "A", "--csv", shop.path ("later.csv") }, "a take of the job");
}

TEST_CASE ("a fit takes the place of an earlier fit alone", "[overwrite]")
{
    const Shop shop;
    shop.write ("bench.csv", "pickup,humbucker-moderate\ndcr,8.4k\n");
    const auto fitTo = [&] (const std::string& target) { return std::vector<std::string> { "fit", shop.path ("bench.csv"), "--replace", "--out", target }; };
    refuses (shop, fitTo (shop.path ("bench.csv")), "the file of readings");
    refuses (shop, fitTo (shop.path ("take.wav")), "no pickup preset");
    refuses (shop, fitTo (shop.path ("job.json")), "no pickup preset");
    CHECK (attempt (fitTo (shop.path ("mine.json"))).exitCode == 0);
    CHECK (attempt (fitTo (shop.path ("mine.json"))).exitCode == 0);
}
}
