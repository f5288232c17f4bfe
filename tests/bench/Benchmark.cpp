// Times and ratios of one run on this machine: build/bench_coldiron. Nothing is asserted.

#include "support/Ngspice.h"
#include "support/OracleNetlist.h"

#include "audition/Change.h"
#include "audition/Renderer.h"
#include "filter/FilterRunner.h"
#include "job/Job.h"
#include "job/TakeFile.h"

#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <functional>

using namespace coldiron;

namespace
{
/** The best of several rounds, in seconds a call: the least disturbed one. */
double secondsFor (int calls, const std::function<void()>& work)
{
    double best = 1e300;
    for (int round = 0; round < 7; ++round)
    {
        const auto start = std::chrono::steady_clock::now();
        for (int i = 0; i < calls; ++i)
            work();
        best = std::min (best, std::chrono::duration<double> (std::chrono::steady_clock::now() - start).count() / calls);
    }
    return best;
}

const char* const jobText = R"({ "coldiron": "job 1", "title": "Bench", "guitar": "two-humbuckers-four-knobs",
  "options": { "A": { "name": "Bridge in parallel", "setting": { "selector": "bridge", "bridge-volume-pull": "up" },
    "rewires": [ { "use": "series-parallel", "pickup": "bridge", "pot": "bridge-volume" } ] } } })";
}

int main()
{
    Faults faults;
    const auto job = readJobText (jobText, ".", PresetFolders { { std::filesystem::path (COLDIRON_SOURCE) / "presets" } }, faults);
    if (! job)
    {
        for (const auto& fault : faults)
            std::fprintf (stderr, "%s\n", fault.text().c_str());
        return 1;
    }
    auto recorded = job->recordedSide (-1);
    recorded.setting.levers["selector"] = "bridge";
    const auto option = job->optionSide (job->options.front());
    const auto designer = FilterDesigner::shared (48000.0);

    // From a knob to coefficients: circuit, responses on the grid, minimum phase, fit.
    const auto recordedVoice = recorded.voice();
    double knob = 5.0;
    ModalFilter filter;
    const auto knobToFilter = [&]
    {
        auto moved = option;
        moved.setting.knobs["bridge-volume"] = knob = knob == 5.0 ? 6.0 : 5.0;
        const auto voice = moved.voice();
        filter = designFilter (Change (recordedVoice, voice), *designer);
    };
    const double design = secondsFor (20, knobToFilter);
    const auto optionVoice = option.voice();
    const Change change (recordedVoice, optionVoice);
    const double circuit = secondsFor (50, [&] { option.voice(); });
    const auto gains = change.gains (designer->gridHz());
    const double fit = secondsFor (20, [&] { designer->design (gains, false); });
    std::printf ("knob to coefficients, two humbuckers      %8.3f ms  (circuit %.3f, fit %.3f, %zu poles or pairs)\n", 1e3 * design, 1e3 * circuit,
                 1e3 * fit, filter.poles.size());

    // One option over samples, stereo.
    constexpr int frames = 48000;
    std::vector<float> left (frames), right (frames);
    for (int n = 0; n < frames; ++n)
        left[static_cast<size_t> (n)] = right[static_cast<size_t> (n)] = static_cast<float> ((n * 7919) % 2001 - 1000) / 1000.0f;
    FilterRunner runner;
    runner.use (filter);
    std::vector<float> out (frames);
    const double stereo = secondsFor (1, [&]
    {
        for (int at = 0; at < frames; at += 256)
        {
            const int block = std::min (256, frames - at);
            runner.process (0, left.data() + at, out.data() + at, block);
            runner.process (1, right.data() + at, out.data() + at, block);
        }
    });
    std::printf ("running one option, stereo                %8.2f ns a frame\n", 1e9 * stereo / frames);

    // File to file, mono, 120 s.
    const auto folder = std::filesystem::temp_directory_path() / "coldiron-bench";
    std::filesystem::create_directories (folder);
    const std::vector<std::vector<float>> minute (1, std::vector<float> (48000 * 120, 0.1f));
    {
        TakeWriter writer (folder / "take.wav", 48000.0, 1, false);
        writer.write (minute);
        writer.finish();
    }
    const double file = secondsFor (1, [&]
    {
        const auto take = readTake (folder / "take.wav");
        const auto result = renderTake (take.channels, filter);
        TakeWriter writer (folder / "option.wav", 48000.0, 1, result.overFullScale());
        writer.write (result.channels);
        writer.finish();
    });
    std::printf ("rendering, file to file, 48 kHz mono      %8.0f x real time\n", 120.0 / file);

    // The same circuit at 400 frequencies, ours and the simulator's.
    const double ours = secondsFor (20, [&]
    {
        const auto voice = option.voice();
        for (double hz : designer->gridHz())
            voice.plain (hz);
    });
    const bench::OracleNetlist oracle (option.harness, option.setting, option.load);
    const double inProcess = secondsFor (5, [&] { bench::Ngspice::acDecades (oracle.lines, { "tip" }, 110, 10.0, 40e3); });
    const auto netlist = folder / "circuit.cir";
    {
        std::ofstream text (netlist);
        text << "bench\n";
        for (const auto& line : oracle.lines)
            text << line << "\n";
        text << ".ac dec 110 10 40k\n.print ac v(tip)\n.end\n";
    }
    std::printf ("one circuit, about 400 frequencies        %8.3f ms ours, %.3f ms ngspice in process: %.1f times\n", 1e3 * ours, 1e3 * inProcess,
                 inProcess / ours);
    const auto command = "ngspice -b '" + netlist.string() + "' > /dev/null 2>&1";
    if (std::system (command.c_str()) == 0)
    {
        const double started = secondsFor (1, [&] { (void) ! std::system (command.c_str()); });
        std::printf ("                                          %8.3f ms ngspice started anew: %.0f times\n", 1e3 * started, started / ours);
    }
    std::filesystem::remove_all (folder);
    return 0;
}
