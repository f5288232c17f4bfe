// Makes the demo's take, and what each of its options truly is.
//   demo_take TAKE.wav                     the take: strings, then the guitar as it came in, by ngspice
//   demo_take --hum QUIET.wav NOISY.wav    how far what was added lies below the playing [dB]
//   demo_take --truth JOB RENDERED OUT     each option of the job by the same route, and how near the renderings are

#include "job/Job.h"
#include "support/Fft.h"
#include "support/PluckedStringPhrases.h"
#include "support/Truth.h"
#include "support/TruthWav.h"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <filesystem>
#include <stdexcept>

using namespace coldiron;
using namespace coldiron::support;

namespace
{
constexpr double rate = 48000.0;
constexpr double takePeak = 0.35;
constexpr const char* guitarName = "two-humbuckers-four-knobs";
const Setting asPlayed { {}, { { "selector", "bridge" } } };

[[noreturn]] void giveUp (const Diagnostics& diagnostics)
{
    std::string text = "the demo's files do not read:";
    for (const auto& fault : diagnostics)
        text += "\n" + fault.text();
    throw std::runtime_error (text);
}

double peakOf (const std::vector<double>& signal)
{
    double peak = 0.0;
    for (double x : signal)
        peak = std::max (peak, std::abs (x));
    return peak;
}

std::vector<double> played (const std::vector<GuitarString>& strings, const Harness& harness, const Setting& setting,
                            const Load& load)
{
    const auto instrument = pluckedGuitar (strings.front().scaleMm);
    return throughHarness (harness, setting, load, harnessEmfs (harness, instrument, demoSong(), rate), rate);
}

/** The take at its true level, before it is brought to a recording level. */
std::vector<double> take()
{
    Diagnostics diagnostics;
    const auto guitar = readGuitar (guitarName, PresetFolders::standard(), diagnostics);
    if (! guitar)
        giveUp (diagnostics);
    return played (guitar->strings, guitar->harness, asPlayed, Load {});
}

void scale (std::vector<double>& signal, double gain)
{
    for (auto& x : signal)
        x *= gain;
}

std::filesystem::path renderingOf (const std::filesystem::path& folder, const std::string& letter)
{
    for (const auto& entry : std::filesystem::directory_iterator (folder))
        if (entry.path().extension() == ".wav" && entry.path().stem().string().rfind (letter, 0) == 0)
            return entry.path();
    throw std::runtime_error (folder.string() + " holds no rendering of option " + letter);
}

double humBelow (const std::filesystem::path& quiet, const std::filesystem::path& noisy)
{
    const auto playing = readWav (quiet).channels.at (0), both = readWav (noisy).channels.at (0);
    if (playing.size() != both.size())
        throw std::runtime_error (noisy.string() + " is not as long as " + quiet.string());
    double sound = 0.0, hum = 0.0;
    for (size_t i = 0; i < both.size(); ++i)
    {
        sound += playing[i] * playing[i];
        hum += (both[i] - playing[i]) * (both[i] - playing[i]);
    }
    return 10.0 * std::log10 (sound / std::max (hum, 1e-30));
}

/** Third octaves 80 Hz to 10 kHz where the truth is heard, rms of rendering less truth [dB]. */
double thirdOctaveRms (const std::vector<double>& rendering, const std::vector<double>& truth)
{
    const auto a = thirdOctaves (rendering, rate, 80.0, 10000.0), b = thirdOctaves (truth, rate, 80.0, 10000.0);
    double strongest = 0.0, sum = 0.0;
    int count = 0;
    for (const auto& band : b)
        strongest = std::max (strongest, band.power);
    for (size_t i = 0; i < b.size(); ++i)
        if (b[i].power > 1e-5 * strongest)
        {
            const double d = 10.0 * std::log10 (a[i].power / b[i].power);
            sum += d * d;
            ++count;
        }
    return std::sqrt (sum / count);
}

void writeTruths (const std::filesystem::path& jobFile, const std::filesystem::path& rendered, const std::filesystem::path& out)
{
    Diagnostics diagnostics;
    const auto job = readJob (jobFile, PresetFolders::standard(), diagnostics);
    if (! job)
        giveUp (diagnostics);
    const double gain = takePeak / peakOf (take());
    std::filesystem::create_directories (out);
    for (const auto& option : job->options)
    {
        const CircuitConfig config = job->optionConfig (option);
        auto truth = played (option.guitar.strings, config.harness, config.setting, config.load);
        scale (truth, gain);
        writeFloatWav (out / (option.letter + ".wav"), { rate, { truth } });
        const auto rendering = readWav (renderingOf (rendered, option.letter)).channels.at (0);
        if (peakOf (truth) < 2e-4 * takePeak)
            std::printf ("  %s  silent; the rendering peaks at %.0f dBFS\n", option.letter.c_str(),
                         20.0 * std::log10 (peakOf (rendering) + 1e-15));
        else
            std::printf ("  %s  third octaves %4.1f dB rms, loudness %+5.1f LU from the truth  %s\n", option.letter.c_str(),
                         thirdOctaveRms (rendering, truth), loudnessLufs (rendering, rate) - loudnessLufs (truth, rate),
                         option.name.c_str());
    }
}
}

int main (int argc, char** argv)
{
    const std::vector<std::string> words (argv + 1, argv + argc);
    try
    {
        if (words.size() == 1 && words[0].rfind ("--", 0) != 0)
        {
            auto sound = take();
            scale (sound, takePeak / peakOf (sound));
            writeFloatWav (words[0], { rate, { sound } });
            return 0;
        }
        if (words.size() == 4 && words[0] == "--truth")
        {
            writeTruths (words[1], words[2], words[3]);
            return 0;
        }
        if (words.size() == 3 && words[0] == "--hum")
        {
            const double below = humBelow (words[1], words[2]);
            std::printf (below > 90.0 ? "over 90\n" : "%.0f\n", below);
            return 0;
        }
    }
    catch (const std::exception& fault)
    {
        std::fprintf (stderr, "demo_take: %s\n", fault.what());
        return 1;
    }
    std::fprintf (stderr, "usage: demo_take TAKE.wav | demo_take --hum QUIET NOISY | demo_take --truth JOB RENDERED OUT\n");
    return 2;
}
