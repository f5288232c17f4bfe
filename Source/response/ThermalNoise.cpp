#include "response/ThermalNoise.h"

#include <algorithm>
#include <cmath>

namespace coldiron
{
double thermalNoise (const std::function<std::complex<double> (double)>& impedance, double fromHz, double toHz, double kelvin)
{
    // Simpson's rule on log f: Re Z df = Re Z f d(ln f). 96 points an octave resolve any loaded peak.
    const double octaves = std::log2 (toHz / fromHz);
    const int intervals = 2 * std::max (1, static_cast<int> (std::ceil (48.0 * octaves)));
    const double step = std::log (toHz / fromHz) / intervals;
    double sum = 0.0;
    for (int i = 0; i <= intervals; ++i)
    {
        const double hz = fromHz * std::exp (step * i);
        const double weight = i == 0 || i == intervals ? 1.0 : i % 2 == 1 ? 4.0 : 2.0;
        sum += weight * std::max (0.0, impedance (hz).real()) * hz;
    }
    return std::sqrt (4.0 * boltzmann * kelvin * sum * step / 3.0);
}
}
