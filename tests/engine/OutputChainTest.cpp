#include "engine/OutputChain.h"
#include "engine/HeardLevel.h"
#include "engine/SwitchEngine.h"
#include "metering/Loudness.h"
#include "support/Fft.h"

#include <catch2/catch.hpp>

#include <cmath>
#include <cstdio>

namespace afterJackTest
{
using namespace coldiron;

namespace
{
double db (double ratio) { return 20.0 * std::log10 (ratio + 1e-300); }

std::vector<float> sine (double hz, double rate, size_t frames, double amplitude)
{
    std::vector<float> x (frames);
    for (size_t i = 0; i < frames; ++i)
        x[i] = static_cast<float> (amplitude * std::sin (2.0 * M_PI * hz * static_cast<double> (i) / rate));
    return x;
}

OutputChainChoice amplifier (double driveDb = 0.0) { return { OutputSound::amplifier, {}, driveDb }; }
}

TEST_CASE ("the amplifier is the curve that is written beside it, at every rate")
{
    // Second-order sections at their own frequencies, in closed form: a high-pass and a low-pass have the gain Q, a peaking
    // section its own (R. Bristow-Johnson, Audio EQ Cookbook, from memory).
    const auto section = [] (double hz, double f, double q, int kind, double peakDb)
    {
        const std::complex<double> s (0.0, hz / f);
        const double a = std::pow (10.0, peakDb / 40.0);
        return db (std::abs (kind == 0   ? s * s / (s * s + s / q + 1.0)
                             : kind == 1 ? 1.0 / (s * s + s / q + 1.0)
                                         : (s * s + s * a / q + 1.0) / (s * s + s / (a * q) + 1.0)));
    };
    CHECK (section (95.0, 95.0, 1.1, 0, 0.0) == Approx (db (1.1)).margin (1e-9));
    CHECK (section (420.0, 420.0, 0.7, 2, -5.0) == Approx (-5.0).margin (1e-9));
    const auto written = [&] (double hz)
    {
        return section (hz, 95.0, 1.1, 0, 0.0) + section (hz, 420.0, 0.7, 2, -5.0) + section (hz, 2600.0, 1.4, 2, 6.0)
               + section (hz, 4700.0, 0.8, 1, 0.0) + section (hz, 4700.0, 1.0, 1, 0.0);
    };
    const double offset = amplifierDb (1000.0) - written (1000.0);
    double power = 0.0;
    for (int i = 0; i < 144; ++i)
        power += std::pow (10.0, (written (80.0 * std::exp2 (i / 24.0)) + offset) / 10.0) / 144.0;
    CHECK (power == Approx (1.0).epsilon (1e-6)); // mean power, equal parts of six octaves

    const double rate = GENERATE (44100.0, 48000.0, 96000.0, 192000.0);
    OutputChain chain (amplifier(), {}, rate, -20.0);
    for (double hz : { 60.0, 95.0, 420.0, 1000.0, 2600.0, 4700.0, 9000.0, 15000.0 })
    {
        std::vector<std::vector<float>> x { sine (hz, rate, static_cast<size_t> (rate), 0.25) };
        chain.run (x);
        double square = 0.0;
        for (size_t i = x[0].size() / 2; i < x[0].size(); ++i)
            square += static_cast<double> (x[0][i]) * x[0][i];
        const double level = 10.0 * std::log10 (square / static_cast<double> (x[0].size() / 2)) - db (0.25 / std::sqrt (2.0));
        CHECK (level == Approx (written (hz) + offset).margin (0.05));
    }
}

TEST_CASE ("half-bands pass what they should and stop the rest")
{
    const double transition = GENERATE (0.035, 0.125);
    const auto coefficients = halfBandCoefficients (96.0, transition);
    REQUIRE (coefficients.size() <= static_cast<size_t> (HalfBand::most));
    // H (z) = 1/2 (A0 (z^2) + z^-1 A1 (z^2)) on the unit circle.
    const auto gain = [&] (double f)
    {
        const auto z = std::polar (1.0, -2.0 * M_PI * f);
        std::complex<double> a[2] = { 1.0, 1.0 };
        for (size_t i = 0; i < coefficients.size(); ++i)
            a[i % 2] *= (coefficients[i] + z * z) / (1.0 + coefficients[i] * z * z);
        return std::abs (0.5 * (a[0] + z * a[1]));
    };
    for (double f = 0.0; f <= 0.25 - transition; f += 0.001)
        REQUIRE (db (gain (f)) == Approx (0.0).margin (1e-6));
    for (double f = 0.25 + transition; f <= 0.5; f += 0.001)
        REQUIRE (db (gain (f)) < -95.5);
    CHECK (db (gain (0.25)) == Approx (-3.0103).margin (1e-6));
}

TEST_CASE ("drive: harmonics where they belong, little alias, level kept")
{
    // Harmonics of tanh: odd ones alone. What is no harmonic below 20 kHz is alias or noise.
    const double rate = GENERATE (44100.0, 48000.0, 96000.0);
    const size_t n = 1u << 16;
    for (const double wanted : { 1245.0, 5000.0 })
        for (const double drive : { 6.0, 24.0 })
        {
            const double bin = std::round (wanted * static_cast<double> (n) / rate), hz = bin * rate / static_cast<double> (n);
            const double amplitude = std::sqrt (2.0) * humEmfFor (-20.0, 0.0);
            Overdrive stage (rate, drive, amplitude);
            auto x = sine (hz, rate, 2 * n, amplitude);
            std::vector<double> y (x.begin(), x.end());
            stage.process (0, y.data(), static_cast<int> (y.size()));
            const auto spectrum =
                support::spectrumOf ({ y.begin() + static_cast<long> (n), y.end() }, n); // whole periods: no window
            const double tone = std::abs (spectrum[static_cast<size_t> (bin)]);
            double alias = 0.0, third = 0.0;
            for (size_t k = 1; k < spectrum.size() && static_cast<double> (k) * rate / static_cast<double> (n) < 20000.0; ++k)
            {
                const double harmonic = static_cast<double> (k) / bin;
                if (std::abs (harmonic - std::round (harmonic)) > 1e-9)
                    alias = std::max (alias, std::abs (spectrum[k]));
                else if (harmonic == 3.0)
                    third = std::abs (spectrum[k]);
            }
            std::printf ("drive %.0f dB, %.0f Hz at %.0f Hz: third %.1f dB, worst alias %.1f dB of the tone\n", drive, hz, rate,
                         db (third / tone), db (alias / tone));
            CHECK (db (alias / tone) < -80.0);
            if (hz * 3.0 < 20000.0)
                CHECK (db (third / tone) > (drive > 12.0 ? -15.0 : -40.0));
        }
    // k = 0.25 at 0 dB, tanh u = u - u^3/3: a third harmonic of k^2/12, -45.7 dB.
    const Overdrive mild (48000.0, 1e-9, 1.0);
    CHECK (mild.shape (1.0) == Approx (1.0).epsilon (1e-12));
    CHECK (mild.shape (-0.5) == -mild.shape (0.5));
    CHECK (mild.smallSignalGain() == Approx (0.25 / std::tanh (0.25)).epsilon (1e-6));
}

TEST_CASE ("soft sounds behind a drive are late by less than a tenth of a millisecond, and nothing comes early")
{
    Overdrive stage (48000.0, 6.0, 0.1);
    std::vector<double> x (4096, 0.0);
    x[100] = 1e-6;
    stage.process (0, x.data(), 4096);
    for (size_t i = 0; i < 100; ++i)
        REQUIRE (x[i] == 0.0);
    CHECK (x[100] != 0.0);
    double sum = 0.0, moment = 0.0; // group delay at 0 Hz: the impulse response's centre
    for (size_t i = 100; i < x.size(); ++i)
    {
        sum += x[i];
        moment += x[i] * static_cast<double> (i - 100);
    }
    std::printf ("drive at 48 kHz: %.2f samples of group delay at low frequencies\n", moment / sum);
    CHECK (moment / sum < 4.8);
}

TEST_CASE ("the engine plays the chain as whole pieces have it, and changes it without a click or an old sound")
{
    const double rate = 48000.0;
    SwitchEngine engine;
    engine.prepare (rate);
    EngineDesign plain;
    plain.filter = ModalFilter::unity (rate);
    plain.probe();
    engine.publish (std::make_unique<OutputChain> (amplifier (6.0), std::vector<float>(), rate, -20.0));
    engine.publish (plain);
    const auto x = sine (1000.0, rate, 48000, 0.1);
    const auto play = [&] (std::vector<float> y)
    {
        for (size_t at = 0; at < y.size(); at += 128)
        {
            float* channel = y.data() + at;
            engine.process (&channel, 1, static_cast<int> (std::min<size_t> (128, y.size() - at)));
        }
        return y;
    };
    std::vector<std::vector<float>> whole { x };
    OutputChain (amplifier (6.0), {}, rate, -20.0).run (whole);
    CHECK (play (x) == whole[0]);

    engine.publish (std::make_unique<OutputChain> (OutputChainChoice {}, std::vector<float>(), rate, -20.0));
    const auto changing = play (x);
    double step = 0.0;
    for (size_t i = 1; i < changing.size(); ++i)
        step = std::max (step, static_cast<double> (std::abs (changing[i] - changing[i - 1])));
    CHECK (step < 0.1 * 2.0 * M_PI * 1000.0 / rate * 2.5); // no steeper than the louder of the two sines
    CHECK (play (x) == x);                                 // none is nothing, to the bit

    engine.publish (std::make_unique<OutputChain> (amplifier(), std::vector<float>(), 44100.0, -20.0));
    CHECK (play (x) == x); // another rate's is not played
}

TEST_CASE ("matching behind a chain is to a tenth of a loudness unit, with drive too")
{
    const double rate = 48000.0;
    std::vector<float> take (6 * 48000);
    for (size_t i = 0; i < take.size(); ++i)
        for (const double hz : { 110.0, 220.0, 330.0, 1100.0, 3300.0 })
            take[i] += static_cast<float> (0.05 * std::sin (2.0 * M_PI * hz * static_cast<double> (i) / rate)
                                           * std::exp (-2.0 * std::fmod (static_cast<double> (i) / rate, 1.0)));
    auto option = take;
    for (size_t i = option.size() - 1; i > 0; --i)
        option[i] = 0.3f * (option[i] - 0.8f * option[i - 1]); // brighter and softer
    const double takeLufs = loudnessOf ({ take }, rate);
    for (const double drive : { 0.0, 6.0, 24.0 })
    {
        OutputChain chain (amplifier (drive), {}, rate, takeLufs);
        std::vector<std::vector<float>> heard { take };
        chain.run (heard);
        const double wanted = loudnessOf (heard, rate);
        RenderSpec spec;
        spec.design.filter = ModalFilter::unity (rate);
        spec.after = amplifier (drive);
        spec.driveLufs = takeLufs;
        const HeardLevel level = heardLevel ({ option }, spec, wanted);
        std::vector<std::vector<float>> matched { option };
        for (float& sample : matched[0])
            sample *= static_cast<float> (std::pow (10.0, level.matchDb / 20.0));
        chain.run (matched);
        CHECK (level.matchDb > 3.0);
        CHECK (loudnessOf (matched, rate) == Approx (wanted).margin (0.05));
        CHECK (truePeakDb (matched, rate) == Approx (level.matchedTruePeakDb).margin (0.05));
    }
    CHECK (headroomDb (0.5) == 0.0);
    CHECK (headroomDb (2.0) == Approx (-6.0306).margin (1e-3));
}
}
