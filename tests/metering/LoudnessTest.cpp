#include "metering/Loudness.h"

#include <catch2/catch.hpp>

#include <cmath>

namespace loudnessTest
{
using namespace coldiron;

namespace
{
struct Stretch
{
    double peakDbfs, seconds;
};

/** A sine in stretches of level, continuous in phase. */
std::vector<float> sine (double hz, double sampleRate, const std::vector<Stretch>& stretches)
{
    std::vector<float> samples;
    for (const auto& stretch : stretches)
        for (auto n = std::llround (stretch.seconds * sampleRate); n > 0; --n)
            samples.push_back (
                static_cast<float> (std::pow (10.0, stretch.peakDbfs / 20.0)
                                    * std::sin (2.0 * M_PI * hz * static_cast<double> (samples.size()) / sampleRate)));
    return samples;
}
}

TEST_CASE ("ITU-R BS.1770: a full-scale 997 Hz sine in one channel reads -3.01 LUFS")
{
    // ITU-R BS.1770, annex 1; bar 0.01.
    const auto full = sine (997.0, 48000.0, { { 0.0, 20.0 } });
    const std::vector<float> silence (full.size(), 0.0f);
    CHECK (loudnessOf ({ full, silence }, 48000.0) == Approx (-3.01).margin (0.01));
    CHECK (loudnessOf ({ full, full }, 48000.0) == Approx (0.0).margin (0.01));
    CHECK (loudnessOf ({ full }, 48000.0) == Approx (0.0).margin (0.01)); // mono counts as dual mono
}

TEST_CASE ("EBU Tech 3341 signals")
{
    // EBU Tech 3341, minimum requirements test signals: stereo 1 kHz sines, +/-0.1 LU.
    const auto lufs = [] (const std::vector<Stretch>& stretches)
    {
        const auto side = sine (1000.0, 48000.0, stretches);
        return loudnessOf ({ side, side }, 48000.0);
    };
    CHECK (lufs ({ { -23, 20 } }) == Approx (-23.0).margin (0.1));
    CHECK (lufs ({ { -33, 20 } }) == Approx (-33.0).margin (0.1));
    CHECK (lufs ({ { -36, 10 }, { -23, 60 }, { -36, 10 } }) == Approx (-23.0).margin (0.1));
    CHECK (lufs ({ { -72, 10 }, { -36, 10 }, { -23, 60 }, { -36, 10 }, { -72, 10 } }) == Approx (-23.0).margin (0.1));
    CHECK (lufs ({ { -26, 20 }, { -20, 20.1 }, { -26, 20 } }) == Approx (-23.0).margin (0.1));
}

TEST_CASE ("silence has no loudness, a sine between samples has its true peak")
{
    CHECK (std::isinf (loudnessOf ({ std::vector<float> (48000, 0.0f) }, 48000.0)));
    CHECK (truePeakDb ({ std::vector<float> (48000, 0.0f) }, 48000.0) == -300.0);
    // A quarter of the sample rate at 45 degrees: every sample is 3.01 dB below the peak of the wave.
    std::vector<float> quarter;
    for (int i = 0; i < 48000; ++i)
        quarter.push_back (static_cast<float> (0.5 * std::sin (M_PI / 2.0 * i + M_PI / 4.0)));
    CHECK (truePeakDb ({ quarter }, 48000.0) == Approx (-6.02).margin (0.3));
    CHECK_THROWS (Loudness (48000.0, 3));
    CHECK_THROWS (Loudness (0.0, 1));
}
}
