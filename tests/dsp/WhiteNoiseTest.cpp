#include "dsp/WhiteNoise.h"

#include <catch2/catch.hpp>

#include <cmath>
#include <vector>

namespace whiteNoiseTest
{
using namespace coldiron;

TEST_CASE ("white noise is normal, of unit variance, and white")
{
    WhiteNoise noise;
    constexpr size_t count = 1u << 19;
    std::vector<double> x (count);
    double sum = 0.0, square = 0.0, fourth = 0.0, neighbours = 0.0;
    for (size_t i = 0; i < count; ++i)
    {
        x[i] = noise.next();
        sum += x[i];
        square += x[i] * x[i];
        fourth += std::pow (x[i], 4.0);
        neighbours += i > 0 ? x[i] * x[i - 1] : 0.0;
    }
    // Moments of the normal distribution: 0, 1, 3. Five standard errors.
    const double n = static_cast<double> (count);
    CHECK (sum / n == Approx (0.0).margin (5.0 / std::sqrt (n)));
    CHECK (square / n == Approx (1.0).margin (5.0 * std::sqrt (2.0 / n)));
    CHECK (fourth / n == Approx (3.0).margin (5.0 * std::sqrt (96.0 / n)));
    CHECK (neighbours / n == Approx (0.0).margin (5.0 / std::sqrt (n)));
    WhiteNoise again;
    CHECK (again.next() == x[0]);
}
}
