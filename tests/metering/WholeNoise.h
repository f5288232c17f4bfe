#pragma once

#include "dsp/WhiteNoise.h"
#include "engine/HumCycle.h"
#include "filter/FilterRunner.h"
#include "response/Hiss.h"

#include <algorithm>
#include <array>

namespace coldiron::support
{
/** Hum of a voice where one 5000-turn coil's hum EMF has emfRms, from the start. */
inline std::vector<float> wholeHum (const GuitarResponse& response, const MainsField& field, double emfRms, double rate,
                                    size_t frames)
{
    const HumCycle cycle = HumCycle::of (response, field, emfRms);
    MainsClock clock;
    std::vector<float> hum;
    while (hum.size() < frames)
    {
        std::array<double, MainsClock::longest> phase;
        const int count = static_cast<int> (std::min<size_t> (phase.size(), frames - hum.size()));
        clock.next (field.hz, rate, phase.data(), count);
        for (int i = 0; i < count; ++i)
            hum.push_back (static_cast<float> (cycle.at (phase[static_cast<size_t> (i)])));
    }
    return hum;
}

/** Hiss of a voice times scale, from the start. */
inline std::vector<float> wholeHiss (const GuitarResponse& response, double scale, double rate, size_t frames)
{
    FilterRunner runner;
    runner.use (hissFilter (response, rate));
    WhiteNoise noise;
    std::vector<double> samples (frames);
    for (double& sample : samples)
        sample = scale * noise.next();
    runner.process (0, samples.data(), samples.data(), static_cast<int> (frames));
    return { samples.begin(), samples.end() };
}
}
