// The take as the window plays it: resampled to the device, looping without clicks.
#include "session/TakePlayer.h"

#include <catch2/catch.hpp>

#include <cmath>
#include <numbers>

namespace takePlayerTest
{
using namespace coldiron;

namespace
{
std::shared_ptr<const TakeAudio> sineTake (double hz, double rate, double seconds)
{
    auto take = std::make_shared<TakeAudio>();
    take->sampleRate = rate;
    take->channels.resize (1);
    for (int i = 0; i < static_cast<int> (seconds * rate); ++i)
        take->channels[0].push_back (static_cast<float> (0.5 * std::sin (2.0 * std::numbers::pi * hz * i / rate)));
    return take;
}

std::vector<float> play (TakePlayer& player, size_t frames, size_t block = 100)
{
    std::vector<float> x (frames);
    for (size_t at = 0; at < frames; at += block)
    {
        float* channel = x.data() + at;
        player.process (&channel, 1, static_cast<int> (std::min (block, frames - at)));
    }
    return x;
}

double largestStep (const std::vector<float>& x)
{
    double largest = 0.0;
    for (size_t i = 1; i < x.size(); ++i)
        largest = std::max (largest, static_cast<double> (std::abs (x[i] - x[i - 1])));
    return largest;
}
}

TEST_CASE ("a take plays as it is, loops, seeks and stops without a step")
{
    const double rate = 48000.0, slope = 0.5 * 2.0 * std::numbers::pi * 440.0 / rate;
    const auto take = sineTake (440.0, rate, 1.0);
    // A raised cosine of 240 samples between two values at most 1 apart: the derivative of its share is pi/2 / 240.
    const double fadeStep = 1.0 * std::numbers::pi / (2.0 * 240.0);
    TakePlayer player;
    player.prepare (rate);
    player.load (take);
    CHECK (largestStep (play (player, 1000)) == 0.0); // silent until it plays

    player.setPlaying (true);
    const auto start = play (player, 24000);
    for (size_t i = 300; i < start.size(); ++i)
        REQUIRE (start[i] == take->channels[0][i]);
    CHECK (player.positionSeconds() == Approx (0.5));
    CHECK (largestStep (start) < 1.5 * slope);

    player.setLoop (0.1, 0.3337); // ends that do not meet in phase
    CHECK (largestStep (play (player, 96000)) < slope + fadeStep);
    CHECK (player.positionSeconds() >= 0.1);
    CHECK (player.positionSeconds() <= 0.3337 + 0.001);

    player.seek (0.2);
    CHECK (largestStep (play (player, 4800)) < slope + fadeStep);
    player.setPlaying (false);
    const auto end = play (player, 4800);
    CHECK (largestStep (end) < slope + fadeStep);
    CHECK (std::abs (end[400]) == 0.0f);
}

TEST_CASE ("without a loop the take ends, and starts over when it is played again")
{
    TakePlayer player;
    player.prepare (48000.0);
    player.load (sineTake (440.0, 48000.0, 0.25));
    player.setLooping (false);
    player.setPlaying (true);
    play (player, 24000);
    CHECK_FALSE (player.isPlaying());
    player.setPlaying (true);
    const auto again = play (player, 4800);
    CHECK (largestStep (again) > 0.0);
    player.load (nullptr);
    CHECK (largestStep (play (player, 480)) <= 1.2 * largestStep (again)); // the one before fades out in 5 ms
    CHECK (largestStep (play (player, 4800)) == 0.0);
}
}
