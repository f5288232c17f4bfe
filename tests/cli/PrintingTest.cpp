// What is printed arrives or is missed aloud, and what ends the command early leaves nothing behind.

#include "Attempt.h"

#include <catch2/catch.hpp>
#include <sndfile.h>

#include <csignal>

#include <fcntl.h>
#include <sys/wait.h>
#include <unistd.h>

namespace printingTest
{
using namespace coldiron::support;
namespace fs = std::filesystem;

namespace
{
/** Every command that prints, as it is usually asked. */
std::vector<std::vector<std::string>> printers (const Fixture& fixture)
{
    const auto job = fixture.path ("job.json");
    fixture.write ("bench.csv", "pickup,humbucker-moderate\ndcr,8.4k\n");
    return { { "check", job },
             { "response", job, "--option", "A" },
             { "response", job, "--option", "A", "--relative", "--csv", "-" },
             { "render", job, "--out", fixture.path ("out"), "--option", "A" },
             { "compare", job },
             { "compare", job, "--json" },
             { "ohms", job },
             { "ohms", job, "--json" },
             { "spice", job, "--option", "A" },
             { "presets" },
             { "presets", "tapers" },
             { "presets", "guitars", "two-humbuckers-four-knobs" },
             { "presets", "guitars", "--json" },
             { "fit", fixture.path ("bench.csv"), "--out", "-" },
             { "fit", fixture.path ("bench.csv"), "--out", fixture.path ("mine.json"), "--replace" },
             { "card", job, "--out", "-" },
             { "--help" },
             { "render", "--help" },
             { "--version" } };
}

std::string wordsOf (const std::vector<std::string>& arguments)
{
    std::string line;
    for (const auto& argument : arguments)
        line += argument + " ";
    return line;
}

bool holdsTemporary (const fs::path& folder)
{
    std::error_code ignored;
    for (const auto& entry : fs::directory_iterator (folder, ignored))
        if (entry.path().extension() == ".part")
            return true;
    return false;
}
}

TEST_CASE ("a full disk on standard output is said by every command that prints", "[printing]")
{
    const Fixture fixture;
    for (const auto& arguments : printers (fixture))
    {
        INFO (wordsOf (arguments));
        REQUIRE (attempt (arguments).exitCode == 0);
        const auto ran = attempt (arguments, { .standardOutput = "/dev/full" });
        INFO (ran.err);
        CHECK (ran.exitCode == 1);
        CHECK (ran.diagnostics().size() == 1);
        CHECK (ran.err.find ("standard output") != std::string::npos);
    }
}

TEST_CASE ("a reader that has gone ends a command as it ends others, quietly", "[printing]")
{
    const Fixture fixture;
    int ends[2];
    REQUIRE (pipe2 (ends, O_CLOEXEC) == 0);
    close (ends[0]);
    for (const auto& arguments : printers (fixture))
    {
        INFO (wordsOf (arguments));
        const auto ran = attempt (arguments, { .descriptor = ends[1] });
        INFO (ran.err << " " << ran.exitCode);
        CHECK (ran.signal == SIGPIPE);
        CHECK (ran.diagnostics().empty());
    }
    close (ends[1]);
    CHECK (fixture.files ("out") == std::vector<std::string> { "A.wav" }); // whole, whoever listens
    CHECK (fs::exists (fixture.path ("mine.json")));
}

TEST_CASE ("a disk that is full is said, and nothing half is left", "[printing]")
{
    const Fixture fixture;
    const auto job = fixture.path ("job.json");
    const auto before = fixture.files();
    for (const auto& arguments : { std::vector<std::string> { "response", job, "--option", "A", "--csv", fixture.path ("a.csv") },
                                   { "render", job, "--out", fixture.path ("out"), "--option", "A" },
                                   { "card", job, "--out", fixture.path ("card.html") } })
    {
        const auto ran = attempt (arguments, { .mostFileBytes = 2000 });
        INFO (wordsOf (arguments) << ran.err << ran.signal);
        CHECK (ran.exitCode == 1);
        CHECK (ran.diagnostics().size() == 1);
        CHECK (fixture.files ("out").empty());
    }
    fs::remove (fixture.folder / "out");
    CHECK (fixture.files() == before);
}

TEST_CASE ("what interrupts a rendering leaves nothing behind, and is the exit status", "[printing]")
{
    for (const int signal : { SIGINT, SIGTERM, SIGHUP })
    {
        const Fixture fixture;
        writeAudio (fixture.path ("take.wav"), std::vector<float> (60 * 192000, 0.1f), 1, 192000,
                    SF_FORMAT_WAV | SF_FORMAT_PCM_16);
        Attempt ran;
        for (int tries = 0; tries < 20 && ran.signal == 0; ++tries) // it may be done before we have seen it at work
        {
            Running running ({ "render", fixture.path ("job.json"), "--out", fixture.path ("out") });
            siginfo_t ended {};
            while (! holdsTemporary (fixture.folder / "out") && ended.si_pid == 0)
                waitid (P_PID, static_cast<id_t> (running.id()), &ended, WEXITED | WNOHANG | WNOWAIT);
            kill (running.id(), signal);
            ran = running.finish();
        }
        INFO ("signal " << signal << ": " << ran.err);
        CHECK (ran.signal == signal);
        CHECK_FALSE (holdsTemporary (fixture.folder / "out"));
    }
}
}
