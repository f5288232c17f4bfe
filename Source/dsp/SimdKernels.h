#pragma once

#include <cstddef>
#include <cstdint>

/** The inner loops that are worth wide registers, each built for several instruction sets; the processor's own is taken
    when the program runs. All add in the same order and none fuses a product with a sum, so that the answers are the same to
    the last bit whatever the processor. None allocates, locks or throws. */
namespace coldiron::simd
{
constexpr int lanes = 4; ///< doubles worked on at a time, whatever the registers hold

/** A stage of a Fourier transform over n values whose pairs lie len apart: w holds len twiddle factors. */
void decimateInFrequency (double* re, double* im, const double* wRe, const double* wIm, int n, int len);
/** A stage of the inverse transform, not divided by the length: decimation in time with conjugate twiddle factors. */
void decimateInTime (double* re, double* im, const double* wRe, const double* wIm, int n, int len);

/** sum += a b, complex. */
void addProducts (double* sumRe, double* sumIm, const double* aRe, const double* aIm, const double* bRe, const double* bIm,
                  std::size_t count);
/** y[i] += sum over k of taps[k] x[i - k]: x stands behind count - 1 samples or more. */
void addDirect (double* y, const double* x, const double* taps, std::size_t count, int frames);

/** The largest absolute sample as the bits of a float: infinity above all numbers, what is no number above that. */
std::int32_t largestMagnitudeBits (const float* samples, std::size_t count);

/** Complex one-pole resonators side by side, in groups of `lanes`; every array is aligned to 32 bytes. */
struct ResonatorBank
{
    static constexpr int mostGroups = 6;

    int groups; ///< 1 to mostGroups
    const double *poleRe, *poleIm, *residueRe, *residueIm;
    double *stateRe, *stateIm;
    double direct;
};

/** out = direct in + sum of Re (residue state), then state = pole state + in, frame by frame; out may be in. */
void run (const ResonatorBank&, const float* in, float* out, int frames);
void run (const ResonatorBank&, const double* in, double* out, int frames);

/** The sum of the squares of groups x lanes values. */
double sumOfSquares (const double* values, std::size_t groups);
/** Takes from each column its share along the mirror: column -= scale (mirror . column) mirror. Columns of groups x lanes
    values, stride values apart. */
void reflectColumns (const double* mirror, double scale, double* first, std::size_t stride, int columns, std::size_t groups);
}
