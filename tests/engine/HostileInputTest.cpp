// What comes into the engine that is no sound: not a number, infinite, denormal, +200 dBFS; gains and filters of such.
// Nothing of it stays, and what is merely loud is untouched.
#include "engine/SwitchEngine.h"

#include <catch2/catch.hpp>

#include <cmath>
#include <limits>
#include <numbers>

namespace hostileInputTest
{
using namespace coldiron;

namespace
{
constexpr double rate = 48000.0;
constexpr size_t block = 64;

/** A resonance at 3 kHz that rings for some hundred blocks from +200 dBFS down. */
ModalFilter ringing()
{
    ModalFilter filter;
    filter.sampleRate = rate;
    filter.direct = 0.5;
    filter.poles = { std::polar (0.999, 2.0 * std::numbers::pi * 3000.0 / rate) };
    filter.residues = { { 0.01, 0.02 } };
    return filter;
}

EngineDesign designOf (const ModalFilter& filter)
{
    EngineDesign design;
    design.filter = filter;
    design.probe();
    return design;
}

std::vector<float> sine (size_t frames, double peak)
{
    std::vector<float> x (frames);
    for (size_t i = 0; i < frames; ++i)
        x[i] = static_cast<float> (peak * std::sin (2.0 * std::numbers::pi * 440.0 * static_cast<double> (i) / rate));
    return x;
}

/** Both channels are given the same. */
std::vector<float> played (SwitchEngine& engine, std::vector<float> x)
{
    for (size_t at = 0; at < x.size(); at += block)
    {
        std::vector<float> other (x.begin() + static_cast<long> (at),
                                  x.begin() + static_cast<long> (std::min (at + block, x.size())));
        float* channels[] = { x.data() + at, other.data() };
        engine.process (channels, 2, static_cast<int> (other.size()));
    }
    return x;
}

float peakOf (const std::vector<float>& x, size_t from, size_t to)
{
    float peak = 0.0f;
    for (size_t i = from; i < to; ++i)
        peak = std::isfinite (x[i]) ? std::max (peak, std::abs (x[i])) : INFINITY;
    return peak;
}

std::unique_ptr<OutputChain> amplifier()
{
    return std::make_unique<OutputChain> (OutputChainChoice { OutputSound::amplifier, {}, 12.0 }, std::vector<float>(), rate,
                                          -20.0);
}
}

TEST_CASE ("what is no sound is forgotten within one block")
{
    constexpr size_t from = 4800 / block * block, blocks = 3, back = from + (blocks + 1) * block;
    const auto usual = sine (24000, 0.5);
    const float most = std::numeric_limits<float>::max();
    for (const bool outputChain : { false, true })
    {
        SwitchEngine calm;
        calm.prepare (rate);
        calm.publish (designOf (ringing()));
        if (outputChain)
            calm.publish (amplifier());
        const float loudest = peakOf (played (calm, usual), 0, usual.size());

        for (const float bad : { 1e10f, -1e10f, 2000.0f, most, INFINITY, -INFINITY, std::nanf ("") })
            for (const size_t every : { 1u, 2u, 63u })
            {
                INFO (bad << ", every " << every << ", after the jack " << outputChain);
                auto x = usual;
                for (size_t i = from; i < from + blocks * block; i += every)
                    x[i] = i % (2 * every) == 0 ? bad : -bad;
                SwitchEngine engine;
                engine.prepare (rate);
                engine.publish (designOf (ringing()));
                if (outputChain)
                    engine.publish (amplifier());
                const auto y = played (engine, x);
                CHECK (peakOf (y, 0, back) < 4.0f * loudest); // nor is it loud meanwhile
                CHECK (peakOf (y, back, y.size()) < 1.5f * loudest);
                CHECK (peakOf (y, back, back + 4 * block) > 0.2f * loudest); // and the playing goes on
            }
    }
}

TEST_CASE ("what is loud is played bit for bit, to +40 dBFS and beyond")
{
    for (const double peak : { 0.5, 100.0, 999.0 })
    {
        const auto x = sine (4800, peak);
        std::vector<double> in (x.begin(), x.end());
        FilterRunner runner;
        runner.use (ringing());
        runner.process (0, in.data(), in.data(), static_cast<int> (in.size()));
        SwitchEngine engine;
        engine.prepare (rate);
        engine.publish (designOf (ringing()));
        const auto y = played (engine, x);
        for (size_t i = 0; i < y.size(); ++i)
            REQUIRE (y[i] == static_cast<float> (in[i]));
    }
}

TEST_CASE ("what is too soft for a normal number comes out as soft")
{
    SwitchEngine engine;
    engine.prepare (rate);
    engine.publish (designOf (ringing()));
    const auto y = played (engine, std::vector<float> (48000, 1e-40f));
    CHECK (peakOf (y, 0, y.size()) < 1e-37f);
}

TEST_CASE ("a gain that is no number leaves the one before")
{
    SwitchEngine engine;
    engine.prepare (rate);
    engine.publish (designOf (ModalFilter::unity (rate)));
    engine.setTrim (0.5f);
    played (engine, sine (4800, 0.5));
    for (const float bad : { std::nanf (""), INFINITY, -INFINITY })
    {
        engine.setTrim (bad);
        engine.setHumGain (bad);
        engine.setHissGain (bad);
        const auto x = sine (4800, 0.5), y = played (engine, x);
        for (size_t i = 0; i < y.size(); ++i)
            REQUIRE (y[i] == Approx (0.5f * x[i]).margin (1e-9));
    }
}

TEST_CASE ("a filter of no numbers is refused, and one that grows without end is cut off")
{
    SwitchEngine engine;
    engine.prepare (rate);
    EngineDesign broken = designOf (ringing());
    broken.gain = NAN;
    CHECK_THROWS_AS (engine.publish (broken), std::invalid_argument);
    broken = designOf (ringing());
    broken.filter.poles[0] = { NAN, 0.0 };
    CHECK_THROWS_AS (engine.publish (broken), std::invalid_argument);
    broken = designOf (ringing());
    broken.filter.poles[0] = { 1.5, 0.0 };
    engine.publish (broken);
    const auto y = played (engine, sine (24000, 0.5));
    CHECK (std::isfinite (peakOf (y, 0, y.size())));
    engine.publish (designOf (ModalFilter::unity (rate)));
    played (engine, sine (4800, 0.5));
    const auto x = sine (4800, 0.5);
    CHECK (played (engine, x) == x);
}
}
