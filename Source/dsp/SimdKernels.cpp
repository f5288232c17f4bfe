#include "dsp/SimdKernels.h"

// This file is read once for each instruction set. Those left away add no speed here, or have registers of no known width.
#undef HWY_TARGET_INCLUDE
#define HWY_TARGET_INCLUDE "dsp/SimdKernels.cpp"
#define HWY_DISABLED_TARGETS (HWY_SSE4 | HWY_AVX3 | HWY_AVX3_DL | HWY_SVE | HWY_SVE2 | HWY_SVE_256 | HWY_SVE2_128)
#include <hwy/foreach_target.h>
#include <hwy/highway.h>

#include <algorithm>
#include <bit>

HWY_BEFORE_NAMESPACE();
namespace coldiron::simd::HWY_NAMESPACE
{
namespace hn = hwy::HWY_NAMESPACE;

using Tag = hn::CappedTag<double, lanes>;
using Register = hn::Vec<Tag>;
constexpr std::size_t inRegister = HWY_MIN (lanes * sizeof (double), HWY_MAX_BYTES) / sizeof (double);
constexpr std::size_t registers = lanes / inRegister; ///< that together hold a group
constexpr Tag tag;

/** The values of a group: (first + third) + (second + fourth), in registers of any width. */
HWY_INLINE double sumOfLanes (const Register (&sums)[registers])
{
    HWY_ALIGN double lane[lanes];
    for (std::size_t r = 0; r < registers; ++r)
        hn::Store (sums[r], tag, lane + r * inRegister);
    return (lane[0] + lane[2]) + (lane[1] + lane[3]);
}

HWY_INLINE void clear (Register (&sums)[registers])
{
    for (auto& sum : sums)
        sum = hn::Zero (tag);
}

void decimateInFrequency (double* re, double* im, const double* wRe, const double* wIm, int n, int len)
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

void decimateInTime (double* re, double* im, const double* wRe, const double* wIm, int n, int len)
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

void addProducts (double* sumRe, double* sumIm, const double* aRe, const double* aIm, const double* bRe, const double* bIm,
                  std::size_t count)
{
    for (std::size_t i = 0; i < count; ++i)
    {
        sumRe[i] += aRe[i] * bRe[i] - aIm[i] * bIm[i];
        sumIm[i] += aRe[i] * bIm[i] + aIm[i] * bRe[i];
    }
}

void addDirect (double* y, const double* x, const double* taps, std::size_t count, int frames)
{
    for (std::size_t k = 0; k < count; ++k)
    {
        const double tap = taps[k];
        const double* from = x - k;
        for (int i = 0; i < frames; ++i)
            y[i] += tap * from[i];
    }
}

std::int32_t largestMagnitudeBits (const float* samples, std::size_t count)
{
    std::int32_t most = 0;
    for (std::size_t i = 0; i < count; ++i)
        most = std::max (most, std::bit_cast<std::int32_t> (samples[i]) & 0x7fffffff);
    return most;
}

/** The number of groups is known when this is built, so that the states stay in registers from frame to frame. */
template <std::size_t groups, typename Sample>
void runGroups (const ResonatorBank& bank, const Sample* in, Sample* out, int frames)
{
    constexpr std::size_t count = groups * registers;
    Register stateRe[count], stateIm[count];
    for (std::size_t g = 0; g < count; ++g)
    {
        stateRe[g] = hn::Load (tag, bank.stateRe + g * inRegister);
        stateIm[g] = hn::Load (tag, bank.stateIm + g * inRegister);
    }

    for (int n = 0; n < frames; ++n)
    {
        const double x = in[n];
        const auto input = hn::Set (tag, x);
        Register sums[registers];
        clear (sums);
        for (std::size_t g = 0; g < count; ++g)
        {
            const auto poleRe = hn::Load (tag, bank.poleRe + g * inRegister),
                       poleIm = hn::Load (tag, bank.poleIm + g * inRegister);
            const auto residueRe = hn::Load (tag, bank.residueRe + g * inRegister);
            const auto residueIm = hn::Load (tag, bank.residueIm + g * inRegister);
            const auto re = stateRe[g], im = stateIm[g];
            auto& sum = sums[g % registers];
            sum = sum + (residueRe * re - residueIm * im);
            stateRe[g] = poleRe * re - poleIm * im + input;
            stateIm[g] = poleRe * im + poleIm * re;
        }
        out[n] = static_cast<Sample> (bank.direct * x + sumOfLanes (sums));
    }

    for (std::size_t g = 0; g < count; ++g)
    {
        hn::Store (stateRe[g], tag, bank.stateRe + g * inRegister);
        hn::Store (stateIm[g], tag, bank.stateIm + g * inRegister);
    }
}

template <typename Sample>
void runAny (const ResonatorBank& bank, const Sample* in, Sample* out, int frames)
{
    static_assert (ResonatorBank::mostGroups == 6);
    switch (bank.groups)
    {
    case 1: runGroups<1> (bank, in, out, frames); break;
    case 2: runGroups<2> (bank, in, out, frames); break;
    case 3: runGroups<3> (bank, in, out, frames); break;
    case 4: runGroups<4> (bank, in, out, frames); break;
    case 5: runGroups<5> (bank, in, out, frames); break;
    default: runGroups<6> (bank, in, out, frames); break;
    }
}

void runFloat (const ResonatorBank& bank, const float* in, float* out, int frames) { runAny (bank, in, out, frames); }
void runDouble (const ResonatorBank& bank, const double* in, double* out, int frames) { runAny (bank, in, out, frames); }

double sumOfSquares (const double* values, std::size_t groups)
{
    Register sums[registers];
    clear (sums);
    for (std::size_t g = 0; g < groups; ++g)
        for (std::size_t r = 0; r < registers; ++r)
        {
            const auto value = hn::LoadU (tag, values + g * lanes + r * inRegister);
            sums[r] = sums[r] + value * value;
        }
    return sumOfLanes (sums);
}

/** Of some columns at once, so that the reflector is read once for all of them. */
template <std::size_t together>
HWY_INLINE void reflectTogether (const double* reflector, double scale, double* first, std::size_t stride, std::size_t groups)
{
    Register sums[together][registers];
    for (auto& sum : sums)
        clear (sum);
    for (std::size_t g = 0; g < groups; ++g)
        for (std::size_t r = 0; r < registers; ++r)
        {
            const std::size_t at = g * lanes + r * inRegister;
            const auto m = hn::LoadU (tag, reflector + at);
            for (std::size_t c = 0; c < together; ++c)
                sums[c][r] = sums[c][r] + m * hn::LoadU (tag, first + c * stride + at);
        }
    Register shares[together];
    for (std::size_t c = 0; c < together; ++c)
        shares[c] = hn::Set (tag, scale * sumOfLanes (sums[c]));
    for (std::size_t at = 0; at < groups * lanes; at += inRegister)
    {
        const auto m = hn::LoadU (tag, reflector + at);
        for (std::size_t c = 0; c < together; ++c)
        {
            double* place = first + c * stride + at;
            hn::StoreU (hn::LoadU (tag, place) - shares[c] * m, tag, place);
        }
    }
}

void reflectColumns (const double* reflector, double scale, double* first, std::size_t stride, int columns, std::size_t groups)
{
    for (; columns >= 2; columns -= 2, first += 2 * stride)
        reflectTogether<2> (reflector, scale, first, stride, groups);
    if (columns == 1)
        reflectTogether<1> (reflector, scale, first, stride, groups);
}
}
HWY_AFTER_NAMESPACE();

