// A real recording: sampled strings of an electric guitar (Debian's fluid-soundfont-gm, played by fluidsynth), through
// the command, against the same take through the same filter in the frequency domain.

#include "Riff.h"
#include "TakeFolder.h"

#include "response/TransferFunction.h"
#include "support/Fft.h"
#include "support/TruthWav.h"

#include <cmath>

namespace recordingTest
{
using namespace coldiron;
using namespace coldiron::support;

namespace
{
constexpr const char* soundfont = "/usr/share/sounds/sf2/FluidR3_GM.sf2";
constexpr int cleanGuitar = 27; // General MIDI program 28, counted from 0

const std::string recordingJob = R"({ "coldiron": "job 1", "title": "A sampled guitar", "guitar": "two-humbuckers-four-knobs",
  "takes": [ { "file": "riff.wav", "setting": { "selector": "bridge" } } ],
  "options": {
    "A": { "name": "parallel", "rewires": [ { "use": "series-parallel", "pickup": "bridge", "pot": "bridge-volume" } ],
           "setting": { "bridge-volume-pull": "up" } },
    "B": { "name": "split", "rewires": [ { "use": "split-open", "pickup": "bridge", "pot": "bridge-volume" } ],
           "setting": { "bridge-volume-pull": "up" } },
    "C": { "name": "neck", "setting": { "selector": "neck" } },
    "D": { "name": "both", "setting": { "selector": "both" } },
    "E": { "name": "out of phase", "rewires": [ { "use": "phase", "pickup": "bridge" } ], "setting": { "selector": "both" } },
    "F": { "name": "volume 5, tone 5", "setting": { "bridge-volume": 5, "bridge-tone": 5 } },
    "G": { "name": "tone on output", "rewires": [ { "use": "tone-on-output", "tone": "bridge-tone.1", "volume": "bridge-volume" } ],
           "setting": { "bridge-volume": 5, "bridge-tone": 5 } },
    "H": { "name": "both in series", "rewires": [ { "use": "both-in-series", "first": "neck", "second": "bridge", "pot": "neck-tone" } ],
           "setting": { "selector": "both", "neck-tone-pull": "up" } } } })";

bool isThere (const char* program) { return run (std::string ("command -v ") + program + " > /dev/null 2>&1") == 0; }

double sumOfSquares (const std::vector<double>& x)
{
    double sum = 0.0;
    for (double v : x)
        sum += v * v;
    return sum;
}

/** Of the take's spectrum times the option's gain: what level the option must have. */
double predictedPower (const std::vector<double>& take, double rate, const TransferFunction& transfer)
{
    const auto bins = spectrumOf (take, powerOfTwoAtLeast (take.size()));
    std::vector<double> hz;
    for (size_t i = 1; i < bins.size(); ++i)
        hz.push_back (static_cast<double> (i) * rate / (2.0 * static_cast<double> (bins.size() - 1)));
    // Gains on a fine logarithmic ladder: the curve is smooth, and a take has a million bins.
    std::vector<double> ladder;
    for (double f = 5.0; f < 0.5 * rate; f *= std::exp2 (1.0 / 96.0))
        ladder.push_back (f);
    ladder.push_back (0.5 * rate);
    const auto gains = transfer.gains (ladder);
    double power = 0.0;
    size_t step = 0;
    for (size_t i = 0; i < hz.size(); ++i)
    {
        while (step + 2 < ladder.size() && ladder[step + 1] < hz[i])
            ++step;
        const double part = std::clamp (std::log (hz[i] / ladder[step]) / std::log (ladder[step + 1] / ladder[step]), 0.0, 1.0);
        const double gain = gains[step] + part * (gains[step + 1] - gains[step]);
        power += std::norm (bins[i + 1]) * gain * gain;
    }
    return power / static_cast<double> (bins.size() - 1); // Parseval: both halves of the spectrum, over n
}

