#include "engine/HumCycle.h"

#include <cmath>
#include <complex>
#include <numbers>

namespace coldiron
{
namespace
{
}

HumCycle HumCycle::of (const GuitarResponse& response, const MainsField& field, double emfRms)
{
    HumCycle cycle;
    cycle.mainsHz = field.hz;
    if (response.isSilent())
        return cycle;

    static const auto cosine = []
    {
        std::array<double, length> table {};
        for (int i = 0; i < length; ++i)
            table[static_cast<size_t> (i)] = std::cos (2.0 * std::numbers::pi * i / length);
        return table;
    }();

    std::array<double, length> sum {};
    for (const Harmonic& harmonic : humSpectrum (field))
    {
        const std::complex<double> heard = heardHum (response, harmonic.number * field.hz, field.facing)
                                           * (std::sqrt (2.0) * harmonic.share * emfRms)
                                           * std::polar (1.0, 0.7 * harmonic.number * harmonic.number);
        for (int i = 0; i < length; ++i)
        {
            const auto at = static_cast<size_t> (harmonic.number * i % length);
            sum[static_cast<size_t> (i)] += heard.real() * cosine[at] - heard.imag() * cosine[(at + 3 * length / 4) % length];
        }
    }
    for (int i = 0; i < length + 3; ++i)
        cycle.samples[static_cast<size_t> (i)] = static_cast<float> (sum[static_cast<size_t> ((i + length - 1) % length)]);
    return cycle;
}

void MainsClock::next (double mainsHz, double sampleRate, double* phases, int frames)
{
    const double from = turned + mainsDrift (frame / sampleRate), end = frame + frames;
    const double straight = turned + mainsHz * frames / sampleRate;
    const double step = (straight + mainsDrift (end / sampleRate) - from) / frames;
    for (int i = 0; i < frames; ++i)
    {
        const double phase = from + step * i;
        phases[i] = phase - std::floor (phase);
    }
    turned = straight - std::floor (straight);
    frame = end;
}
}
