// Convolution without latency held to convolution as it is defined, sum of products; nothing from elsewhere is needed.
#include "dsp/WhiteNoise.h"
#include "engine/OutputChain.h"
#include "support/Fft.h"

#include <catch2/catch.hpp>

#include <cmath>
#include <complex>
#include <cstdio>
#include <ctime>

namespace convolverTest
{
using namespace coldiron;

namespace
{
std::vector<double> noise (size_t count, int skip)
{
    WhiteNoise white;
    for (int i = 0; i < skip; ++i)
        white.next();
    std::vector<double> x (count);
    for (double& sample : x)
        sample = 0.2 * white.next();
    return x;
}

std::vector<double> decaying (size_t taps)
{
    auto h = noise (taps, 7);
    for (size_t i = 0; i < taps; ++i)
        h[i] *= std::exp (-6.0 * static_cast<double> (i) / static_cast<double> (taps));
    return h;
}

double direct (const std::vector<double>& x, const std::vector<double>& h, size_t n)
{
    double sum = 0.0;
    for (size_t k = 0; k < h.size() && k <= n; ++k)
        sum += h[k] * x[n - k];
    return sum;
}

/** In blocks of many sizes, as hosts give them. */
std::vector<std::vector<double>> convolved (Convolver& convolver, std::vector<std::vector<double>> x)
{
    constexpr int sizes[] = { 64, 1, 17, 128, 1000, 3, 512 };
    size_t at = 0;
    for (int turn = 0; at < x[0].size(); ++turn)
    {
        const auto count = std::min (x[0].size() - at, static_cast<size_t> (sizes[turn % 7]));
        double* channels[2] = { x[0].data() + at, x.size() > 1 ? x[1].data() + at : nullptr };
        convolver.process (channels, static_cast<int> (x.size()), static_cast<int> (count));
        at += count;
    }
    return x;
}

double db (double ratio) { return 20.0 * std::log10 (ratio + 1e-300); }
}

TEST_CASE ("the transform is the discrete Fourier transform, and its inverse gives back what went in")
{
    const Fft fft (256);
    auto re = noise (256, 0), im = noise (256, 300);
    const auto re0 = re, im0 = im;
    fft.forward (re.data(), im.data());
    for (int k : { 0, 1, 5, 127, 128, 255 })
    {
        std::complex<double> sum;
        for (int n = 0; n < 256; ++n)
            sum += std::complex<double> (re0[static_cast<size_t> (n)], im0[static_cast<size_t> (n)])
                   * std::polar (1.0, -2.0 * M_PI * k * n / 256.0);
        const auto place = static_cast<size_t> (fft.bitReversedIndex (k));
        CHECK (std::abs (std::complex<double> (re[place], im[place]) - sum) < 1e-12);
    }
    fft.inverse (re.data(), im.data());
    for (size_t i = 0; i < 256; ++i)
        REQUIRE (std::abs (re[i] / 256.0 - re0[i]) + std::abs (im[i] / 256.0 - im0[i]) < 1e-14);
    CHECK_THROWS_AS (Fft (100), std::invalid_argument);
}

TEST_CASE ("convolution of any length is direct convolution within -120 dB, from the first sample on")
{
    const size_t taps =
        GENERATE (size_t (1), size_t (128), size_t (129), size_t (1000), size_t (8192), size_t (8193), size_t (30000));
    const auto h = decaying (taps), left = noise (60000, 1000), right = noise (60000, 5000);
    Convolver convolver (h);
    const auto y = convolved (convolver, { left, right });
    double worst = 0.0, loudest = 0.0;
    for (size_t n = 0; n < left.size(); n += n < 400 ? 1 : 37)
    {
        const double expected = direct (left, h, n);
        worst = std::max ({ worst, std::abs (y[0][n] - expected), std::abs (y[1][n] - direct (right, h, n)) });
        loudest = std::max (loudest, std::abs (expected));
    }
    INFO (taps << " taps: " << db (worst / loudest) << " dB");
    if (taps == 30000)
        std::printf ("convolution, 30000 taps, against direct: %.0f dB\n", db (worst / loudest));
    CHECK (db (worst / loudest) < -120.0);

    convolver.reset();
    CHECK (convolved (convolver, { left, right }) == y); // nothing stays
    Convolver mono (h);
    const auto one = convolved (mono, { left });
    for (size_t n = 0; n < left.size(); n += 11)
        REQUIRE (std::abs (one[0][n] - y[0][n]) < 1e-12);
}

TEST_CASE ("an impulse of one sample changes nothing, and a delayed one only delays")
{
    OutputChainChoice file { OutputSound::file, "identity.wav", 0.0 };
    OutputChain identity (file, { 1.0f }, 48000.0, -20.0);
    CHECK_FALSE (identity.isNone());
    const auto x = noise (20000, 0);
    std::vector<std::vector<float>> y { { x.begin(), x.end() } };
    const auto dry = y;
    identity.run (y);
    for (size_t i = 0; i < x.size(); ++i)
        REQUIRE (std::abs (y[0][i] - dry[0][i]) < 1e-6 * 0.2); // -120 dB of the noise's rms

    std::vector<float> later (5000, 0.0f);
    later[4321] = 0.25f; // its level is nobody's business
    OutputChain delay (file, later, 48000.0, -20.0);
    auto z = dry;
    delay.run (z);
    for (size_t i = 0; i < x.size(); ++i)
        REQUIRE (std::abs (z[0][i] - (i < 4321 ? 0.0f : dry[0][i - 4321])) < 2e-7);
    CHECK (delay.curve().at (1000.0) == Approx (1.0).epsilon (1e-9));
}

TEST_CASE ("two seconds at 48 and 192 kHz, stereo", "[.speed]")
{
    for (double rate : { 48000.0, 192000.0 })
    {
        Convolver convolver (decaying (static_cast<size_t> (2.0 * rate)));
        auto a = noise (64, 0), b = a;
        double* channels[] = { a.data(), b.data() };
        double worst = 0.0, sum = 0.0;
        const int rounds = static_cast<int> (3.0 * rate / 64.0);
        for (int i = 0; i < rounds; ++i)
        {
            const std::clock_t began = std::clock();
            convolver.process (channels, 2, 64);
            const double took = static_cast<double> (std::clock() - began) / CLOCKS_PER_SEC;
            worst = std::max (worst, took);
            sum += took;
        }
        std::printf ("2 s at %g Hz: %.1f %% of a core, worst block of 64 %.2f ms of %.2f\n", rate, 100.0 * sum / 3.0, 1e3 * worst,
                     64e3 / rate);
    }
}
}
