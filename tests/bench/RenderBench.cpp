#include "Stopwatch.h"

#include "audition/Renderer.h"
#include "audition/Voices.h"
#include "job/TakeFile.h"

#include <cstdio>
#include <filesystem>

#include <unistd.h>

namespace coldiron::bench
{
void benchRendering()
{
    constexpr double rate = 48000.0, seconds = 60.0;
    const auto harness = fourKnobs();
    Setting recorded, option;
    recorded.levers["selector"] = option.levers["selector"] = "bridge";
    option.knobs["bridge-tone"] = 4.0;
    const Voice before = voiceOf (harness, recorded), after = voiceOf (harness, option);
    const auto filter = designFilter (Change (before, after), *FilterDesigner::shared (rate));

    std::vector<std::vector<float>> take (1, std::vector<float> (static_cast<size_t> (rate * seconds)));
    unsigned seed = 1;
    for (auto& x : take[0])
        x = 0.2f * (static_cast<float> ((seed = seed * 1664525u + 1013904223u) >> 8) / (1u << 24) - 0.5f);

    std::printf ("\nRendering a mono take of %.0f s at 48 kHz, order %zu (file to file: at least 2,000 x real time):\n", seconds,
                 2 * filter.poles.size());
    const auto inMemory = timed (15, [&] (int) { renderTake (take, filter); });
    std::printf ("  in memory: %.0f (%.0f) x real time\n", seconds / inMemory.best, seconds / inMemory.median);

    const auto folder = std::filesystem::temp_directory_path() / ("coldiron-bench-" + std::to_string (::getpid()));
    std::filesystem::create_directories (folder);
    const auto write = [&] (const std::filesystem::path& file, const std::vector<std::vector<float>>& channels)
    {
        TakeWriter writer (file, rate, static_cast<int> (channels.size()), false);
        writer.write (channels);
        writer.finish();
    };
    write (folder / "take.wav", take);
    const auto fileToFile = timed (15, [&] (int)
    {
        const auto audio = readTake (folder / "take.wav");
        write (folder / "option.wav", renderTake (audio.channels, filter).channels);
    });
    std::filesystem::remove_all (folder);
    std::printf ("  file to file, 24-bit: %.0f (%.0f) x real time\n", seconds / fileToFile.best, seconds / fileToFile.median);
}
}
