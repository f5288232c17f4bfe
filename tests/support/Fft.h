#pragma once

#include <complex>
#include <vector>

namespace coldiron::support
{
/** Bins 0 to n/2 of a real signal padded with zeros to n, a power of two. */
std::vector<std::complex<double>> spectrumOf (const std::vector<double>& signal, size_t n);

/** The signal of bins 0 to n/2; n = 2 (bins - 1) samples. */
std::vector<double> signalOf (const std::vector<std::complex<double>>& bins);

size_t powerOfTwoAtLeast (size_t n);

/** A band of the ISO 266 third-octave series, base 2 around 1 kHz. */
struct ThirdOctave
{
    double hz = 0.0, power = 0.0;
};

/** Power of a signal in the third octaves whose middle lies between lowHz and highHz. */
std::vector<ThirdOctave> thirdOctaves (const std::vector<double>& signal, double sampleRate, double lowHz, double highHz);
}
