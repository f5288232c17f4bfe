#include "filter/ModalFilter.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace coldiron
{
std::complex<double> ModalFilter::response (double hz) const
{
    const auto delay = std::polar (1.0, -2.0 * std::numbers::pi * hz / sampleRate); // z^-1
    std::complex<double> sum = direct;
    for (size_t p = 0; p < poles.size(); ++p)
        sum += delay * (residues[p] / (1.0 - poles[p] * delay) + std::conj (residues[p]) / (1.0 - std::conj (poles[p]) * delay));
    return sum;
}

double ModalFilter::gainDb (double hz) const { return 20.0 * std::log10 (std::max (std::abs (response (hz)), 1e-15)); }

ModalFilter ModalFilter::scaled (double gain) const
{
    ModalFilter louder = *this;
    louder.direct *= gain;
    for (auto& residue : louder.residues)
        residue *= gain;
    return louder;
}

ModalFilter ModalFilter::silence (double sampleRate)
{
    ModalFilter filter;
    filter.sampleRate = sampleRate;
    filter.direct = 0.0;
    return filter;
}

ModalFilter ModalFilter::unity (double sampleRate)
{
    ModalFilter filter;
    filter.sampleRate = sampleRate;
    return filter;
}
}
