#include "session/Matching.h"

#include <algorithm>
#include <cmath>
#include <complex>
#include <numbers>

namespace coldiron
{
double kWeight (double hz)
{
    const std::complex<double> z1 = std::exp (std::complex<double> (0.0, -2.0 * std::numbers::pi * std::min (hz, 23.9e3) / 48e3));
    const std::complex<double> z2 = z1 * z1;
    const auto shelf = (1.53512485958697 - 2.69169618940638 * z1 + 1.19839281085285 * z2)
                       / (1.0 - 1.69065929318241 * z1 + 0.73248077421585 * z2);
    const auto highPass = (1.0 - 2.0 * z1 + z2) / (1.0 - 1.99004745483398 * z1 + 0.99007225036621 * z2);
    return std::norm (shelf * highPass);
}

double matchDb (const TransferFunction& transfer, const Spectrum& take)
{
    std::vector<double> hz = take.hz, power = take.power;
    if (take.isEmpty())
        for (int i = 0; i <= 72; ++i)
        {
            hz.push_back (80.0 * std::pow (5000.0 / 80.0, i / 72.0));
            power.push_back (1.0);
        }

    const std::vector<double> gains = transfer.gains (hz);
    double before = 0.0, after = 0.0;
    for (size_t i = 0; i < hz.size(); ++i)
    {
        const double heard = power[i] * kWeight (hz[i]);
        before += heard;
        after += heard * gains[i] * gains[i];
    }
    if (! (after > 0.0) || ! (before > 0.0))
        return 0.0;
    return std::clamp (10.0 * std::log10 (before / after), -30.0, 30.0);
}
}
