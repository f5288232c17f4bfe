#include "session/AudioPath.h"

#include "session/Designer.h"

#include <algorithm>
#include <cmath>

namespace coldiron
{
namespace
{
void raisePeak (std::atomic<float>& peak, const float* const* channels, int numChannels, int frames)
{
    float largest = 0.0f;
    for (int c = 0; c < numChannels; ++c)
        for (int i = 0; i < frames; ++i)
            largest = std::max (largest, std::abs (channels[c][i]));
    if (largest > peak.load (std::memory_order_relaxed) && std::isfinite (largest))
        peak.store (largest, std::memory_order_relaxed); // a reset in between costs one block of a meter
}
}

AudioPath::AudioPath (SharedState& s, Designer& d, std::function<bool (double)> await)
    : shared (s), designer (d), awaitSound (std::move (await))
{
}

void AudioPath::prepare (double sampleRate)
{
    designer.hold (false);
    audioThread.framesSeen = 0;
    audioThread.waited = false;
    player.prepare (sampleRate);
    setEngineLevels();
    shared.engine.prepare (sampleRate);
    shared.sampleRate = sampleRate;
    shared.prepared.fetch_add (1);
    shared.tryAgain();
    player.waitUntilLoaded (5.0);
    designer.waitUntilIdle (5.0);
}

/** Hum and hiss go quiet with the take. */
void AudioPath::setEngineLevels()
{
    const auto linear = [] (double db) { return static_cast<float> (std::pow (10.0, db / 20.0)); };
    const bool fromTake = shared.fromTake.load (std::memory_order_relaxed), sounds = ! fromTake || player.isPlaying();
    const double humNow = shared.humDb.load (std::memory_order_relaxed),
                 hissNow = shared.hissGainDb.load (std::memory_order_relaxed);
    shared.engine.setHumGain (sounds && humNow > -79.9 ? linear (humNow) : 0.0f);
    shared.engine.setHissGain (sounds && hissNow >= 0.0 ? linear (hissNow) : 0.0f);
    const double headroom = fromTake && shared.headroomKept.load (std::memory_order_relaxed)
                                ? shared.headroomDb.load (std::memory_order_relaxed)
                                : 0.0;
    shared.engine.setTrim (linear (shared.trimDb.load (std::memory_order_relaxed) + headroom));
    shared.engine.setBypassed (shared.bypassed.load (std::memory_order_relaxed));
}

/** Late once is late for as long as nothing changes: a render that waits at every step never ends. */
void AudioPath::waitForSound()
{
    const uint32_t now = shared.snapshot()->revision;
    if (awaitSound (lateFor.load() == now ? std::min (0.02, longestWait) : longestWait))
        lateFor = 0;
    else if (lateFor.exchange (now) != now)
        shared.announceJob(); // the faults say so
}

void AudioPath::process (float* const* channels, int numChannels, int frames, bool waits)
{
    numChannels = std::min (numChannels, FilterRunner::maxChannels);
    designer.hold (waits);
    if (! waits)
        setEngineLevels();
    for (int done = 0; done < frames;)
    {
        int part = frames - done;
        if (waits)
        {
            const int into = static_cast<int> (audioThread.framesSeen % renderStep);
            if (into == 0 || ! audioThread.waited)
            {
                waitForSound();
                setEngineLevels();
            }
            part = std::min (part, renderStep - into);
        }
        std::array<float*, FilterRunner::maxChannels> pointers {};
        for (int c = 0; c < numChannels; ++c)
            pointers[static_cast<size_t> (c)] = channels[c] + done;
        processPart (pointers.data(), numChannels, part, waits);
        audioThread.waited = waits;
        audioThread.framesSeen += part;
        done += part;
    }
}

/** The take over what came in, faded within 10 ms when the source changes. */
void AudioPath::mixTake (float* const* channels, int numChannels, int frames, bool takeOn)
{
    constexpr int chunk = 256;
    double& mix = audioThread.sourceMix;
    const double step = 1.0 / (0.010 * std::max (8000.0, shared.sampleRate.load (std::memory_order_relaxed)));
    for (int done = 0; done < frames && (takeOn || mix > 0.0); done += chunk)
    {
        const int part = std::min (chunk, frames - done);
        std::array<std::array<float, chunk>, FilterRunner::maxChannels> played;
        std::array<float*, FilterRunner::maxChannels> pointers {};
        for (size_t c = 0; c < pointers.size(); ++c)
            pointers[c] = played[c].data();
        player.process (pointers.data(), numChannels, part);
        for (int i = 0; i < part; ++i)
        {
            mix = takeOn ? std::min (1.0, mix + step) : std::max (0.0, mix - step);
            for (int c = 0; c < numChannels; ++c)
            {
                float& sample = channels[c][done + i];
                const float other = played[static_cast<size_t> (c)][static_cast<size_t> (i)];
                sample = mix >= 1.0 ? other : static_cast<float> (sample + mix * (other - sample));
            }
        }
    }
}

/** Seconds that an option was listened to at true level: the take playing, or something live coming in. */
void AudioPath::countHeard (const float* const* channels, int numChannels, int frames, bool takeOn)
{
    const OptionId id = shared.heard.load (std::memory_order_relaxed);
    const double rate = shared.sampleRate.load (std::memory_order_relaxed);
    if (id == asRecorded || rate <= 0.0 || shared.isBlind() || shared.matched.load (std::memory_order_relaxed)
        || shared.bypassed.load (std::memory_order_relaxed))
        return;
    constexpr float audible = 0.001f; // -60 dBFS
    bool sounds = takeOn && player.isPlaying();
    for (int c = 0; c < numChannels && ! takeOn && ! sounds; ++c)
        for (int i = 0; i < frames && ! sounds; ++i)
            sounds = std::abs (channels[c][i]) > audible;
    auto& seconds = shared.heardSeconds[indexOf (id)];
    if (! sounds)
        return;
    const double before = seconds.load (std::memory_order_relaxed), now = before + frames / rate;
    seconds.store (now, std::memory_order_relaxed);
    if (before < 1.0 && now >= 1.0)
        shared.heardRevision.fetch_add (1, std::memory_order_relaxed); // the agreement may be offered now
}

void AudioPath::processPart (float* const* channels, int numChannels, int frames, bool waits)
{
    const bool takeOn = shared.fromTake.load (std::memory_order_relaxed);
    mixTake (channels, numChannels, frames, takeOn);
    raisePeak (inputPeak, channels, numChannels, frames);
    if (! waits)
        countHeard (channels, numChannels, frames, takeOn);
    shared.engine.process (channels, numChannels, frames);
    raisePeak (outputPeak, channels, numChannels, frames);
}
}
