// What is measured block by block is what is measured at once.
#include "engine/TakePass.h"
#include "metering/Loudness.h"
#include "metering/NoiseFloor.h"
#include "metering/Spectrum.h"
#include "metering/TakeFaults.h"

#include <catch2/catch.hpp>

#include <cmath>
#include <numbers>
#include <random>

namespace takePassTest
{
using namespace coldiron;

namespace
{
/** Strokes over a quiet noise. */
Channels strokes (size_t channels, double seconds, double rate)
{
    std::mt19937 random (5);
    std::normal_distribution<double> noise;
    Channels take (channels, std::vector<float> (static_cast<size_t> (seconds * rate)));
    for (auto& channel : take)
        for (size_t i = 0; i < channel.size(); ++i)
        {
            const double t = static_cast<double> (i) / rate, after = std::fmod (t, 2.0);
            channel[i] = static_cast<float> (0.4 * std::exp (-6.0 * after) * std::sin (2.0 * std::numbers::pi * 330.0 * t)
                                             + 1e-4 * noise (random));
        }
    return take;
}

template <typename Meter>
void addBlocks (Meter& meter, const Channels& take, size_t longest)
{
    std::mt19937 random (9);
    for (size_t from = 0; from < take.front().size();)
    {
        const size_t count = std::min<size_t> (take.front().size() - from, 1 + random() % longest);
        Channels block;
        for (const auto& channel : take)
            block.emplace_back (channel.begin() + static_cast<long> (from), channel.begin() + static_cast<long> (from + count));
        meter.add (block);
        from += count;
    }
}
}

TEST_CASE ("measured block by block is measured at once")
{
    const double rate = 48000.0;
    auto take = strokes (2, 9.3, rate);
    for (const size_t at : { 5000u, 90000u, 200000u, 300000u }) // flat tops, one on the border of two blocks or another
        for (size_t i = 0; i < 7; ++i)
            take[0][at + i] = 0.6f;
    const size_t longest = GENERATE (900u, 30000u);

    SpectrumMeter spectrum (rate);
    addBlocks (spectrum, take, longest);
    const Spectrum part = spectrum.spectrum(), whole = takeSpectrum (take, rate);
    REQUIRE (part.hz == whole.hz);
    for (size_t i = 0; i < part.power.size(); ++i)
        CHECK (part.power[i] == Approx (whole.power[i]).epsilon (1e-12));

    NoiseFloorMeter noise (rate);
    addBlocks (noise, take, longest);
    const NoiseFloor floor = noise.floor(), wholeFloor = measureNoiseFloor (take, rate);
    CHECK (wholeFloor.isKnown);
    CHECK (floor.noise == wholeFloor.noise);
    CHECK (floor.playing == wholeFloor.playing);
    CHECK (floor.pauseSeconds == wholeFloor.pauseSeconds);

    TakeFaultMeter faults;
    addBlocks (faults, take, longest);
    const auto found = faults.faults (floor), expected = takeFaults (take, rate, wholeFloor);
    REQUIRE (found.size() == expected.size());
    REQUIRE_FALSE (found.empty());
    CHECK (found.front().kind == TakeFault::Kind::clipped);
    CHECK (found.front().places == 4); // at the take's own peak
    CHECK (found == expected);

    Loudness loudness (rate, 2);
    addBlocks (loudness, take, longest);
    CHECK (loudness.integratedLufs() == Approx (loudnessOf (take, rate)).margin (1e-9));
}

TEST_CASE ("the noise floor of a long take is that of a part of it")
{
    const double rate = 8000.0;
    const auto minute = strokes (1, 60.0, rate);
    NoiseFloorMeter brief (rate), lengthy (rate);
    for (int i = 0; i < 4; ++i)
        brief.add (minute);
    for (int i = 0; i < 50; ++i) // halved three times on the way
        lengthy.add (minute);
    const NoiseFloor a = brief.floor(), b = lengthy.floor();
    REQUIRE (a.isKnown);
    REQUIRE (b.isKnown);
    CHECK (b.noiseDb() == Approx (a.noiseDb()).margin (0.1));
    CHECK (b.pauseSeconds / a.pauseSeconds == Approx (12.5).epsilon (0.05));
}

TEST_CASE ("true peaks over full scale are found though quiet stretches are left away")
{
    // A tone at a quarter of the rate whose samples all stand at 45 degrees: they reach 0.707 of its peak (ITU-R BS.1770-4,
    // annex 2, attachment 1 shows the same).
    const double rate = 48000.0;
    Channels x (1, std::vector<float> (200000));
    std::mt19937 random (2);
    std::normal_distribution<double> noise (0.0, 0.1);
    for (size_t i = 0; i < x[0].size(); ++i)
    {
        const double t = static_cast<double> (i), swell = std::exp (-std::pow ((t - 123457.0) / 300.0, 2.0));
        x[0][i] = static_cast<float> (1.25 * swell * std::sin (0.5 * std::numbers::pi * t + 0.25 * std::numbers::pi)
                                      + noise (random) * (i < 30000 ? 1.0 : 0.3));
    }
    TruePeak gated (rate, 1, -0.1);
    addBlocks (gated, x, 16000);
    const double whole = truePeakDb (x, rate);
    CHECK (whole > 0.5);
    CHECK (gated.db() == Approx (whole).margin (0.02));

    for (float& sample : x[0])
        sample *= 0.1f;
    TruePeak quiet (rate, 1, -0.1);
    addBlocks (quiet, x, 16000);
    CHECK (quiet.db() < -0.1); // nothing invented where stretches are joined
}

TEST_CASE ("a pass gives every listener every block in order, and ends where it is asked to")
{
    const auto take = strokes (1, 3.0, 48000.0);
    WorkerPool pool;
    std::vector<Channels> heard (5, Channels (1));
    std::vector<BlockListener> listeners;
    for (auto& one : heard)
        listeners.push_back ([&one] (const Channels& block) { one[0].insert (one[0].end(), block[0].begin(), block[0].end()); });
    double last = 0.0;
    runPass (blocksOf (take), listeners, pool, static_cast<double> (take[0].size()),
             [&] (double share)
             {
                 CHECK (share > last);
                 last = share;
             });
    CHECK (last == 1.0);
    for (const auto& one : heard)
        CHECK (one == take);

    double share = 0.0;
    CHECK_THROWS_AS (runPass (
                         blocksOf (take), listeners, pool, static_cast<double> (take[0].size()), [&] (double s) { share = s; },
                         Cancellation ([&] { return share >= 0.3; })),
                     Cancelled);
    CHECK (heard[0][0].size() < take[0].size() + take[0].size() / 2);

    listeners.push_back ([] (const Channels&) { throw std::runtime_error ("full"); });
    CHECK_THROWS_WITH (runPass (blocksOf (take), listeners, pool), "full");
}
}
