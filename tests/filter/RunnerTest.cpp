#include "Targets.h"
#include "concurrency/LatestValue.h"
#include "filter/FilterRunner.h"

#include <catch2/catch.hpp>

#include <atomic>
#include <thread>

namespace runnerTest
{
using namespace coldiron;
using namespace coldiron::targets;

namespace
{
ModalFilter brightening (double rate)
{
    const auto designer = FilterDesigner::shared (rate);
    const LoadedCoil from { 4.6, 8e3, 540e-12, 200e3 }, to { 1.2, 2e3, 700e-12, 200e3 };
    return designer->design (onGrid (*designer, [&] (double hz) { return to (hz) / from (hz); }), false);
}

std::vector<double> impulseResponse (const ModalFilter& filter, int length)
{
    std::vector<double> samples (static_cast<size_t> (length), 0.0);
    samples[0] = 1.0;
    FilterRunner runner;
    runner.use (filter);
    runner.process (0, samples.data(), samples.data(), length);
    return samples;
}
}

TEST_CASE ("What the runner does to an impulse is the filter's response", "[runner]")
{
    for (const double rate : { 44100.0, 192000.0 })
    {
        const auto filter = brightening (rate);
        const auto impulse = impulseResponse (filter, 1 << 17);
        for (const double hz : { 50.0, 440.0, 3300.0, 9000.0, 19000.0 })
        {
            std::complex<double> sum;
            for (size_t n = 0; n < impulse.size(); ++n)
                sum += impulse[n] * std::polar (1.0, -2.0 * std::numbers::pi * hz * static_cast<double> (n) / rate);
            CHECK (std::abs (sum - filter.response (hz)) < 1e-9 * std::abs (filter.response (hz)));
        }
    }
}

TEST_CASE ("The runner is the plain recursion in long double, whatever the block sizes", "[runner]")
{
    const auto filter = brightening (96000.0);
    std::vector<double> in (5000), out (5000);
    unsigned seed = 1;
    for (auto& x : in)
        x = static_cast<double> ((seed = seed * 1664525u + 1013904223u) >> 8) / (1u << 24) - 0.5;

    using Wide = std::complex<long double>;
    std::vector<Wide> states (filter.poles.size());
    std::vector<double> plain;
    for (double x : in)
    {
        long double y = static_cast<long double> (filter.direct) * x;
        for (size_t p = 0; p < states.size(); ++p)
        {
            y += 2.0L * (Wide (filter.residues[p]) * states[p]).real();
            states[p] = Wide (filter.poles[p]) * states[p] + static_cast<long double> (x);
        }
        plain.push_back (static_cast<double> (y));
    }

    FilterRunner runner;
    runner.use (filter);
    for (int at = 0, block = 1; at < 5000; at += block, block = block * 7 % 311 + 1)
        runner.process (1, in.data() + at, out.data() + at, std::min (block, 5000 - at));
    double worst = 0.0;
    for (size_t n = 0; n < in.size(); ++n)
        worst = std::max (worst, std::abs (out[n] - plain[n]));
    CHECK (worst < 1e-10);
}

TEST_CASE ("Channels are apart, reset is silence, silence stays silence", "[runner]")
{
    const auto filter = brightening (48000.0);
    FilterRunner runner;
    runner.use (filter);
    std::vector<float> loud (64, 1.0f), quiet (64, 0.0f), out (64);
    runner.process (0, loud.data(), out.data(), 64);
    runner.process (1, quiet.data(), out.data(), 64);
    for (float y : out)
        CHECK (y == 0.0f);
    runner.reset();
    runner.process (0, quiet.data(), out.data(), 64);
    for (float y : out)
        CHECK (y == 0.0f);

    // A tail dies to exact zero, never into denormals.
    runner.process (0, loud.data(), out.data(), 64);
    for (int block = 0; block < 20000; ++block)
        runner.process (0, quiet.data(), out.data(), 64);
    for (float y : out)
        CHECK (y == 0.0f);
}

TEST_CASE ("A filter with too many poles is refused before the audio thread sees it", "[runner]")
{
    ModalFilter filter;
    filter.poles.resize (FilterRunner::maxPoles + 1);
    CHECK_FALSE (FilterRunner::fits (filter));
    filter.poles.resize (FilterRunner::maxPoles);
    CHECK (FilterRunner::fits (filter));
}

TEST_CASE ("The latest value arrives whole, newest last, between two threads", "[handover]")
{
    struct Value
    {
        int first = 0;
        double payload[30] {};
        int last = 0;
    };
    LatestValue<Value> handover;
    CHECK (handover.read() == nullptr);

    constexpr int writes = 200000;
    std::atomic<bool> done { false };
    std::thread writer (
        [&]
        {
            for (int i = 1; i <= writes; ++i)
            {
                Value value;
                value.first = value.last = i;
                for (auto& x : value.payload)
                    x = i;
                handover.write (value);
            }
            done = true;
        });
    int newest = 0, torn = 0, backwards = 0;
    while (true)
    {
        const bool wasDone = done;
        if (const auto* value = handover.read())
        {
            torn += value->first != value->last || value->payload[29] != value->first ? 1 : 0;
            backwards += value->first <= newest ? 1 : 0;
            newest = value->first;
        }
        else if (wasDone)
            break;
    }
    writer.join();
    CHECK (torn == 0);
    CHECK (backwards == 0);
    CHECK (newest == writes);
    CHECK (handover.read() == nullptr);
}
}
