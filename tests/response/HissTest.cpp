#include "response/Hiss.h"
#include "engine/SwitchEngine.h"
#include "metering/WholeNoise.h"
#include "response/Responses.h"
#include "response/ThermalNoise.h"
#include "support/Fft.h"

#include <catch2/catch.hpp>

namespace hissTest
{
using namespace coldiron;
using namespace coldiron::support;

namespace
{
double rms (const std::vector<float>& samples)
{
    double sum = 0.0;
    for (const double s : samples)
        sum += s * s;
    return std::sqrt (sum / static_cast<double> (samples.size()));
}
}

TEST_CASE ("hiss has the spectrum 4kT Re Z of its harness")
{
    // 4 k T Re Z (f): Johnson and Nyquist, 1928 (from memory); k exact in the SI.
    const double rate = GENERATE (44100.0, 96000.0);
    const GuitarResponse response = voiceOf (humbuckerWired (Wiring::series, humbucker ("bridge")));
    const auto filter = hissFilter (response, rate);
    for (const double hz : { 50.0, 500.0, 2000.0, 3000.0, 5000.0, 12000.0 })
    {
        const double density =
            1e6 * std::sqrt (4.0 * 1.380649e-23 * 293.15 * response.outputImpedance (hz).real()); // uV per root Hz
        CHECK (filter.gainDb (hz) == Approx (20.0 * std::log10 (density * std::sqrt (rate / 2.0))).margin (0.05));
    }
    const auto hiss = wholeHiss (response, 1.0, rate, static_cast<size_t> (rate) * 8);
    const double expected = 1e6 * thermalNoise ([&] (double hz) { return response.outputImpedance (hz); }, 1.0, rate / 2.0);
    CHECK (20.0 * std::log10 (rms (hiss) / expected) == Approx (0.0).margin (0.1));
    CHECK (hissScaleFor (-20.0, 0.0) == Approx (std::pow (10.0, -23.0103 / 20.0) * 1e-5).epsilon (1e-6));
}

TEST_CASE ("the engine hisses as loud as the design says, and switches between two without a hole")
{
    const double rate = 48000.0;
    EngineDesign loud, soft;
    loud.filter = soft.filter = ModalFilter::unity (rate);
    loud.hiss = soft.hiss = ModalFilter::unity (rate);
    loud.hiss.direct = 1e-3;
    soft.hiss.direct = 0.5e-3;
    loud.probe();
    soft.probe();
    SwitchEngine engine;
    engine.setHissGain (10.0f);
    engine.prepare (rate);
    engine.publish (loud);
    const auto play = [&] (size_t frames)
    {
        std::vector<float> x (frames, 0.0f);
        for (size_t at = 0; at < frames; at += 128)
        {
            float* channel = x.data() + at;
            engine.process (&channel, 1, static_cast<int> (std::min<size_t> (128, frames - at)));
        }
        return x;
    };
    CHECK (rms (play (96000)) == Approx (1e-2).epsilon (0.02));
    engine.publish (soft);
    const auto between = play (2560); // the fade: the same noise behind both, so never less than the softer one
    CHECK (rms (between) > 0.45e-2);
    CHECK (rms (between) < 1.05e-2);
    CHECK (rms (play (96000)) == Approx (0.5e-2).epsilon (0.02));
    engine.setHissGain (0.0f);
    play (48000);
    CHECK (rms (play (4800)) == 0.0);
}

TEST_CASE ("hum that is turned off is gone within a quarter of a second")
{
    SwitchEngine engine;
    engine.setHumGain (1.0f);
    engine.prepare (48000.0);
    EngineDesign design;
    design.filter = ModalFilter::unity (48000.0);
    design.hum.samples.fill (0.5f);
    design.probe();
    engine.publish (design);
    const auto play = [&] (int frames)
    {
        std::vector<float> x (static_cast<size_t> (frames), 0.0f);
        float* channel = x.data();
        engine.process (&channel, 1, frames);
        return x;
    };
    CHECK (play (400).back() == Approx (0.5f));
    engine.setHumGain (0.0f);
    const auto x = play (12800);
    CHECK (std::abs (x[0] - 0.5f) < 0.01f); // no step
    CHECK (x[12000] == 0.0f);
}
}
