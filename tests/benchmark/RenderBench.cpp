#include "Stopwatch.h"

#include "render/FileRenderer.h"
#include "response/Responses.h"

#include <cstdio>
#include <cstdlib>
#include <filesystem>

#include <sys/resource.h>
#include <unistd.h>

namespace coldiron::support
{
namespace
{
constexpr double rate = 48000.0;

CircuitConfig bridge (double tone)
{
    Setting setting;
    setting.levers["selector"] = "bridge";
    setting.knobs["bridge-tone"] = tone;
    return { fourKnobs(), setting, {}, sixStrings() };
}

/** Noise at a moderate level, as 24-bit WAV. */
void writeTake (const std::filesystem::path& file, double seconds)
{
    TakeWriter writer (file, rate, 1, false);
    Channels block (1, std::vector<float> (static_cast<size_t> (rate)));
    unsigned seed = 1;
    for (int second = 0; second < static_cast<int> (seconds); ++second)
    {
        for (auto& x : block[0])
            x = 0.2f * (static_cast<float> ((seed = seed * 1664525u + 1013904223u) >> 8) / (1u << 24) - 0.5f);
        writer.write (block);
    }
    writer.finish();
}

RenderPlan planOf (const std::filesystem::path& take, int options, const RenderSettings& settings = {})
{
    RenderPlan plan { settings, {} };
    for (int i = 0; i < options; ++i)
        plan.pieces.push_back ({ std::string (1, static_cast<char> ('A' + i)) + ".wav", take, bridge (10.0), bridge (9.0 - i) });
    return plan;
}

void row (const char* what, double seconds, int options, const Timing& timing)
{
    std::printf ("  %-44s %5.0f (%.0f) x real time an option, %.2f (%.2f) s\n", what, seconds * options / timing.best,
                 seconds * options / timing.median, timing.best, timing.median);
}

bool has (const char* program) { return std::system ((std::string ("command -v ") + program + " > /dev/null").c_str()) == 0; }
}

void benchRendering()
{
    const auto folder = std::filesystem::temp_directory_path() / ("coldiron-bench-" + std::to_string (::getpid()));
    std::filesystem::create_directories (folder);
    const auto take = folder / "take.wav", lengthy = folder / "long.wav";
    writeTake (take, 60.0);
    writeTake (lengthy, 600.0);
    const auto render = [&] (const RenderPlan& plan) { return [&, plan] (int) { FileRenderer (plan).write (folder); }; };
    RenderSettings matched, all;
    matched.matched = true;
    all.matched = true;
    all.humDb = -20.0;
    all.hissDb = 30.0;
    all.outputChain.sound = OutputSound::amplifier;

    std::printf ("\nRendering mono takes at 48 kHz file to file, 24-bit, designs counted (bars: 2,000 x real time an option, 10 "
                 "minutes and 8 options in 2.5 s):\n");
    row ("60 s, 1 option", 60.0, 1, timed (9, render (planOf (take, 1))));
    row ("60 s, 8 options", 60.0, 8, timed (7, render (planOf (take, 8))));
    row ("60 s, 8 options, matched", 60.0, 8, timed (3, render (planOf (take, 8, matched))));
    row ("60 s, 8 options, matched, noises, amplifier", 60.0, 8, timed (3, render (planOf (take, 8, all))));
    row ("10 minutes, 8 options", 600.0, 8, timed (3, render (planOf (lengthy, 8))));
    if (has ("sox"))
        row ("sox, five biquads, 60 s", 60.0, 1,
             timed (
                 5,
                 [&] (int)
                 {
                     const std::string words =
                         "sox " + take.string() + " -b 24 " + (folder / "sox.wav").string()
                         + " gain -6 equalizer 120 1q 3 equalizer 500 1q -3 equalizer 1500 1q 2 equalizer 3500 1q -4 highpass 30";
                     if (std::system (words.c_str()) != 0)
                         std::printf ("  sox failed\n");
                 }));
    std::filesystem::remove_all (folder);
    rusage used {};
    getrusage (RUSAGE_SELF, &used);
    std::printf ("  resident at most, of this whole program: %ld KiB\n", used.ru_maxrss);
}
}
