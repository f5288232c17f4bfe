// Made signals: what is wrong with them is known, since it was put in.
#include "metering/TakeFaults.h"

#include <catch2/catch.hpp>

#include <cmath>
#include <numbers>

namespace takeFaultsTest
{
using namespace coldiron;

namespace
{
constexpr double rate = 48000.0;
constexpr double pi = std::numbers::pi;

std::vector<float> whiteNoise (size_t frames, double rms, uint64_t state = 88172645463325252ull)
{
    std::vector<float> x (frames);
    for (float& sample : x)
    {
        state ^= state << 13;
        state ^= state >> 7;
        state ^= state << 17;
        sample = static_cast<float> (rms * std::sqrt (12.0) * (static_cast<double> (state >> 11) / 9007199254740992.0 - 0.5));
    }
    return x;
}

/** Four strokes of a string with partials up to 8 kHz, each a second long, and 1.5 s of nothing after each.
    @param tilt  partial n has the amplitude n^-tilt */
std::vector<float> strokes (double peak, double noiseRms, double tilt = 1.0)
{
    auto x = whiteNoise (static_cast<size_t> (10.0 * rate), noiseRms);
    std::vector<double> stroke (static_cast<size_t> (rate), 0.0);
    double most = 0.0;
    for (size_t i = 0; i < stroke.size(); ++i)
    {
        const double t = static_cast<double> (i) / rate;
        for (int n = 1; n * 110.0 < 8000.0; ++n)
            stroke[i] += std::pow (n, -tilt) * std::sin (2.0 * pi * 110.0 * n * t + n * n) * std::exp (-(3.0 + 0.1 * n) * t);
        const double ends = std::min ({ 1.0, t / 0.008, static_cast<double> (stroke.size() - i) / 2400.0 });
        stroke[i] *= 0.5 - 0.5 * std::cos (pi * ends); // no click at either end
        most = std::max (most, std::abs (stroke[i]));
    }
    for (int s = 0; s < 4; ++s)
        for (size_t i = 0; i < stroke.size(); ++i)
            x[static_cast<size_t> (s * 2.5 * rate) + i] += static_cast<float> (peak / most * stroke[i]);
    return x;
}

std::vector<TakeFault> faultsOf (const std::vector<std::vector<float>>& channels)
{
    return takeFaults (channels, rate, measureNoiseFloor (channels, rate));
}

bool has (const std::vector<TakeFault>& faults, TakeFault::Kind kind)
{
    return std::any_of (faults.begin(), faults.end(), [&] (const TakeFault& f) { return f.kind == kind; });
}
}

TEST_CASE ("the noise in the pauses is measured band by band")
{
    // White noise has the same power in every hertz: a third octave holds rms^2 x (10^0.05 - 10^-0.05) f / (fs / 2) [calc].
    const double rms = 1e-3;
    const auto floor = measureNoiseFloor ({ strokes (0.5, rms) }, rate);
    REQUIRE (floor.isKnown);
    CHECK (floor.pauseSeconds > 4.0);
    CHECK (floor.pauseSeconds < 7.0);
    for (size_t b = 0; b < floor.hz.size(); ++b)
    {
        INFO (floor.hz[b] << " Hz");
        const double expected = rms * rms * floor.hz[b] * (std::pow (10.0, 0.05) - std::pow (10.0, -0.05)) / (0.5 * rate);
        const double errorDb = 10.0 * std::log10 (floor.noise[b] / expected);
        CHECK (std::abs (errorDb) < (floor.hz[b] < 90.0 ? 3.5 : floor.hz[b] < 300.0 ? 1.5 : 0.5)); // few bins at the bottom
    }
}

TEST_CASE ("a click in a pause does not count as noise, and a stereo take reads as a mono one")
{
    const auto clean = strokes (0.5, 1e-4);
    auto clicked = clean;
    for (double at : { 1.6, 4.3, 6.9, 9.4 })
        clicked[static_cast<size_t> (at * rate)] += 0.2f;
    const auto a = measureNoiseFloor ({ clean }, rate), b = measureNoiseFloor ({ clicked }, rate),
               c = measureNoiseFloor ({ clean, clean }, rate);
    REQUIRE (b.isKnown);
    for (size_t i = 8; i < a.hz.size(); ++i)
    {
        CHECK (10.0 * std::log10 (b.noise[i] / a.noise[i]) == Approx (0.0).margin (0.5));
        CHECK (10.0 * std::log10 (c.noise[i] / a.noise[i]) == Approx (0.0).margin (0.5));
    }
}

TEST_CASE ("no pauses, or pauses of exact silence, say nothing of the noise")
{
    std::vector<float> held (static_cast<size_t> (5.0 * rate));
    for (size_t i = 0; i < held.size(); ++i)
        held[i] = 0.3f * static_cast<float> (std::sin (2.0 * pi * 220.0 * static_cast<double> (i) / rate));
    CHECK_FALSE (measureNoiseFloor ({ held }, rate).isKnown);

    const auto gated = measureNoiseFloor ({ strokes (0.5, 0.0) }, rate);
    CHECK_FALSE (gated.isKnown);
    CHECK (gated.isSilent);
    CHECK_FALSE (measureNoiseFloor ({}, rate).isKnown);
    CHECK_FALSE (measureNoiseFloor ({ std::vector<float> (100, 0.1f) }, rate).isKnown);
}

TEST_CASE ("a boost of noise ends the trust where it begins, if it can be heard")
{
    const auto boost = [] (double hz) { return hz < 3600.0 ? 1.0 : 4.0; }; // +12 dB from 3.6 kHz up
    const auto noisy = measureNoiseFloor ({ strokes (0.5, 2e-3) }, rate);
    const auto trust = judgeNoise (noisy, boost, false);
    REQUIRE (trust.trustedToHz);
    CHECK (*trust.trustedToHz == Approx (1000.0 * std::pow (10.0, 0.55))); // the lower edge of the band at 3981 Hz
    CHECK (trust.liftDb == Approx (12.04).margin (0.3));
    CHECK_FALSE (trust.wasTurnedDown);
    CHECK (judgeNoise (noisy, boost, true).wasTurnedDown);

    const auto quiet = measureNoiseFloor ({ strokes (0.5, 1e-6) }, rate); // 60 dB less: nobody hears it
    REQUIRE (quiet.isKnown);
    CHECK_FALSE (judgeNoise (quiet, boost, false).trustedToHz);
    CHECK_FALSE (judgeNoise (
                     noisy, [] (double hz) { return hz < 3600.0 ? 1.0 : 1.9; }, false)
                     .trustedToHz); // 5.6 dB
    CHECK (judgeNoise (
               noisy, [] (double hz) { return hz < 3600.0 ? 1.0 : 2.1; }, false)
               .trustedToHz); // 6.4 dB
    // All softer alike: turned up again it is what it was. Softer but not at the top: the top is lifted.
    CHECK_FALSE (judgeNoise (
                     noisy, [] (double) { return 0.25; }, false)
                     .trustedToHz);
    CHECK (judgeNoise (
               noisy, [] (double hz) { return hz < 3600.0 ? 0.25 : 1.0; }, false)
               .trustedToHz);
    CHECK_FALSE (judgeNoise (
                     noisy, [] (double) { return 1.0; }, true)
                     .wasTurnedDown);
}

TEST_CASE ("a sound take has nothing to say")
{
    CHECK (faultsOf ({ strokes (0.4, 1e-5) }).empty());
    const auto x = strokes (0.4, 1e-5);
    CHECK (faultsOf ({ x, x }).empty());
}

TEST_CASE ("clipping shows in runs of equal samples")
{
    auto loud = strokes (2.0, 1e-5);
    for (float& sample : loud)
        sample = std::clamp (sample, -1.0f, 1.0f);
    CHECK (has (faultsOf ({ loud }), TakeFault::Kind::clipped));
    for (float& sample : loud)
        sample *= 0.25f; // turned down afterwards: still cut off
    CHECK (has (faultsOf ({ loud }), TakeFault::Kind::clipped));

    // A clean low note up to full scale in 16 bits has tops of two or three steps, not of three samples at the rail.
    std::vector<float> bass (static_cast<size_t> (3.0 * rate));
    for (size_t i = 0; i < bass.size(); ++i)
        bass[i] = static_cast<float> (std::round (0.98 * 32767.0 * std::sin (2.0 * pi * 41.2 * static_cast<double> (i) / rate))
                                      / 32768.0);
    CHECK_FALSE (has (faultsOf ({ bass }), TakeFault::Kind::clipped));
}

TEST_CASE ("too quiet, noisy and silent takes are told")
{
    const auto quiet = faultsOf ({ strokes (0.01, 1e-7) }); // -40 dBFS
    REQUIRE (has (quiet, TakeFault::Kind::tooQuiet));
    CHECK (quiet.front().db == Approx (-40.0).margin (0.5));
    CHECK (has (faultsOf ({ strokes (0.4, 5e-3) }), TakeFault::Kind::noisy));
    CHECK_FALSE (has (faultsOf ({ strokes (0.4, 5e-3) }), TakeFault::Kind::tooQuiet));
    const auto silent = faultsOf ({ std::vector<float> (48000, 0.0f) });
    REQUIRE (silent.size() == 1);
    CHECK (silent.front().kind == TakeFault::Kind::silent);
}

TEST_CASE ("a take recorded dark is told")
{
    // Partials falling by 12 dB an octave more, as under a tone at 0: 3 kHz and up lie over 48 dB down.
    CHECK (has (faultsOf ({ strokes (0.4, 1e-7, 3.0) }), TakeFault::Kind::dark));
    CHECK_FALSE (has (faultsOf ({ strokes (0.4, 1e-7, 1.5) }), TakeFault::Kind::dark));
}

TEST_CASE ("two sides that are not one guitar are told")
{
    const auto x = strokes (0.4, 1e-5);
    auto softer = x, turned = x, none = x;
    for (size_t i = 0; i < x.size(); ++i)
    {
        softer[i] *= 0.5f;
        turned[i] = -turned[i];
        none[i] = 0.0f;
    }
    auto delayed = x;
    std::rotate (delayed.begin(), delayed.begin() + 480, delayed.end());
    const auto against = [&] (const std::vector<float>& right)
    {
        const auto faults = faultsOf ({ x, right });
        REQUIRE_FALSE (faults.empty());
        CHECK (faults.back().kind == TakeFault::Kind::sidesDiffer);
        return faults.back();
    };
    using Sides = TakeFault::Sides;
    CHECK (against (softer).sides == Sides::louder);
    CHECK (against (softer).db == Approx (6.02).margin (0.01));
    CHECK (against (turned).sides == Sides::upsideDown);
    CHECK (against (none).sides == Sides::rightSilent);
    CHECK (against (delayed).sides == Sides::differ);
}
}
