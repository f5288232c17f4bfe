// Bars of the switch click: 1 kHz sine, tone 10 -> 0, at most -55 dB near and -95 dB above 2.5 kHz (our own bar; the tone
// control's circuit is N1 to N8 of a loaded single coil, computed in closed form below).
#include "engine/SwitchEngine.h"
#include "filter/FilterDesigner.h"
#include "support/Fft.h"
#include "support/WholeRender.h"

#include <catch2/catch.hpp>

#include <cmath>
#include <complex>
#include <cstdio>
#include <ctime>
#include <numbers>

namespace switchEngineTest
{
using namespace coldiron;

namespace
{
constexpr double pi = std::numbers::pi;

/** A single coil (6k, 2.5 H, 110 pF) with volume and tone 250k, 22 nF, 500 pF cable and 1M: plain nodal algebra. */
double loadedCoil (double hz, double toneOhms)
{
    const std::complex<double> s (0.0, 2.0 * pi * hz);
    const auto tone = 1.0 / (toneOhms + 1.0 / (s * 22e-9));
    const auto load = 1.0 / 250e3 + 1.0 / 1e6 + s * 610e-12 + tone;
    return std::abs (1.0 / (1.0 + (6e3 + s * 2.5) * load));
}

ModalFilter toneFilter (double rate, double toneOhms)
{
    const auto designer = FilterDesigner::shared (rate);
    std::vector<double> magnitude;
    for (double hz : designer->gridHz())
        magnitude.push_back (loadedCoil (hz, toneOhms) / loadedCoil (hz, 250e3));
    return designer->design (magnitude, false);
}

EngineDesign designOf (const ModalFilter& filter, double gain = 1.0)
{
    EngineDesign design;
    design.filter = filter;
    design.gain = gain;
    design.probe();
    return design;
}

std::vector<float> sine (double hz, double rate, size_t frames)
{
    std::vector<float> x (frames);
    for (size_t i = 0; i < frames; ++i)
        x[i] = static_cast<float> (0.5 * std::sin (2.0 * pi * hz * static_cast<double> (i) / rate));
    return x;
}

void run (SwitchEngine& engine, std::vector<float>& x, size_t from, size_t to, size_t block)
{
    for (size_t at = from; at < to; at += block)
    {
        float* channel = x.data() + at;
        engine.process (&channel, 1, static_cast<int> (std::min (block, to - at)));
    }
}

/** Modified Bessel function of order 0, power series. */
double besselZero (double x)
{
    double sum = 1.0, term = 1.0;
    for (int k = 1; k < 80; ++k)
        sum += term *= (x / (2.0 * k)) * (x / (2.0 * k));
    return sum;
}

struct Click
{
    double near = -300.0, above = -300.0; ///< dB re the tone: 250 Hz and more from it, and above 2.5 kHz
};

/** The worst of many short spectra (2048 samples, Kaiser window with beta 16: side lobes below -120 dB) that slide over
    the switch. */
Click clickOf (const std::vector<float>& y, double rate, double hz)
{
    constexpr size_t n = 2048;
    Click click;
    for (size_t start = 0; start + n <= y.size(); start += 128)
    {
        std::vector<double> x (n);
        for (size_t i = 0; i < n; ++i)
        {
            const double u = 2.0 * static_cast<double> (i) / (n - 1) - 1.0;
            x[i] = y[start + i] * besselZero (16.0 * std::sqrt (1.0 - u * u)) / besselZero (16.0);
        }
        const auto bins = support::spectrumOf (x, n);
        double tone = 0.0;
        for (const auto& bin : bins)
            tone = std::max (tone, std::abs (bin));
        for (size_t k = 1; k < bins.size(); ++k)
        {
            const double f = static_cast<double> (k) * rate / n, db = 20.0 * std::log10 (std::abs (bins[k]) / tone + 1e-18);
            if (std::abs (f - hz) > 250.0)
                click.near = std::max (click.near, db);
            if (f >= 2500.0)
                click.above = std::max (click.above, db);
        }
    }
    return click;
}

double worstDifference (const std::vector<float>& a, const std::vector<float>& b, size_t from, size_t to)
{
    double worst = 0.0;
    for (size_t i = from; i < to; ++i)
        worst = std::max (worst, static_cast<double> (std::abs (a[i] - b[i])));
    return worst;
}
}

TEST_CASE ("switching the tone from 10 to 0 under a sine does not click")
{
    const double rate = GENERATE (44100.0, 48000.0, 96000.0);
    const auto second = static_cast<size_t> (rate);
    const ModalFilter bright = ModalFilter::unity (rate), dark = toneFilter (rate, 1.0);
    auto x = sine (1000.0, rate, second);
    const auto plain = renderTake ({ x }, dark).channels[0];

    SwitchEngine engine;
    engine.prepare (rate);
    engine.publish (designOf (bright));
    auto y = x;
    run (engine, y, 0, second / 2, 128);
    engine.publish (designOf (dark));
    run (engine, y, second / 2, second, 128);

    const auto around = [&] (const std::vector<float>& all) {
        return std::vector<float> (all.begin() + static_cast<long> (second / 4),
                                   all.begin() + static_cast<long> (3 * second / 4));
    };
    const Click click = clickOf (around (y), rate, 1000.0);
    std::printf ("switch click at %g Hz: near %.1f dB, above 2.5 kHz %.1f dB\n", rate, click.near, click.above);
    CHECK (click.near < -55.0);
    CHECK (click.above < -95.0);

    // The check hears a click where there is one: the two renderings put together without a fade.
    auto hard = x;
    std::copy (plain.begin() + static_cast<long> (second / 2), plain.end(), hard.begin() + static_cast<long> (second / 2));
    const Click loud = clickOf (around (hard), rate, 1000.0);
    CHECK (loud.near > -55.0);
    CHECK (loud.above > -95.0);

    // Once the fade and the circuit's own ringing are over it is the plain rendering.
    CHECK (worstDifference (y, plain, second - second / 8, second) < 1e-6);
}

TEST_CASE ("a design that is there from the start plays without a fade, in any block size")
{
    const double rate = 48000.0;
    const ModalFilter dark = toneFilter (rate, 1.0);
    const double gain = 0.7;
    const auto x = sine (440.0, rate, 9600);
    auto plain = renderTake ({ x }, dark, gain).channels[0];
    for (size_t block : { size_t (1), size_t (17), size_t (64), size_t (1000) })
    {
        SwitchEngine engine;
        engine.prepare (rate);
        engine.publish (designOf (dark, gain));
        auto y = x;
        run (engine, y, 0, y.size(), block);
        CHECK (worstDifference (y, plain, 0, y.size()) < 1e-7);
    }
}

TEST_CASE ("both sides of a stereo take go through the same filter")
{
    const double rate = 48000.0;
    const ModalFilter dark = toneFilter (rate, 1.0);
    const auto left = sine (440.0, rate, 4800), right = sine (1234.0, rate, 4800);
    const auto plain = renderTake ({ left, right }, dark).channels;
    SwitchEngine engine;
    engine.prepare (rate);
    engine.publish (designOf (dark));
    auto a = left, b = right;
    float* channels[] = { a.data(), b.data() };
    engine.process (channels, 2, 4800);
    CHECK (worstDifference (a, plain[0], 0, 4800) < 1e-7);
    CHECK (worstDifference (b, plain[1], 0, 4800) < 1e-7);
    CHECK (worstDifference (a, b, 0, 4800) > 0.1);
}

TEST_CASE ("the newest of many pending designs wins")
{
    const double rate = 48000.0;
    auto x = sine (1000.0, rate, 48000);
    const auto dry = x;
    SwitchEngine engine;
    engine.prepare (rate);
    engine.publish (designOf (ModalFilter::unity (rate)));
    run (engine, x, 0, 4800, 64);
    for (int i = 1; i <= 9; ++i)
    {
        engine.publish (designOf (ModalFilter::unity (rate), 1.0 - 0.1 * i));
        run (engine, x, static_cast<size_t> (4800 + 64 * (i - 1)), static_cast<size_t> (4800 + 64 * i), 64);
    }
    run (engine, x, 4800 + 64 * 9, x.size(), 64);
    CHECK_FALSE (engine.isFading());
    for (size_t i = 24000; i < 48000; ++i)
        REQUIRE (x[i] == Approx (0.1 * dry[i]).margin (1e-6));
    // The first fade was at most 50 ms, and the newest began right after it: no step in between was heard for long.
    CHECK (worstDifference (x, dry, 4800 + 4801, 24000) > 0.4);
}

TEST_CASE ("bypass gives the take back bit for bit, and fades")
{
    const double rate = 48000.0;
    const auto dry = sine (1000.0, rate, 48000);
    auto x = dry;
    SwitchEngine engine;
    engine.setTrim (2.0f);
    engine.setHumGain (1.0f);
    engine.prepare (rate);
    EngineDesign design = designOf (toneFilter (rate, 1.0), 3.0);
    design.hum.samples.fill (0.25f);
    engine.publish (design);
    run (engine, x, 0, 12000, 128);
    engine.setBypassed (true);
    run (engine, x, 12000, 36000, 128);
    CHECK (worstDifference (x, dry, 12000, 12010) > 1e-3); // it does not jump
    CHECK (worstDifference (x, dry, 12000 + 961, 36000) == 0.0);
    engine.setBypassed (false);
    run (engine, x, 36000, 48000, 128);
    CHECK (worstDifference (x, dry, 40000, 48000) > 0.1);
}

TEST_CASE ("what is no number does not stay")
{
    SwitchEngine engine;
    engine.prepare (48000.0);
    engine.publish (designOf (toneFilter (48000.0, 1.0)));
    auto x = sine (1000.0, 48000.0, 9600);
    x[100] = std::nanf ("");
    x[200] = INFINITY;
    run (engine, x, 0, x.size(), 64);
    for (float sample : x)
        REQUIRE (std::isfinite (sample));
    CHECK (worstDifference (x, std::vector<float> (x.size()), 5000, 9600) > 0.01);
}

TEST_CASE ("a design for another rate is not played")
{
    SwitchEngine engine;
    engine.prepare (48000.0);
    engine.publish (designOf (ModalFilter::silence (44100.0)));
    auto x = sine (1000.0, 48000.0, 4800);
    const auto dry = x;
    run (engine, x, 0, x.size(), 64);
    CHECK (worstDifference (x, dry, 0, x.size()) < 1e-9);
}

TEST_CASE ("running one option, order 10, stereo", "[.speed]")
{
    const double rate = 48000.0;
    const ModalFilter dark = toneFilter (rate, 1.0);
    SwitchEngine engine;
    engine.prepare (rate);
    engine.publish (designOf (dark));
    auto a = sine (440.0, rate, 512), b = a;
    float* channels[] = { a.data(), b.data() };
    const int rounds = 20000;
    const auto measure = [&] (const char* what, auto&& once)
    {
        const std::clock_t began = std::clock(); // the processor's time: other programs do not count
        for (int i = 0; i < rounds; ++i)
            once();
        const double ns = 1e9 * static_cast<double> (std::clock() - began) / CLOCKS_PER_SEC / (rounds * 512.0);
        std::printf ("%s, %zu poles, stereo: %.1f ns a frame\n", what, dark.poles.size(), ns);
    };
    measure ("engine", [&] { engine.process (channels, 2, 512); });
    FilterRunner runner;
    runner.use (dark);
    measure ("filter alone",
             [&]
             {
                 runner.process (0, a.data(), a.data(), 512);
                 runner.process (1, b.data(), b.data(), 512);
             });
}
}
