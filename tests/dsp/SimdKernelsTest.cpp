// The inner loops give the same answers, to the last bit, with every instruction set of this processor, and those of the
// plain loops of their definitions.
#include "dsp/SimdKernels.h"
#include "dsp/WhiteNoise.h"

#include <catch2/catch.hpp>
#include <hwy/targets.h>

#include <bit>
#include <cmath>
#include <functional>
#include <limits>

namespace simdKernelsTest
{
using namespace coldiron;

namespace
{
constexpr auto lanes = static_cast<size_t> (simd::lanes);

std::vector<double> noise (size_t count)
{
    WhiteNoise white;
    std::vector<double> x (count);
    for (double& sample : x)
        sample = white.next();
    return x;
}

/** Calls work with every instruction set that the processor has, and takes the best again. */
void withEachSet (const std::function<void()>& work)
{
    int sets = 0;
    for (auto rest = hwy::SupportedTargets(); rest != 0; rest &= rest - 1, ++sets)
    {
        INFO ("instruction set " << sets);
        hwy::SetSupportedTargetsForTest (rest & -rest);
        hwy::GetChosenTarget().DeInit();
        work();
    }
    hwy::SetSupportedTargetsForTest (0);
    hwy::GetChosenTarget().DeInit();
    CHECK (sets >= 1);
}

/** (first + third) + (second + fourth) of the sums by place in a group. */
double foldedSum (const std::vector<double>& terms)
{
    double sum[lanes] = {};
    for (size_t i = 0; i < terms.size(); ++i)
        sum[i % lanes] += terms[i];
    return (sum[0] + sum[2]) + (sum[1] + sum[3]);
}
}

TEST_CASE ("sums of squares and mirrored columns are the plain sums")
{
    constexpr size_t groups = 13, count = groups * lanes, columns = 3, stride = count + lanes;
    const auto mirror = noise (count), before = noise (columns * stride);

    std::vector<double> squares (count);
    for (size_t i = 0; i < count; ++i)
        squares[i] = mirror[i] * mirror[i];
    auto expected = before;
    for (size_t c = 0; c < columns; ++c)
    {
        std::vector<double> products (count);
        for (size_t i = 0; i < count; ++i)
            products[i] = mirror[i] * before[c * stride + i];
        const double share = 0.7 * foldedSum (products);
        for (size_t i = 0; i < count; ++i)
            expected[c * stride + i] -= share * mirror[i];
    }

    withEachSet (
        [&]
        {
            CHECK (simd::sumOfSquares (mirror.data(), groups) == foldedSum (squares));
            auto matrix = before;
            simd::reflectColumns (mirror.data(), 0.7, matrix.data(), stride, columns, groups);
            CHECK (matrix == expected);
        });
}

TEST_CASE ("resonators side by side are their recursion, however many there are")
{
    constexpr size_t frames = 200;
    constexpr int most = simd::ResonatorBank::mostGroups;
    struct alignas (32) Row
    {
        double at[most * simd::lanes];
    };
    Row poleRe {}, poleIm {}, residueRe {}, residueIm {};
    for (size_t p = 0; p < most * lanes; ++p)
    {
        const double turn = 0.1 + 0.11 * static_cast<double> (p);
        poleRe.at[p] = 0.97 * std::cos (turn);
        poleIm.at[p] = 0.97 * std::sin (turn);
        residueRe.at[p] = 0.3 / static_cast<double> (p + 1);
        residueIm.at[p] = 0.02 * static_cast<double> (p);
    }
    const auto in = noise (frames);

    for (int groups = 1; groups <= most; ++groups)
    {
        INFO (groups << " groups");
        const size_t count = static_cast<size_t> (groups) * lanes;
        std::vector<double> re (count), im (count), expected;
        for (const double x : in)
        {
            std::vector<double> terms (count);
            for (size_t p = 0; p < count; ++p)
            {
                terms[p] = residueRe.at[p] * re[p] - residueIm.at[p] * im[p];
                const double before = re[p];
                re[p] = poleRe.at[p] * before - poleIm.at[p] * im[p] + x;
                im[p] = poleRe.at[p] * im[p] + poleIm.at[p] * before;
            }
            expected.push_back (0.4 * x + foldedSum (terms));
        }
        withEachSet (
            [&]
            {
                Row stateRe {}, stateIm {};
                const simd::ResonatorBank bank { groups,       poleRe.at,  poleIm.at,  residueRe.at,
                                                 residueIm.at, stateRe.at, stateIm.at, 0.4 };
                auto out = in;
                simd::run (bank, out.data(), out.data(), static_cast<int> (frames) / 2); // in place, and the state is kept
                simd::run (bank, out.data() + frames / 2, out.data() + frames / 2, static_cast<int> (frames) / 2);
                CHECK (out == expected);
                CHECK (stateRe.at[count - 1] == re[count - 1]);
                CHECK (stateIm.at[count - 1] == im[count - 1]);
            });
    }
}

TEST_CASE ("stages of a transform and products of spectra are the plain ones")
{
    constexpr int n = 32, len = 8;
    constexpr auto size = static_cast<size_t> (n);
    const auto re = noise (n), im = noise (n + 7), wRe = noise (len), wIm = noise (len + 3);
    std::vector<double> downRe = re, downIm (im.begin(), im.begin() + n), upRe = downRe, upIm = downIm, sumRe = re, sumIm = re;
    for (size_t start = 0; start < size; start += 2 * len)
        for (size_t t = 0; t < len; ++t)
        {
            const size_t a = start + t, b = a + len;
            const double dRe = re[a] - re[b], dIm = im[a] - im[b];
            downRe[a] = re[a] + re[b];
            downIm[a] = im[a] + im[b];
            downRe[b] = dRe * wRe[t] - dIm * wIm[t];
            downIm[b] = dRe * wIm[t] + dIm * wRe[t];
            const double tRe = re[b] * wRe[t] + im[b] * wIm[t], tIm = im[b] * wRe[t] - re[b] * wIm[t];
            upRe[a] = re[a] + tRe;
            upIm[a] = im[a] + tIm;
            upRe[b] = re[a] - tRe;
            upIm[b] = im[a] - tIm;
        }
    for (size_t i = 0; i < size; ++i)
    {
        sumRe[i] += re[i] * im[i] - im[i] * re[i];
        sumIm[i] += re[i] * re[i] + im[i] * im[i];
    }

    withEachSet (
        [&]
        {
            std::vector<double> x = re, y (im.begin(), im.begin() + n);
            simd::decimateInFrequency (x.data(), y.data(), wRe.data(), wIm.data(), n, len);
            CHECK (x == downRe);
            CHECK (y == downIm);
            x = re;
            y.assign (im.begin(), im.begin() + n);
            simd::decimateInTime (x.data(), y.data(), wRe.data(), wIm.data(), n, len);
            CHECK (x == upRe);
            CHECK (y == upIm);
            x = y = re;
            simd::addProducts (x.data(), y.data(), re.data(), im.data(), im.data(), re.data(), size);
            CHECK (x == sumRe);
            CHECK (y == sumIm);
        });
}

TEST_CASE ("taps one after another, and the largest of samples that may be no numbers")
{
    constexpr size_t taps = 9, frames = 37;
    const auto x = noise (taps + frames), tap = noise (taps);
    std::vector<double> expected (frames, 0.5);
    for (size_t k = 0; k < taps; ++k)
        for (size_t i = 0; i < frames; ++i)
            expected[i] += tap[k] * x[taps + i - k];

    std::vector<float> samples (53, 0.25f);
    samples[17] = -3.5f;
    auto withNan = samples;
    withNan[51] = -std::numeric_limits<float>::quiet_NaN();

    withEachSet (
        [&]
        {
            std::vector<double> y (frames, 0.5);
            simd::addDirect (y.data(), x.data() + taps, tap.data(), taps, static_cast<int> (frames));
            CHECK (y == expected);
            CHECK (simd::largestMagnitudeBits (samples.data(), samples.size()) == std::bit_cast<int32_t> (3.5f));
            CHECK (simd::largestMagnitudeBits (withNan.data(), withNan.size())
                   > std::bit_cast<int32_t> (std::numeric_limits<float>::infinity()));
        });
}
}
