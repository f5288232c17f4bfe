#include "engine/HeardLevel.h"

#include "metering/Loudness.h"
#include "metering/Peak.h"

#include <algorithm>
#include <cmath>

namespace coldiron
{
void LevelMatch::heard (double lufs)
{
    const double left = wanted - lufs;
    if (rounds++ == 0)
    {
        done = ! isDriven || ! std::isfinite (left);
        found = std::isfinite (left) ? std::clamp (left, -30.0, 30.0) : 0.0;
        return;
    }
    done = ! (std::abs (left) > 0.02);
    if (done)
        return;
    found = std::clamp (found + 1.4 * left, -30.0, 30.0); // a drive gives less than it is given
    done = rounds > 6;
}

SoundLevel soundLevel (const Channels& take, const RenderSpec& spec, double leastTruePeakDb, const Cancellation& isUnwanted)
{
    const double rate = spec.design.filter.sampleRate;
    OfflineRenderer renderer (spec);
    Loudness loudness (rate, static_cast<int> (take.size()));
    TruePeak peak (rate, static_cast<int> (take.size()), leastTruePeakDb);
    SoundLevel level;
    const auto source = blocksOf (take);
    for (Channels block; source (block);)
    {
        isUnwanted.check();
        const Channels& sound = renderer.process (block);
        loudness.add (sound);
        peak.add (sound);
        level.peak = std::max (level.peak, static_cast<double> (peakOf (sound)));
    }
    level.lufs = loudness.integratedLufs();
    level.truePeakDb = peak.db();
    return level;
}

HeardLevel heardLevel (const Channels& take, RenderSpec spec, double takeLufs, const Cancellation& isUnwanted)
{
    spec.humGain = spec.hissGain = 0.0;
    LevelMatch match (takeLufs, OfflineRenderer (spec).isNonlinear());
    HeardLevel level;
    for (bool first = true; first || ! match.isDone(); first = false)
    {
        spec.design.gain = std::pow (10.0, match.db() / 20.0);
        const SoundLevel sound = soundLevel (take, spec, -300.0, isUnwanted);
        match.heard (sound.lufs);
        if (first)
            level.truePeakDb = sound.truePeakDb;
        level.matchedTruePeakDb = sound.truePeakDb + (first ? match.db() : 0.0);
    }
    level.matchDb = match.db();
    return level;
}

double mostHum (const GuitarResponse& response, const OutputCurve& curve, double buzz, double emfRms)
{
    double most = 0.0;
    for (const double mains : { 50.0, 60.0 })
    {
        double sum = 0.0;
        for (const auto& harmonic : humSpectrum ({ mains, 1.0, buzz }))
            sum += std::sqrt (2.0) * harmonic.share * emfRms * std::abs (heardHum (response, harmonic.number * mains))
                   * curve.at (harmonic.number * mains);
        most = std::max (most, sum);
    }
    return most;
}

double headroomDb (double peak) { return std::min (0.0, -0.01 - 20.0 * std::log10 (std::max (1e-15, peak))); }
}
