// The whole way in time: strings through one wiring by a circuit simulator's transient analysis are the take; the
// command renders it to another wiring; the simulator's transient analysis of that wiring says what is right.
// Simulator: ngspice, which shares no line with the product. All coils driven alike, offsets 0, so only circuits differ.
// Bars: residual at most -60 dB at 96 and 192 kHz, -40 dB at 44.1 and 48 kHz, after one constant delay; third octaves
// within 0.05 dB.

#include "TakeFolder.h"

#include "support/Fft.h"
#include "support/Ngspice.h"
#include "support/OracleNetlist.h"
#include "support/PluckedStringWriter.h"
#include "support/Truth.h"
#include "support/TruthTable.h"
#include "support/TruthWav.h"

#include <cmath>
#include <complex>

namespace transientTest
{
using namespace coldiron;
using namespace coldiron::support;

namespace
{
constexpr double seconds = 0.38;      // the last note is released before
constexpr double fineRate = 768000.0; // divides by 48, 96 and 192 kHz; the simulator's step

const std::string transientJob = R"({ "coldiron": "job 1", "title": "In time",
  "guitar": { "coldiron": "guitar 1", "name": "One humbucker, coils at one place", "scale_mm": 647.7,
    "strings": ["E2", "A2", "D3", "G3", "B3", "E4"],
    "parts": {
      "bridge": { "pickup": { "coldiron": "pickup 1", "name": "Humbucker, coils at one place", "coupling": 0.15, "coils": {
          "north": { "dcr": "4.1k", "inductance": 1.6, "capacitance": "90p", "loss": [ { "inductance": 0.5, "resistance": "60k" } ],
                     "magnet": "north", "wound": "clockwise", "offset_mm": 0 },
          "south": { "dcr": "4.1k", "inductance": 1.6, "capacitance": "90p", "loss": [ { "inductance": 0.5, "resistance": "60k" } ],
                     "magnet": "south", "wound": "clockwise", "offset_mm": 0 } } }, "bridge_mm": 44 },
      "volume": { "pot": "500k", "taper": "log-15" }, "tone": { "pot": "500k", "taper": "log-15" },
      "cap": { "capacitor": "22n" }, "jack": { "jack": "mono" } },
    "wires": [ ["bridge.north.start", "volume.3", "tone.1"], ["bridge.north.finish", "bridge.south.finish"],
      ["bridge.south.start", "volume.case", "ground"], ["volume.1", "volume.case"],
      ["volume.2", "jack.tip"], ["tone.2", "cap.1"], ["cap.2", "tone.case", "ground"] ] },
  "takes": [ { "file": "take.wav" } ],
  "options": {
    "A": { "name": "parallel", "rewires": [ { "use": "series-parallel", "pickup": "bridge", "pot": "volume" } ],
           "setting": { "volume-pull": "up" } },
    "B": { "name": "split, other coil open", "rewires": [ { "use": "split-open", "pickup": "bridge", "pot": "volume" } ],
           "setting": { "volume-pull": "up" } },
    "C": { "name": "volume 5, tone 5 on the output side",
           "rewires": [ { "use": "tone-on-output", "tone": "tone.1", "volume": "volume" } ], "setting": { "volume": 5, "tone": 5 } },
    "D": { "name": "parallel, independent volume at 7",
           "rewires": [ { "use": "series-parallel", "pickup": "bridge", "pot": "volume" }, { "use": "independent-volumes", "pot": "volume" } ],
           "setting": { "volume": 7, "volume-pull": "up" } } } })";

/** A chord and two notes on top, with nothing above the band: what is sampled afterwards must not fold. */
TruthTable stringsInTime()
{
    PhraseWriter writer ("in time", 120, 77);
    writer.strum ({ 0, 2, 2, 1, 0, 0 }, 0, 0.3).note (5, 12, 0.16, 0.2, 1.2).note (0, 5, 0.2, 0.16, 1.2);
    auto phrase = writer.done (0.6);
    phrase.seconds = seconds;
    auto emf = pluckedEmfs (pluckedGuitar (647.7), phrase, { std::vector<double> (6, 44.0) }, fineRate).front();

    const size_t n = powerOfTwoAtLeast (emf.size() * 2);
    auto bins = spectrumOf (emf, n);
    for (size_t i = 0; i < bins.size(); ++i)
    {
        const double hz = static_cast<double> (i) * fineRate / static_cast<double> (n);
        const double into = std::clamp ((hz - 15000.0) / 5000.0, 0.0, 1.0);
        bins[i] *= 0.5 * (1.0 + std::cos (3.14159265358979 * into));
    }
    emf = signalOf (bins);
    emf.resize (static_cast<size_t> (seconds * fineRate) + 8);
    return TruthTable (std::move (emf), fineRate);
}

