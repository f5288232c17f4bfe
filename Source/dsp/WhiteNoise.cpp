#include "dsp/WhiteNoise.h"

#include <cmath>
#include <numbers>

namespace coldiron
{
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
