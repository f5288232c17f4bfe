// The renderer by blocks against the same work done on whole buffers, one step after another; and against the live engine.
#include "engine/OfflineRenderer.h"
#include "engine/OutputChain.h"
#include "engine/SwitchEngine.h"
#include "metering/Peak.h"
#include "metering/WholeNoise.h"
#include "response/Responses.h"

#include <catch2/catch.hpp>

#include <cmath>
#include <complex>
#include <iostream>
#include <numbers>
#include <random>

namespace offlineRendererTest
{
using namespace coldiron;
using namespace coldiron::support;

namespace
{
constexpr double rate = 48000.0, pi = std::numbers::pi;

Channels take (size_t channels, size_t frames)
{
    std::mt19937 random (7);
    std::normal_distribution<float> noise (0.0f, 0.1f);
    Channels all (channels, std::vector<float> (frames));
    for (auto& channel : all)
        for (size_t i = 0; i < frames; ++i)
            channel[i] = noise (random) * static_cast<float> (std::exp (-3.0 * std::fmod (static_cast<double> (i) / rate, 0.7)));
    return all;
}

struct Wirings
{
    GuitarResponse recorded = voiceOf (humbuckerWired (Wiring::series, humbucker ("bridge"))),
                   option = voiceOf (humbuckerWired (Wiring::splitShorted, humbucker ("bridge")));
    TransferFunction transfer { recorded, option };
};

/** Every field of the spec set. */
RenderSpec fullSpec (const Wirings& wirings, OutputSound sound)
{
    RenderSpec spec;
    spec.design = EngineDesign::of (&wirings.transfer, wirings.option, { 60.0, facingOf (30.0), 0.7 }, -18.0, rate, true);
    spec.design.gain = 1.3;
    spec.humGain = 0.5;
    spec.hissGain = 3000.0;
    spec.after.sound = sound;
    spec.after.driveDb = sound == OutputSound::none ? 0.0 : 12.0;
    spec.driveLufs = -18.0;
    if (sound == OutputSound::file)
        for (int i = 0; i < 9000; ++i)
            spec.impulse.push_back (static_cast<float> (std::sin (0.37 * (i * i % 977)) * std::exp (-3e-4 * i)));
    spec.trim = 0.7;
    return spec;
}

/** In blocks of changing length. */
Channels byBlocks (const RenderSpec& spec, const Channels& whole, unsigned longest)
{
    OfflineRenderer renderer (spec);
    std::mt19937 random (3);
    Channels all (whole.size());
    for (size_t from = 0; from < whole.front().size();)
    {
        const size_t count = std::min<size_t> (whole.front().size() - from, 1 + random() % longest);
        Channels block;
        for (const auto& channel : whole)
            block.emplace_back (channel.begin() + static_cast<long> (from), channel.begin() + static_cast<long> (from + count));
        const Channels& sound = renderer.process (block);
        REQUIRE (sound.size() == whole.size());
        for (size_t c = 0; c < all.size(); ++c)
            all[c].insert (all[c].end(), sound[c].begin(), sound[c].end());
        from += count;
    }
    return all;
}

/** Hum as a sum of tones whose phase is worked out sample by sample: number n stands 0.7 n^2 rad ahead, and the mains
    wander by 0.03 Hz in 7.3 s and 0.02 Hz in 17.9 s. */
std::vector<float> sumOfTones (const GuitarResponse& response, const MainsField& field, double emfRms, size_t frames)
{
    std::vector<float> hum (frames);
    const auto harmonics = humSpectrum (field);
    std::vector<std::complex<double>> amplitudes;
    for (const auto& h : harmonics)
        amplitudes.push_back (std::sqrt (2.0) * emfRms * h.share * heardHum (response, h.number * field.hz, field.facing)
                              * std::polar (1.0, 0.7 * h.number * h.number));
    for (size_t i = 0; i < frames; ++i)
    {
        const double t = static_cast<double> (i) / rate;
        const double cycles = field.hz * t + 0.03 * 7.3 / (2.0 * pi) * std::sin (2.0 * pi * t / 7.3)
                              + 0.02 * 17.9 / (2.0 * pi) * std::sin (2.0 * pi * t / 17.9 + 1.0);
        double sum = 0.0;
        for (size_t h = 0; h < harmonics.size(); ++h)
            sum += (amplitudes[h] * std::polar (1.0, 2.0 * pi * cycles * harmonics[h].number)).real();
        hum[i] = static_cast<float> (sum);
    }
    return hum;
}

/** Step after step over whole buffers: filter, gain, noises, chain, trim. */
Channels wholeBuffers (const RenderSpec& spec, const Wirings& wirings, const Channels& whole)
{
    const size_t frames = whole.front().size();
    Channels all;
    const auto hum = sumOfTones (wirings.option, { 60.0, facingOf (30.0), 0.7 },
                                 spec.humGain * spec.design.gain * humEmfFor (-18.0, 0.0), frames);
    const auto hiss = wholeHiss (wirings.option, spec.hissGain * spec.design.gain * hissScaleFor (-18.0, 0.0), rate, frames);
    for (const auto& channel : whole)
    {
        FilterRunner runner;
        runner.use (spec.design.filter);
        auto& sound = all.emplace_back (frames);
        runner.process (0, channel.data(), sound.data(), static_cast<int> (frames));
        for (size_t i = 0; i < frames; ++i)
            sound[i] = static_cast<float> (sound[i] * spec.design.gain) + (spec.humGain != 0.0 ? hum[i] : 0.0f)
                       + (spec.hissGain != 0.0 ? hiss[i] : 0.0f);
    }
    OutputChain (spec.after, spec.impulse, rate, spec.driveLufs).run (all);
    for (auto& channel : all)
        for (float& sample : channel)
            sample = static_cast<float> (sample * spec.trim);
    return all;
}

/** rms of the difference [dB re full scale] */
double apartDb (const Channels& a, const Channels& b, size_t from = 0)
{
    double sum = 0.0;
    size_t count = 0;
    REQUIRE (a.size() == b.size());
    for (size_t c = 0; c < a.size(); ++c)
    {
        REQUIRE (a[c].size() == b[c].size());
        for (size_t i = from; i < a[c].size(); ++i, ++count)
            sum += std::pow (static_cast<double> (a[c][i]) - b[c][i], 2.0);
    }
    return 10.0 * std::log10 (sum / static_cast<double> (count) + 1e-40);
}
}

TEST_CASE ("by blocks a take sounds as it does in whole buffers")
{
    const Wirings wirings;
    const size_t channels = GENERATE (1u, 2u);
    const auto x = take (channels, 200000);
    for (const auto sound : { OutputSound::none, OutputSound::amplifier, OutputSound::file })
        for (const bool noises : { false, true })
        {
            RenderSpec spec = fullSpec (wirings, sound);
            if (! noises)
                spec.humGain = spec.hissGain = 0.0;
            const auto expected = wholeBuffers (spec, wirings, x);
            const double apart = apartDb (byBlocks (spec, x, 20000), expected),
                         loud = apartDb (expected, Channels (channels, std::vector<float> (x[0].size())));
            std::cout << channels << " channels, after the jack " << static_cast<int> (sound) << ", noises " << noises
                      << ": blocks and whole buffers " << apart << " dB apart, sound at " << loud << " dB\n";
            CHECK (loud > -40.0);
            CHECK (apart < -140.0);
        }

    RenderSpec plain;
    plain.design.filter = fullSpec (wirings, OutputSound::none).design.filter;
    CHECK (byBlocks (plain, x, 5000) == wholeBuffers (plain, wirings, x)); // the filter alone: to the bit
}

TEST_CASE ("the live engine and an offline rendering agree, every field set")
{
    const Wirings wirings;
    for (const auto sound : { OutputSound::none, OutputSound::amplifier, OutputSound::file })
    {
        const RenderSpec spec = fullSpec (wirings, sound);
        const auto x = take (2, 8 * 48000);
        SwitchEngine engine;
        engine.setHumGain (static_cast<float> (spec.humGain));
        engine.setHissGain (static_cast<float> (spec.hissGain));
        engine.setTrim (static_cast<float> (spec.trim));
        engine.prepare (rate);
        engine.publish (std::make_unique<OutputChain> (spec.after, spec.impulse, rate, spec.driveLufs));
        engine.publish (spec.design);
        auto live = x;
        std::mt19937 random (11);
        for (size_t from = 0; from < live[0].size();)
        {
            const size_t count = std::min<size_t> (live[0].size() - from, 1 + random() % 700);
            float* pointers[] = { live[0].data() + from, live[1].data() + from };
            engine.process (pointers, 2, static_cast<int> (count));
            from += count;
        }
        const auto offline = byBlocks (spec, x, 9000);
        const double apart = apartDb (live, offline);
        std::cout << "after the jack " << static_cast<int> (sound) << ": live and offline " << apart << " dB apart\n";
        CHECK (apart < -110.0);
    }
}

TEST_CASE ("hum begins at its start again after it was silent, and a loop leaves it running")
{
    const Wirings wirings;
    RenderSpec spec;
    spec.design = EngineDesign::of (nullptr, wirings.option, {}, -18.0, rate, true);
    spec.humGain = 1.0;
    spec.hissGain = 2000.0;
    const auto expected = byBlocks (spec, Channels (1, std::vector<float> (48000)), 4000);

    SwitchEngine engine;
    engine.prepare (rate);
    engine.publish (spec.design);
    const auto play = [&] (size_t frames)
    {
        std::vector<float> x (frames);
        for (size_t from = 0; from < frames; from += 480)
        {
            float* pointer = x.data() + from;
            engine.process (&pointer, 1, 480);
        }
        return x;
    };
    CHECK (peakOf ({ play (4800) }) == 0.0f);
    for (int time = 0; time < 2; ++time)
    {
        engine.setHumGain (1.0f);
        engine.setHissGain (2000.0f);
        const auto heard = play (48000);
        CHECK (apartDb ({ heard }, expected, 2000) < -110.0); // after 20 ms of fading in, and the filter's own rest
        engine.setHumGain (0.0f);
        engine.setHissGain (0.0f);
        play (24000); // what falls by a share of itself needs a third of a second from so loud a hiss
    }
}

TEST_CASE ("a peak is found to the bit, and what is no number is seen")
{
    std::vector<float> x (1001, 0.25f);
    x[640] = -0.75f;
    CHECK (peakOf (x.data(), x.size()) == 0.75f);
    CHECK (peakOf (x.data(), 640) == 0.25f);
    CHECK (peakOf (x.data(), 0) == 0.0f);
    x[3] = std::numeric_limits<float>::infinity();
    CHECK (std::isinf (peakOf (x.data(), x.size())));
    x[900] = -std::numeric_limits<float>::quiet_NaN();
    CHECK (std::isnan (peakOf (x.data(), x.size())));
}
}