struct Residual
{
    double plainDb, delayedDb, delayMicroseconds;
};

/** How far a lies from b, as it is and after the one delay that suits best. */
Residual residualOf (const std::vector<double>& ours, const std::vector<double>& truth, double rate)
{
    const size_t n = powerOfTwoAtLeast (2 * ours.size());
    const auto a = spectrumOf (ours, n), b = spectrumOf (truth, n);
    const auto apart = [&] (double delay)
    {
        double difference = 0.0, whole = 0.0;
        for (size_t i = 0; i < a.size(); ++i)
        {
            const double radians = 2.0 * 3.14159265358979 * static_cast<double> (i) * rate / static_cast<double> (n) * delay;
            difference += std::norm (a[i] * std::polar (1.0, -radians) - b[i]);
            whole += std::norm (b[i]);
        }
        return 10.0 * std::log10 (difference / whole);
    };
    double low = -20e-6, high = 20e-6;
    for (int round = 0; round < 40; ++round)
    {
        const double third = (high - low) / 3.0;
        (apart (low + third) < apart (high - third) ? high : low) += apart (low + third) < apart (high - third) ? -third : third;
    }
    const double delay = 0.5 * (low + high);
    return { apart (0.0), apart (delay), delay * 1e6 };
}

double worstThirdOctave (const std::vector<double>& ours, const std::vector<double>& truth, double rate)
{
    const auto a = thirdOctaves (ours, rate, 80.0, 12000.0), b = thirdOctaves (truth, rate, 80.0, 12000.0);
    double strongest = 0.0, worst = 0.0;
    for (const auto& band : b)
        strongest = std::max (strongest, band.power);
    for (size_t i = 0; i < a.size(); ++i)
        if (b[i].power > 1e-6 * strongest)
            worst = std::max (worst, std::abs (10.0 * std::log10 (a[i].power / b[i].power)));
    return worst;
}
}

TEST_CASE ("A take made by transient analysis, rewired, against transient analysis of the rewired guitar", "[transient]")
{
    const auto folder = freshFolder ("transient");
    writeFloatWav (folder / "take.wav", { 48000.0, { std::vector<double> (48, 0.0) } });
    const Job job = jobFrom (transientJob, folder);
    const TruthTable strings = stringsInTime();
    const auto inTime = [&] (const CircuitConfig& config)
    {
        OracleOptions outside;
        outside.external = true;
        const OracleNetlist netlist (config.harness, config.setting, config.load, outside);
        return Ngspice::transient (netlist.lines, { "tip" }, { { "vsrc", strings } }, seconds, 1.0 / fineRate);
    };

    const Ngspice::Transient recorded = inTime (job.recordedConfig (0));
    std::vector<Ngspice::Transient> truths;
    for (const auto& option : job.options)
        truths.push_back (inTime (job.optionConfig (option)));

    for (const double rate : { 44100.0, 48000.0, 96000.0, 192000.0 })
    {
        const auto frames = static_cast<size_t> (seconds * rate);
        const auto place = folder / std::to_string (static_cast<int> (rate));
        std::filesystem::create_directories (place);
        auto take = recorded.at (0, rate, frames);
        double peak = 0.0;
        for (double v : take)
            peak = std::max (peak, std::abs (v));
        for (double& v : take)
            v *= 0.1 / peak;
        writeFloatWav (place / "take.wav", { rate, { take } });
        writeText (place / "job.json", transientJob);
        REQUIRE (coldironCommand ("render '" + (place / "job.json").string() + "' --out '" + (place / "out").string()
                                  + "' > /dev/null")
                 == 0);

        const double bar = rate > 90000.0 ? -60.0 : -40.0;
        for (size_t i = 0; i < truths.size(); ++i)
        {
            auto truth = truths[i].at (0, rate, frames);
            for (double& v : truth)
                v *= 0.1 / peak;
            const auto ours = readWav (renderedFile (place / "out", job.options[i].letter)).channels.at (0);
            REQUIRE (ours.size() == truth.size());
            const Residual residual = residualOf (ours, truth, rate);
            const double level = worstThirdOctave (ours, truth, rate);
            std::printf ("in time, %6.0f Hz, %-36s residual %6.1f dB after a delay of %+.2f us (without: %6.1f dB; bar %.0f), "
                         "third octaves within %.3f dB\n",
                         rate, job.options[i].name.c_str(), residual.delayedDb, residual.delayMicroseconds, residual.plainDb, bar,
                         level);
            INFO (rate << " Hz, " << job.options[i].name);
            CHECK (residual.delayedDb <= bar);
            CHECK (std::abs (residual.delayMicroseconds) < 10.0);
            CHECK (level <= 0.05);
        }
    }
    std::filesystem::remove_all (folder);
}
}
