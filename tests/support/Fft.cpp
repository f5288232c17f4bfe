#include "support/Fft.h"

#include <unsupported/Eigen/FFT>

#include <cmath>

namespace coldiron::support
{
size_t powerOfTwoAtLeast (size_t n)
{
    size_t power = 1;
    while (power < n)
        power *= 2;
    return power;
}

std::vector<std::complex<double>> spectrumOf (const std::vector<double>& signal, size_t n)
{
    std::vector<double> padded (signal);
    padded.resize (n, 0.0);
    std::vector<std::complex<double>> bins;
    Eigen::FFT<double> fft;
    fft.SetFlag (Eigen::FFT<double>::HalfSpectrum);
    fft.fwd (bins, padded);
    return bins;
}

std::vector<double> signalOf (const std::vector<std::complex<double>>& bins)
{
    std::vector<double> signal;
    Eigen::FFT<double> fft;
    fft.SetFlag (Eigen::FFT<double>::HalfSpectrum);
    fft.inv (signal, bins, static_cast<Eigen::Index> (2 * (bins.size() - 1)));
    return signal;
}

std::vector<ThirdOctave> thirdOctaves (const std::vector<double>& signal, double sampleRate, double lowHz, double highHz)
{
    const size_t n = powerOfTwoAtLeast (signal.size());
    const auto bins = spectrumOf (signal, n);
    std::vector<ThirdOctave> bands;
    for (int b = -20; b <= 14; ++b)
    {
        const double middle = 1000.0 * std::exp2 (b / 3.0);
        if (middle < lowHz || middle > highHz)
            continue;
        const double low = middle * std::exp2 (-1.0 / 6.0), high = middle * std::exp2 (1.0 / 6.0);
        const auto first = static_cast<size_t> (std::ceil (low / sampleRate * static_cast<double> (n)));
        double power = 0.0;
        for (size_t i = first; i < bins.size() && static_cast<double> (i) * sampleRate / static_cast<double> (n) < high; ++i)
            power += std::norm (bins[i]);
        bands.push_back ({ middle, power });
    }
    return bands;
}
}
