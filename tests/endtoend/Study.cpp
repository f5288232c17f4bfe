#include "Study.h"
#include "TakeFolder.h"
#include "response/Band.h"

#include "filter/FilterRunner.h"
#include "response/TransferFunction.h"
#include "support/Fft.h"
#include "support/Truth.h"
#include "support/TruthWav.h"

#include <algorithm>
#include <cmath>

namespace coldiron::support
{
namespace
{
constexpr double rate = 48000.0;
constexpr double heardDb = -50.0; // a third octave this far below the strongest is not heard

double db (double power) { return 10.0 * std::log10 (std::max (power, 1e-30)); }

std::string filledIn (std::string text, const std::string& word, const std::string& with)
{
    for (size_t at = text.find (word); at != std::string::npos; at = text.find (word, at + with.size()))
        text.replace (at, word.size(), with);
    return text;
}

std::string tickedStrings (const PluckedInstrument& instrument, const Phrase& phrase)
{
    std::string list;
    for (const auto& name : phrase.played (instrument))
        list += (list.empty() ? "\"" : ", \"") + name + "\"";
    return "[" + list + "]";
}

std::vector<double> filtered (const std::vector<double>& take, const ModalFilter& filter)
{
    auto runner = std::make_unique<FilterRunner>();
    REQUIRE (FilterRunner::fits (filter));
    runner->use (filter);
    std::vector<double> sound (take.size());
    runner->process (0, take.data(), sound.data(), static_cast<int> (take.size()));
    return sound;
}

double strongest (const std::vector<ThirdOctave>& bands)
{
    return std::max_element (bands.begin(), bands.end(), [] (auto& a, auto& b) { return a.power < b.power; })->power;
}

Miss compare (const std::vector<double>& take, const std::vector<double>& truth, const std::vector<double>& predicted,
              const CircuitConfig& recorded, const CircuitConfig& option, bool isBass)
{
    const double low = isBass ? 40.0 : 80.0, high = isBass ? 6000.0 : 10000.0;
    const auto takeBands = thirdOctaves (take, rate, low, high), truthBands = thirdOctaves (truth, rate, low, high);
    const auto predictedBands = thirdOctaves (predicted, rate, low, high);
    std::vector<double> hz;
    for (const auto& b : takeBands)
        hz.push_back (b.hz);
    const Band band = computeBand (recorded, option, hz);

    Miss miss;
    for (size_t i = 0; i < hz.size(); ++i)
    {
        if (db (takeBands[i].power / strongest (takeBands)) < heardDb
            || db (truthBands[i].power / strongest (truthBands)) < heardDb)
            continue;
        miss.thirdOctaveDb.push_back (db (predictedBands[i].power / truthBands[i].power));
        const double ratio = db (truthBands[i].power / takeBands[i].power);
        miss.held += ratio >= band.lowDb[i] && ratio <= band.highDb[i];
    }
    miss.loudnessLu = loudnessLufs (predicted, rate) - loudnessLufs (truth, rate);
    return miss;
}
}

std::vector<Miss> missesOf (const std::string& jobText, const PluckedInstrument& instrument, const Phrase& phrase)
{
    const auto folder = freshFolder ("study");
    // A job's take must be a file before the job can be read; its sound is made from what the job then says.
    writeFloatWav (folder / "take.wav", { rate, { std::vector<double> (480, 0.1) } });
    const Job job =
        jobFrom (filledIn (filledIn (jobText, "TAKE", "take.wav"), "STRINGS", tickedStrings (instrument, phrase)), folder);
    std::filesystem::remove_all (folder);

    const CircuitConfig recorded = job.recordedConfig (0);
    const auto emfs = harnessEmfs (recorded.harness, instrument, phrase, rate);
    auto take = throughHarness (recorded.harness, recorded.setting, recorded.load, emfs, rate);
    const double scale = 0.3
                         / std::abs (*std::max_element (take.begin(), take.end(),
                                                        [] (double a, double b) { return std::abs (a) < std::abs (b); }));
    for (auto& x : take)
        x *= scale;

    std::vector<Miss> misses;
    const GuitarResponse recordedResponse = recorded.response();
    for (const auto& option : job.options)
    {
        const CircuitConfig config = job.optionConfig (option);
        auto truth = throughHarness (config.harness, config.setting, config.load, emfs, rate);
        for (auto& x : truth)
            x *= scale;
        const GuitarResponse optionResponse = config.response();
        const TransferFunction transfer (recordedResponse, optionResponse);
        const auto predicted = filtered (take, designFilter (transfer, *FilterDesigner::shared (rate)));
        Miss miss = compare (take, truth, predicted, recorded, config, instrument.strings.size() == 4);
        miss.take = phrase.name;
        miss.option = option.name;
        miss.confidence = transfer.confidence();
        misses.push_back (std::move (miss));
    }
    return misses;
}

Pooled pool (const std::vector<Miss>& misses, const std::string& option)
{
    Pooled pooled;
    for (const auto& miss : misses)
    {
        if (miss.option != option)
            continue;
        ++pooled.takes;
        pooled.bands += static_cast<int> (miss.thirdOctaveDb.size());
        pooled.heldShare += miss.held;
        for (double d : miss.thirdOctaveDb)
            pooled.rmsDb += d * d;
        pooled.loudnessRmsLu += miss.loudnessLu * miss.loudnessLu;
        pooled.loudnessWorstLu = std::max (pooled.loudnessWorstLu, std::abs (miss.loudnessLu));
        pooled.withinPromise += std::abs (miss.loudnessLu) <= miss.confidence.loudnessDb();
    }
    pooled.rmsDb = std::sqrt (pooled.rmsDb / pooled.bands);
    pooled.heldShare /= pooled.bands;
    pooled.loudnessRmsLu = std::sqrt (pooled.loudnessRmsLu / pooled.takes);
    pooled.withinPromise /= pooled.takes;
    return pooled;
}
}
