#include "dsp/Fft.h"

#include "dsp/Simd.h"

#include <cmath>
#include <numbers>
#include <stdexcept>

namespace coldiron
{
namespace
{
/** One stage of decimation in frequency: pairs len apart. */
COLDIRON_SIMD void decimateInFrequency (double* re, double* im, const double* wRe, const double* wIm, int n, int len)
{
    for (int start = 0; start < n; start += 2 * len)
        for (int j = start, t = 0; t < len; ++j, ++t)
        {
            const double re0 = re[j], im0 = im[j], re1 = re[j + len], im1 = im[j + len];
            const double dRe = re0 - re1, dIm = im0 - im1;
            re[j] = re0 + re1;
            im[j] = im0 + im1;
            re[j + len] = dRe * wRe[t] - dIm * wIm[t];
            im[j + len] = dRe * wIm[t] + dIm * wRe[t];
        }
}

/** Its mirror: decimation in time with the angles turned back. */
COLDIRON_SIMD void decimateInTime (double* re, double* im, const double* wRe, const double* wIm, int n, int len)
{
    for (int start = 0; start < n; start += 2 * len)
        for (int j = start, t = 0; t < len; ++j, ++t)
        {
            const double tRe = re[j + len] * wRe[t] + im[j + len] * wIm[t];
            const double tIm = im[j + len] * wRe[t] - re[j + len] * wIm[t];
            const double re0 = re[j], im0 = im[j];
            re[j] = re0 + tRe;
            im[j] = im0 + tIm;
            re[j + len] = re0 - tRe;
            im[j + len] = im0 - tIm;
        }
}
}

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
        decimateInFrequency (re, im, twiddleRe.data() + len - 1, twiddleIm.data() + len - 1, n, len);
}

void Fft::inverse (double* re, double* im) const
{
    for (int len = 1; len < n; len *= 2)
        decimateInTime (re, im, twiddleRe.data() + len - 1, twiddleIm.data() + len - 1, n, len);
}

int Fft::bitReversedIndex (int bin) const
{
    int place = 0;
    for (int bit = 1; bit < n; bit *= 2)
        place = 2 * place + ((bin & bit) != 0 ? 1 : 0);
    return place;
}
}
