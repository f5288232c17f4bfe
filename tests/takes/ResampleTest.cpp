// A sound at another sample rate is the same sound: held to sines and to a closed form.
#include "takes/Resample.h"
#include "engine/OutputChain.h"

#include <catch2/catch.hpp>

#include <cmath>
#include <complex>
#include <numbers>

namespace resampleTest
{
using namespace coldiron;

namespace
{
std::vector<float> sine (double hz, double rate, double seconds)
{
    std::vector<float> x;
    for (int i = 0; i < static_cast<int> (seconds * rate); ++i)
        x.push_back (static_cast<float> (0.5 * std::sin (2.0 * std::numbers::pi * hz * i / rate)));
    return x;
}

double db (double ratio) { return 20.0 * std::log10 (ratio + 1e-300); }
}

TEST_CASE ("resampling keeps level and pitch, and lets nothing fold back")
{
    for (double hz : { 100.0, 1000.0, 15000.0 })
    {
        const auto y = resampled (sine (hz, 44100.0, 0.5), 44100.0, 96000.0);
        REQUIRE (y.size() == 48000);
        double worst = 0.0;
        for (size_t i = 2000; i + 2000 < y.size(); ++i) // the sine itself at the other rate
            worst = std::max (worst,
                              std::abs (y[i] - 0.5 * std::sin (2.0 * std::numbers::pi * hz * static_cast<double> (i) / 96000.0)));
        INFO (hz);
        CHECK (worst < 1e-3 * 0.5); // -60 dB
    }
    const auto high = resampled (sine (30000.0, 96000.0, 0.5), 96000.0, 44100.0);
    double largest = 0.0;
    for (size_t i = 1000; i + 1000 < high.size(); ++i)
        largest = std::max (largest, static_cast<double> (std::abs (high[i])));
    CHECK (largest < 1e-3 * 0.5);
    CHECK (resampled ({ 1.0f, 2.0f }, 48000.0, 48000.0) == std::vector<float> { 1.0f, 2.0f });
}

TEST_CASE ("a file at another rate is the same sound")
{
    // A one-pole low-pass at 1 kHz sampled at 44.1 kHz: its gain is in closed form.
    std::vector<float> impulse (4000);
    const double pole = std::exp (-2.0 * M_PI * 1000.0 / 44100.0);
    for (size_t i = 0; i < impulse.size(); ++i)
        impulse[i] = static_cast<float> (std::pow (pole, static_cast<double> (i)));
    const auto gain = [&] (double hz) { return 1.0 / std::abs (1.0 - pole * std::polar (1.0, -2.0 * M_PI * hz / 44100.0)); };
    const OutputChainChoice file { OutputSound::file, "pole.wav", 0.0 };
    const OutputChain same (file, impulse, 44100.0, -20.0), other (file, resampled (impulse, 44100.0, 96000.0), 96000.0, -20.0);
    for (double hz : { 100.0, 500.0, 1000.0, 3000.0, 8000.0 })
    {
        CHECK (db (same.curve().at (hz) / same.curve().at (100.0)) == Approx (db (gain (hz) / gain (100.0))).margin (0.1));
        CHECK (db (other.curve().at (hz) / same.curve().at (hz))
               == Approx (0.0).margin (0.3)); // the sinc's first half wave is cut off
    }
}
}
