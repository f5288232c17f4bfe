#include "response/Responses.h"
#include "support/WholeRender.h"

#include <catch2/catch.hpp>

#include <chrono>
#include <iostream>

namespace changeTest
{
using namespace coldiron;
using namespace coldiron::support;

TEST_CASE ("where coils are heard alike only the circuit is left")
{
    const auto harness = humbuckerWired (Wiring::series, humbucker ("bridge"));
    Setting low;
    low.knobs["volume"] = 4.0;
    const GuitarResponse before = voiceOf (harness), after = voiceOf (harness, low);
    const TransferFunction transfer (before, after);
    for (double hz = 20.0; hz < 20000.0; hz *= 1.5)
        CHECK (transfer.gain (hz) == Approx (std::abs (after.unisonResponse (hz) / before.unisonResponse (hz))).epsilon (1e-9));
}

TEST_CASE ("an estimated gain is the ratio of powers under the string weights")
{
    const GuitarResponse before = voiceOf (humbuckerWired (Wiring::series, humbucker ("bridge")));
    const GuitarResponse after = voiceOf (humbuckerWired (Wiring::splitOpen, humbucker ("bridge")));
    const TransferFunction transfer (before, after);
    std::vector<double> hz;
    for (double f = 30.0; f < 15000.0; f *= 1.3)
        hz.push_back (f);
    const auto gains = transfer.gains (hz);
    for (size_t i = 0; i < hz.size(); ++i)
    {
        CHECK (transfer.gain (hz[i]) == Approx (std::sqrt (after.power (hz[i]) / before.power (hz[i]))).epsilon (1e-9));
        CHECK (gains[i] == Approx (transfer.gain (hz[i])).epsilon (1e-9)); // the table of weights changes nothing
    }
    CHECK (transfer.confidence().isEstimated());
}

TEST_CASE ("silence in, silence out")
{
    auto harness = humbuckerWired (Wiring::series, humbucker ("bridge"));
    const GuitarResponse before = voiceOf (harness);
    harness.unsolder ("bridge.north.finish", "bridge.south.finish");
    const GuitarResponse after = voiceOf (harness);
    CHECK (after.isSilent());
    const TransferFunction transfer (before, after);
    CHECK (transfer.gain (440.0) == 0.0);
    const auto filter = designFilter (transfer, *FilterDesigner::shared (48000.0));
    CHECK (renderTake ({ std::vector<float> (1000, 0.5f) }, filter).peak == 0.0);
}

TEST_CASE ("a take rendered is the take times the gain, its samples counted")
{
    const GuitarResponse before = voiceOf (humbuckerWired (Wiring::series, humbucker ("bridge")));
    const GuitarResponse after = voiceOf (humbuckerWired (Wiring::parallel, humbucker ("bridge")));
    const TransferFunction transfer (before, after);
    for (const double rate : { 44100.0, 96000.0 })
        for (const double hz : { 110.0, 1000.0, 5000.0 })
        {
            std::vector<float> tone;
            for (int i = 0; i < static_cast<int> (rate); ++i)
                tone.push_back (static_cast<float> (0.2 * std::sin (2.0 * M_PI * hz * i / rate)));
            const auto rendered = renderTake ({ tone, tone }, designFilter (transfer, *FilterDesigner::shared (rate)));
            REQUIRE (rendered.channels.size() == 2);
            REQUIRE (rendered.channels[0].size() == tone.size());
            CHECK (rendered.channels[0] == rendered.channels[1]);
            double power = 0.0;
            const size_t half = tone.size() / 2; // settled, whole cycles
            for (size_t i = half; i < 2 * half; ++i)
                power += std::pow (static_cast<double> (rendered.channels[0][i]), 2);
            const double gain = std::sqrt (2.0 * power / static_cast<double> (half)) / 0.2;
            CHECK (20.0 * std::log10 (gain / transfer.gain (hz)) == Approx (0.0).margin (0.02));
        }
}

TEST_CASE ("from a turned knob to coefficients")
{
    const auto harness = fourKnobs();
    Setting setting;
    setting.levers["selector"] = "both";
    const auto designer = FilterDesigner::shared (48000.0);
    const GuitarResponse before = voiceOf (harness, setting);
    double best = 1e9;
    for (int turn = 0; turn < 30; ++turn)
    {
        setting.knobs["bridge-volume"] = 9.9 - 0.1 * turn;
        const auto start = std::chrono::steady_clock::now();
        const GuitarResponse after = voiceOf (harness, setting);
        const auto filter = designFilter (TransferFunction (before, after), *designer);
        best = std::min (best, std::chrono::duration<double, std::milli> (std::chrono::steady_clock::now() - start).count());
        CHECK (filter.poles.size() > 0);
    }
    std::cout << "Two humbuckers, knob to coefficients: " << best << " ms at best of 30\n";
    CHECK (best < 20.0); // a figure, not a bar: the benchmark measures on a quiet machine
}
}
