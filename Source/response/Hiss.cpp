#include "response/Hiss.h"

#include "filter/FilterDesigner.h"
#include "response/Hum.h"
#include "response/ThermalNoise.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace coldiron
{
ModalFilter hissFilter (const GuitarResponse& response, double sampleRate)
{
    const auto designer = FilterDesigner::shared (sampleRate);
    std::vector<double> microvolts;
    for (const double hz : designer->gridHz())
        microvolts.push_back (
            1e6
            * std::sqrt (4.0 * boltzmann * roomKelvin * std::max (0.0, response.outputImpedance (hz).real()) * 0.5 * sampleRate));
    return designer->design (microvolts, false);
}

double hissScaleFor (double takeLufs, double gainDb)
{
    return 1e-6 * humEmfFor (takeLufs, gainDb) / playingVolts; // rms of a sine as loud as the take stands for playingVolts
}

double WhiteNoise::next()
{
    if (hasKept)
    {
        hasKept = false;
        return kept;
    }
    const auto uniform = [this] // above 0, at most 1
    {
        state ^= state >> 12;
        state ^= state << 25;
        state ^= state >> 27;
        return (static_cast<double> ((state * 0x2545f4914f6cdd1dull) >> 11) + 1.0) * 0x1.0p-53;
    };
    // Box and Muller: two normal samples from two uniform ones.
    const double radius = std::sqrt (-2.0 * std::log (uniform())), angle = 2.0 * std::numbers::pi * uniform();
    kept = radius * std::sin (angle);
    hasKept = true;
    return radius * std::cos (angle);
}
}
