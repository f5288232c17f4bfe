#include "dsp/Resample.h"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <numbers>

namespace coldiron
{
namespace
{

/** The modified Bessel function of order 0, by its series. */
double besselZero (double x)
{
    double sum = 1.0, term = 1.0;
    for (int k = 1; k < 40; ++k)
        sum += term *= (x / (2.0 * k)) * (x / (2.0 * k));
    return sum;
}
}

std::vector<float> resampled (const std::vector<float>& in, double fromRate, double toRate, const Cancellation& isUnwanted)
{
    if (fromRate == toRate || in.empty())
        return in;
    constexpr int crossings = 48, pointsPerCrossing = 512;
    constexpr double beta = 10.0;
    const double cutoff = std::min (1.0, toRate / fromRate) * 0.97; // of the input's Nyquist

    // The kernel once, finely; read between its points.
    std::vector<double> kernel (crossings * pointsPerCrossing + 2, 0.0);
    for (size_t i = 0; i <= crossings * pointsPerCrossing; ++i)
    {
        const double x = static_cast<double> (i) / pointsPerCrossing, u = x / crossings;
        kernel[i] = (x == 0.0 ? 1.0 : std::sin (std::numbers::pi * x) / (std::numbers::pi * x))
                    * besselZero (beta * std::sqrt (std::max (0.0, 1.0 - u * u))) / besselZero (beta);
    }

    const double reach = crossings / cutoff;
    const auto length = static_cast<int64_t> (in.size());
    std::vector<float> out (static_cast<size_t> (std::llround (static_cast<double> (in.size()) * toRate / fromRate)));
    for (size_t n = 0; n < out.size(); ++n)
    {
        if (n % 4096 == 0)
            isUnwanted.check();
        const double at = static_cast<double> (n) * fromRate / toRate;
        double sum = 0.0;
        for (auto i = std::max<int64_t> (0, static_cast<int64_t> (std::ceil (at - reach)));
             i <= std::min<int64_t> (length - 1, static_cast<int64_t> (std::floor (at + reach))); ++i)
        {
            const double x = std::abs (static_cast<double> (i) - at) * cutoff * pointsPerCrossing;
            const auto k = std::min (static_cast<size_t> (x), kernel.size() - 2);
            sum += in[static_cast<size_t> (i)] * (kernel[k] + (x - static_cast<double> (k)) * (kernel[k + 1] - kernel[k]));
        }
        out[n] = static_cast<float> (sum * cutoff);
    }
    return out;
}
}
