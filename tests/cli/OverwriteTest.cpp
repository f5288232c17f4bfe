// No command writes over the job, a take of it or the impulse response, by whatever name it is called.

#include "Attempt.h"

#include <catch2/catch.hpp>
#include <sndfile.h>

namespace overwriteTest
{
using namespace coldiron::support;
namespace fs = std::filesystem;

namespace
{
/** A job whose takes are called as renderings are, with a response of its own. */
void prepare (const Fixture& fixture)
{
    for (const char* name : { "now.wav", "A.wav" })
        fs::copy_file (fixture.path ("take.wav"), fixture.path (name));
    fs::rename (fixture.path ("take.wav"), fixture.path ("impulse.wav"));
    fixture.write ("job.json", jobText (standardOptions(), "{ \"file\": \"now.wav\" }, { \"file\": \"A.wav\" }",
                                        ", \"after_the_jack\": { \"sound\": \"file\", \"file\": \"impulse.wav\" }"));
}

void refuses (const Fixture& fixture, const std::vector<std::string>& arguments, const std::string& word)
{
    std::string line;
    for (const auto& argument : arguments)
        line += argument + " ";
    const auto before = snapshot (fixture.folder);
    const auto ran = attempt (arguments);
    INFO (line << "said " << ran.err);
    CHECK (ran.exitCode == 1);
    CHECK (ran.diagnostics().size() == 1);
    CHECK (ran.err.find (word) != std::string::npos);
    CHECK (snapshot (fixture.folder) == before);
}
}

TEST_CASE ("no rendering takes the place of a take, of the job or of the impulse response", "[overwrite]")
{
    const Fixture fixture;
    prepare (fixture);
    const auto job = fixture.path ("job.json");
    refuses (fixture, { "render", job, "--out", fixture.folder.string() }, "a take of the job");
    refuses (fixture, { "render", job, "--out", fixture.folder.string(), "--option", "A" }, "a take of the job");

    fs::create_directories (fixture.folder / "out");
    fs::create_symlink (fixture.path ("job.json"), fixture.folder / "out" / "B.wav");
    refuses (fixture, { "render", job, "--out", fixture.path ("out"), "--option", "A", "--option", "B" },
             "B.wav: is the job itself");
    fs::remove (fixture.folder / "out" / "B.wav");
    fs::create_hard_link (fixture.path ("A.wav"), fixture.folder / "out" / "B.wav");
    refuses (fixture, { "render", job, "--out", fixture.path ("out"), "--option", "B" }, "B.wav: is a take of the job");
    fs::remove (fixture.folder / "out" / "B.wav");
    fs::copy_file (fixture.path ("impulse.wav"), fixture.folder / "out" / "B.wav");
    refuses (fixture, { "render", job, "--out", fixture.path ("out"), "--option", "B", "--after", fixture.path ("out/B.wav") },
             "B.wav: is the impulse response");
    fs::create_directory_symlink (fixture.folder, fixture.folder / "out" / "again");
    refuses (fixture, { "render", job, "--out", fixture.path ("out/again") }, "a take of the job");
    CHECK (attempt ({ "render", job, "--out", fixture.path ("fine"), "--option", "A" }).exitCode == 0);
    CHECK (attempt ({ "render", job, "--out", fixture.path ("fine"), "--option", "A" }).exitCode == 0); // a rendering may
}

TEST_CASE ("no curve and no card takes the place of anything unasked, and of what the job reads not even then", "[overwrite]")
{
    const Fixture fixture;
    prepare (fixture);
    const auto job = fixture.path ("job.json");
    fs::create_symlink ("now.wav", fixture.folder / "link.csv");
    fs::create_hard_link (fixture.path ("impulse.wav"), fixture.path ("hard.csv"));
    fixture.write ("old.csv", "old");
    for (const auto& command :
         { std::vector<std::string> { "response", job, "--option", "A", "--csv" }, { "card", job, "--out" } })
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
                refuses (fixture, to (fixture.path (name), replace), "left as it is");
        refuses (fixture, to (fixture.path ("old.csv"), false), "--replace");
        CHECK (attempt (to (fixture.path ("old.csv"), true)).exitCode == 0);
        CHECK (attempt (to ("/dev/null", false)).exitCode == 0);
        CHECK (fs::is_character_file ("/dev/null"));
        CHECK (attempt (to ("/dev/stdout", false)).out.size() > 100);
        fs::remove (fixture.path ("new.csv"));
        CHECK (attempt (to (fixture.path ("new.csv"), false)).exitCode == 0);
    }

    // A take that is not there yet keeps its name.
    fixture.write ("job.json", jobText (standardOptions(), "{ \"file\": \"later.wav\" }"));
    refuses (fixture, { "response", job, "--option", "A", "--csv", fixture.path ("later.wav") }, "a take of the job");
    fs::create_symlink ("later.wav", fixture.folder / "later.csv");
    refuses (fixture, { "response", job, "--option", "A", "--csv", fixture.path ("later.csv") }, "a take of the job");
}

TEST_CASE ("a fit takes the place of an earlier fit alone", "[overwrite]")
{
    const Fixture fixture;
    fixture.write ("bench.csv", "pickup,humbucker-moderate\ndcr,8.4k\n");
    const auto fitTo = [&] (const std::string& target) {
        return std::vector<std::string> { "fit", fixture.path ("bench.csv"), "--replace", "--out", target };
    };
    refuses (fixture, fitTo (fixture.path ("bench.csv")), "the file of readings");
    refuses (fixture, fitTo (fixture.path ("take.wav")), "no pickup preset");
    refuses (fixture, fitTo (fixture.path ("job.json")), "no pickup preset");
    CHECK (attempt (fitTo (fixture.path ("mine.json"))).exitCode == 0);
    CHECK (attempt (fitTo (fixture.path ("mine.json"))).exitCode == 0);
}
}
