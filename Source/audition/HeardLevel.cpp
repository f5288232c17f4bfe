#include "audition/HeardLevel.h"

#include "audition/Loudness.h"

#include <algorithm>
#include <cmath>

namespace coldiron
{
HeardLevel heardLevel (const std::vector<std::vector<float>>& channels, double sampleRate, AfterJack& chain, double takeLufs)
{
    HeardLevel level;
    double lufs = 0.0;
    const auto listen = [&] (double db)
    {
        auto heard = channels;
        const auto gain = static_cast<float> (std::pow (10.0, db / 20.0));
        for (auto& channel : heard)
            for (float& sample : channel)
                sample *= gain;
        chain.run (heard);
        lufs = loudnessOf (heard, sampleRate);
        return truePeakDb (heard, sampleRate);
    };

    level.truePeakDb = level.matchedTruePeakDb = listen (0.0);
    if (! std::isfinite (lufs) || ! std::isfinite (takeLufs))
        return level;
    level.matchDb = std::clamp (takeLufs - lufs, -30.0, 30.0);
    level.matchedTruePeakDb = level.truePeakDb + level.matchDb;
    for (int round = 0; chain.bends() && round < 6; ++round)
    {
        level.matchedTruePeakDb = listen (level.matchDb);
        const double left = takeLufs - lufs;
        if (! (std::abs (left) > 0.02))
            break;
        level.matchDb = std::clamp (level.matchDb + 1.4 * left, -30.0, 30.0); // a drive gives less than it is given
    }
    return level;
}

double mostHum (const Voice& voice, const AfterCurve& curve, double buzz, double emfRms)
{
    double most = 0.0;
    for (const double mains : { 50.0, 60.0 })
    {
        double sum = 0.0;
        for (const auto& harmonic : humSpectrum ({ mains, 1.0, buzz }))
            sum += std::sqrt (2.0) * harmonic.share * emfRms * std::abs (heardHum (voice, harmonic.number * mains)) * curve.at (harmonic.number * mains);
        most = std::max (most, sum);
    }
    return most;
}

double headroomDb (double peak)
{
    return std::min (0.0, -0.01 - 20.0 * std::log10 (std::max (1e-15, peak)));
}
}
