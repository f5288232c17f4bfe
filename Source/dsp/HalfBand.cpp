#include "dsp/HalfBand.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace coldiron
{
std::vector<double> halfBandCoefficients (double attenuationDb, double transition)
{
    using std::numbers::pi;
    const double k = std::pow (std::tan ((1.0 - 2.0 * transition) * pi / 4.0), 2.0); // of the elliptic filter
    const double root = std::pow (1.0 - k * k, 0.25), e = 0.5 * (1.0 - root) / (1.0 + root), e4 = std::pow (e, 4.0);
    const double q = e * (1.0 + e4 * (2.0 + e4 * (15.0 + 150.0 * e4))); // its nome

    const double leak = std::pow (10.0, -attenuationDb / 10.0), ratio = leak / (1.0 - leak);
    int order = static_cast<int> (std::ceil (std::log (ratio * ratio / 16.0) / std::log (q)));
    order = std::max (3, order | 1);

    std::vector<double> coefficients;
    for (int c = 1; c <= (order - 1) / 2; ++c)
    {
        double numerator = 0.0, denominator = 0.5, sign = 1.0; // theta functions
        for (int i = 0; i < 40; ++i, sign = -sign)
        {
            numerator += sign * std::pow (q, i * (i + 1)) * std::sin ((2 * i + 1) * c * pi / order);
            if (i > 0)
                denominator += sign * std::pow (q, i * i) * std::cos (2 * i * c * pi / order);
        }
        const double ww = std::pow (std::pow (q, 0.25) * numerator / denominator, 2.0);
        const double x = std::sqrt ((1.0 - ww * k) * (1.0 - ww / k)) / (1.0 + ww);
        coefficients.push_back ((1.0 - x) / (1.0 + x));
    }
    return coefficients;
}

HalfBand::HalfBand (const std::vector<double>& coefficients)
    : count (static_cast<int> (std::min<size_t> (most, coefficients.size())))
{
    std::copy (coefficients.begin(), coefficients.begin() + count, coefficient.begin());
}

void HalfBand::reset()
{
    last.fill (0.0);
    lastOut.fill (0.0);
}

double HalfBand::branch (int from, double x)
{
    for (int i = from; i < count; i += 2)
    {
        const auto k = static_cast<size_t> (i);
        const double y = coefficient[k] * (x - lastOut[k]) + last[k];
        last[k] = x;
        lastOut[k] = y;
        x = y;
    }
    return x;
}

void HalfBand::up (double in, double& first, double& second)
{
    first = branch (0, in);
    second = branch (1, in);
}

double HalfBand::down (double first, double second) { return 0.5 * (branch (0, second) + branch (1, first)); }
}
