#pragma once

#include <vector>

namespace coldiron
{
/** Discrete Fourier transform of a power of two, real and imaginary parts apart. Spectra stand in bit-reversed order:
    good for products of two of them, and no time goes into sorting. Never allocates once built; any thread may use it. */
class Fft
{
public:
    explicit Fft (int size); ///< 2 to 2^24, a power of two; throws std::invalid_argument otherwise

    int size() const { return n; }
    void forward (double* re, double* im) const; ///< in place
    void inverse (double* re, double* im) const; ///< in place; times size()
    int bitReversedIndex (int bin) const;        ///< where a bin stands in a spectrum

private:
    int n = 0;
    std::vector<double> twiddleRe, twiddleIm; ///< e^(-i pi j/len) for each half length len = 1, 2, 4 ..., from place len - 1
};
}