#if HWY_ONCE // once, behind all the sets
namespace coldiron::simd
{
HWY_EXPORT (decimateInFrequency);
HWY_EXPORT (decimateInTime);
HWY_EXPORT (addProducts);
HWY_EXPORT (addDirect);
HWY_EXPORT (largestMagnitudeBits);
HWY_EXPORT (runFloat);
HWY_EXPORT (runDouble);
HWY_EXPORT (sumOfSquares);
HWY_EXPORT (reflectColumns);

void decimateInFrequency (double* re, double* im, const double* wRe, const double* wIm, int n, int len)
{
    HWY_DYNAMIC_DISPATCH (decimateInFrequency) (re, im, wRe, wIm, n, len);
}

void decimateInTime (double* re, double* im, const double* wRe, const double* wIm, int n, int len)
{
    HWY_DYNAMIC_DISPATCH (decimateInTime) (re, im, wRe, wIm, n, len);
}

void addProducts (double* sumRe, double* sumIm, const double* aRe, const double* aIm, const double* bRe, const double* bIm,
                  std::size_t count)
{
    HWY_DYNAMIC_DISPATCH (addProducts) (sumRe, sumIm, aRe, aIm, bRe, bIm, count);
}

void addDirect (double* y, const double* x, const double* taps, std::size_t count, int frames)
{
    HWY_DYNAMIC_DISPATCH (addDirect) (y, x, taps, count, frames);
}

std::int32_t largestMagnitudeBits (const float* samples, std::size_t count)
{
    return HWY_DYNAMIC_DISPATCH (largestMagnitudeBits) (samples, count);
}

void run (const ResonatorBank& bank, const float* in, float* out, int frames)
{
    HWY_DYNAMIC_DISPATCH (runFloat) (bank, in, out, frames);
}

void run (const ResonatorBank& bank, const double* in, double* out, int frames)
{
    HWY_DYNAMIC_DISPATCH (runDouble) (bank, in, out, frames);
}

double sumOfSquares (const double* values, std::size_t groups) { return HWY_DYNAMIC_DISPATCH (sumOfSquares) (values, groups); }

void reflectColumns (const double* reflector, double scale, double* first, std::size_t stride, int columns, std::size_t groups)
{
    HWY_DYNAMIC_DISPATCH (reflectColumns) (reflector, scale, first, stride, columns, groups);
}
}
#endif
