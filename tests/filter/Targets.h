#pragma once

#include "filter/FilterDesigner.h"

#include <algorithm>
#include <cmath>
#include <complex>
#include <functional>
#include <numbers>
#include <random>
#include <vector>

namespace coldiron::targets
{
using Response = std::function<std::complex<double> (double hz)>;

/** A coil into a load: H = 1/(g + s (L/Rp + R C) + s^2 L C), g = 1 + R/Rp. */
struct LoadedCoil
{
    double henries, ohms, farads, load;

    std::complex<double> operator() (double hz) const
    {
        const std::complex<double> s (0.0, 2.0 * std::numbers::pi * hz);
        const double g = 1.0 + ohms / load;
        return 1.0 / (g + s * (henries / load + ohms * farads) + s * s * henries * farads);
    }
};

inline double db (double gain) { return 20.0 * std::log10 (gain); }

inline std::vector<double> onGrid (const FilterDesigner& designer, const Response& response)
{
    std::vector<double> result;
    for (double hz : designer.gridHz())
        result.push_back (std::abs (response (hz)));
    return result;
}

/** The soft cap restated: g0 x/(1 + (x/G)^6)^(1/6), x = |T|/g0, G = +24 dB, g0 the median from 80 to 800 Hz. */
inline Response softlyCapped (const FilterDesigner& designer, const Response& response)
{
    std::vector<double> band;
    for (double hz : designer.gridHz())
        if (hz >= 80.0 && hz <= 800.0)
            band.push_back (std::abs (response (hz)));
    std::nth_element (band.begin(), band.begin() + static_cast<std::ptrdiff_t> (band.size() / 2), band.end());
    const double passband = band[band.size() / 2], most = std::pow (10.0, 24.0 / 20.0);
    return [=] (double hz)
    { return response (hz) / std::pow (1.0 + std::pow (std::abs (response (hz)) / passband / most, 6.0), 1.0 / 6.0); };
}

struct Deviation
{
    double worst = 0.0, rms = 0.0, atHz = 0.0;
};

/** Filter against its target between the grid's points, 20 Hz to 20 kHz, where within `range` dB of the peak. */
inline Deviation deviation (const ModalFilter& filter, const Response& response, double range = 60.0)
{
    const double top = std::min (20e3, 0.45 * filter.sampleRate);
    double peak = 0.0;
    for (double hz = 20.0; hz < top; hz *= 1.0037)
        peak = std::max (peak, std::abs (response (hz)));
    Deviation result;
    int count = 0;
    double sum = 0.0;
    for (double hz = 20.0; hz < top; hz *= 1.0037)
    {
        const double wanted = std::abs (response (hz));
        if (wanted < peak * std::pow (10.0, -range / 20.0))
            continue;
        const double error = std::abs (filter.gainDb (hz) - db (wanted));
        sum += error * error;
        ++count;
        if (error > result.worst)
            result = { error, 0.0, hz };
    }
    result.rms = std::sqrt (sum / count);
    return result;
}
}
