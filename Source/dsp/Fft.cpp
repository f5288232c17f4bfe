#include "dsp/Fft.h"

#include "dsp/SimdKernels.h"

#include <cmath>
#include <numbers>
#include <stdexcept>

namespace coldiron
{
Fft::Fft (int size) : n (size)
{
    if (size < 2 || size > 1 << 24 || (size & (size - 1)) != 0)
        throw std::invalid_argument ("a transform's size is a power of two");
    for (int len = 1; len < n; len *= 2)
        for (int j = 0; j < len; ++j)
        {
            twiddleRe.push_back (std::cos (std::numbers::pi * j / len));
            twiddleIm.push_back (-std::sin (std::numbers::pi * j / len));
        }
}

void Fft::forward (double* re, double* im) const
{
    for (int len = n / 2; len >= 1; len /= 2)
        simd::decimateInFrequency (re, im, twiddleRe.data() + len - 1, twiddleIm.data() + len - 1, n, len);
}

void Fft::inverse (double* re, double* im) const
{
    for (int len = 1; len < n; len *= 2)
        simd::decimateInTime (re, im, twiddleRe.data() + len - 1, twiddleIm.data() + len - 1, n, len);
}

int Fft::bitReversedIndex (int bin) const
{
    int place = 0;
    for (int bit = 1; bit < n; bit *= 2)
        place = 2 * place + ((bin & bit) != 0 ? 1 : 0);
    return place;
}
}