std::vector<double> inFrequencyDomain (const std::vector<double>& take, const ModalFilter& filter)
{
    const size_t n = powerOfTwoAtLeast (take.size() + static_cast<size_t> (2.0 * filter.sampleRate));
    auto bins = spectrumOf (take, n);
    for (size_t i = 0; i < bins.size(); ++i)
        bins[i] *= filter.response (static_cast<double> (i) * filter.sampleRate / static_cast<double> (n));
    auto signal = signalOf (bins);
    signal.resize (take.size());
    return signal;
}
}

TEST_CASE ("A sampled guitar through every option: no NaN, no click, the level its spectrum says", "[recording]")
{
    if (! isThere ("fluidsynth") || ! std::filesystem::exists (soundfont))
    {
        WARN ("SKIPPED: fluidsynth or fluid-soundfont-gm is not installed; scripts/install test brings both");
        return;
    }
    const auto folder = freshFolder ("recording");
    writeMidi (folder / "riff.mid", riff(), cleanGuitar, 500000);
    REQUIRE (run ("fluidsynth -q -n -i -R 0 -C 0 -g 0.5 -r 48000 -O float -T wav -F '" + (folder / "played.wav").string() + "' "
                  + soundfont + " '" + (folder / "riff.mid").string() + "' > /dev/null 2>&1")
             == 0);
    const Wav played = readWav (folder / "played.wav");
    REQUIRE (played.sampleRate == 48000.0);
    // A guitar gives one channel; the sampled one is spread over two, so both are kept and rendered.
    writeFloatWav (folder / "riff.wav", played);
    REQUIRE (played.channels.size() == 2);
    REQUIRE (std::sqrt (sumOfSquares (played.channels[0]) / static_cast<double> (played.channels[0].size())) > 1e-3);

    writeText (folder / "riff.json", recordingJob);
    REQUIRE (
        coldironCommand ("render '" + (folder / "riff.json").string() + "' --out '" + (folder / "out").string() + "' > /dev/null")
        == 0);

    const Job job = jobFrom (recordingJob, folder);
    const GuitarResponse recorded = job.recordedConfig (0).response();
    double worstLevel = 0.0, worstResidual = -300.0;
    for (const auto& option : job.options)
    {
        INFO (option.letter << " " << option.name);
        const Wav rendered = readWav (renderedFile (folder / "out", option.letter));
        REQUIRE (rendered.channels.size() == 2);
        const GuitarResponse response = job.optionConfig (option).response();
        const TransferFunction transfer (recorded, response);
        const ModalFilter filter = designFilter (transfer, *FilterDesigner::shared (48000.0));

        for (size_t c = 0; c < 2; ++c)
        {
            const auto& take = played.channels[c];
            const auto& sound = rendered.channels[c];
            REQUIRE (sound.size() == take.size());
            for (double v : sound)
                REQUIRE (std::isfinite (v));

            const double level = 10.0 * std::log10 (sumOfSquares (sound) / predictedPower (take, 48000.0, transfer));
            worstLevel = std::max (worstLevel, std::abs (level));
            CHECK (std::abs (level) < 0.2);

            // A click, a gap or a lost block would stand out from a filter that has no blocks at all.
            const auto expected = inFrequencyDomain (take, filter);
            double peak = 0.0, apart = 0.0;
            for (size_t i = 0; i < sound.size(); ++i)
            {
                peak = std::max (peak, std::abs (expected[i]));
                apart = std::max (apart, std::abs (sound[i] - expected[i]));
            }
            const double residual = 20.0 * std::log10 (apart / peak);
            worstResidual = std::max (worstResidual, residual);
            CHECK (residual < -80.0); // the largest single sample; 24 bits at a quiet option leave about -110
        }
    }
    std::printf ("a sampled guitar, 8 options: level within %.3f dB of its spectrum (bar 0.2), largest stray sample %.1f dB "
                 "below the peak\n",
                 worstLevel, worstResidual);
    std::filesystem::remove_all (folder);
}
}
