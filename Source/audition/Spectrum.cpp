#include "audition/Spectrum.h"

#include <unsupported/Eigen/FFT>

#include <cmath>
#include <complex>
#include <numbers>

namespace coldiron
{
namespace
{
constexpr int perOctave = 24;
constexpr double lowestHz = 20.0;
}

Spectrum takeSpectrum (const std::vector<std::vector<float>>& channels, double sampleRate)
{
    size_t window = 256;
    while (static_cast<double> (window) < 0.3 * sampleRate)
        window *= 2;
    const size_t step = window / 2;

    Eigen::FFT<double> fft;
    fft.SetFlag (Eigen::FFT<double>::HalfSpectrum);
    std::vector<double> piece (window), sums (window / 2 + 1, 0.0), shape (window);
    std::vector<std::complex<double>> bins;
    for (size_t i = 0; i < window; ++i)
        shape[i] = 0.5 - 0.5 * std::cos (2.0 * std::numbers::pi * (static_cast<double> (i) + 0.5) / static_cast<double> (window));
    for (const auto& channel : channels)
        for (size_t from = 0; from < channel.size(); from += step)
        {
            for (size_t i = 0; i < window; ++i)
                piece[i] = from + i < channel.size() ? shape[i] * static_cast<double> (channel[from + i]) : 0.0;
            fft.fwd (bins, piece);
            for (size_t k = 0; k < sums.size(); ++k)
                sums[k] += std::norm (bins[k]);
        }

    Spectrum spectrum;
    double total = 0.0;
    for (size_t k = 1; k < sums.size(); ++k)
    {
        const double hz = static_cast<double> (k) * sampleRate / static_cast<double> (window);
        const double band = std::round (perOctave * std::log2 (hz / lowestHz));
        if (band < 0.0 || hz > 0.45 * sampleRate)
            continue;
        const double centre = lowestHz * std::exp2 (band / perOctave);
        if (spectrum.hz.empty() || centre > spectrum.hz.back())
        {
            spectrum.hz.push_back (centre);
            spectrum.power.push_back (0.0);
        }
        spectrum.power.back() += sums[k];
        total += sums[k];
    }
    return total > 0.0 ? spectrum : Spectrum {};
}
}
