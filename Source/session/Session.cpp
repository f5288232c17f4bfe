#include "session/Session.h"

#include <algorithm>
#include <cmath>

namespace coldiron
{
Session::Session (PresetFolders folders)
    : document (folders), standardPresets (std::move (folders)), designer (shared), reporter (shared),
      loader ([this] (LoadedTake take) { takeLoaded (std::move (take)); },
              [this] (const std::string& words) { shared.tellFault ("take", "a take cannot be used: " + words); })
{
    documentChanged (true);
}

/** Puts together what the threads compute from. @param settingsToo  the knobs go where the job says */
void Session::documentChanged (bool settingsToo)
{
    Snapshot next;
    next.job = document.job();
    next.map = ControlMap (*next.job);
    next.only = only < static_cast<int> (next.job->guitar.strings.size()) ? only : -1;
    gatherTakes (next);
    const auto before = shared.snapshot()->job;
    if (before != next.job)
        forgetRewired (*before);
    next.after =
        next.job->outputChain.value_or (OutputChainChoice { standsAlone ? OutputSound::amplifier : OutputSound::none, {}, 0.0 });

    if (settingsToo)
    {
        shared.live.load (*next.job, next.map);
        shared.settingsRevision.fetch_add (1);
    }
    shared.put (std::move (next));
    if (blindRun && ! blindStillHolds())
        blindRun.reset();
    shared.blindOption = blindRun ? blindRun->playing() : notBlind;
    followHeard();
    announce();
}

void Session::announce()
{
    shared.jobRevision.fetch_add (1);
    shared.changes.raise();
}

void Session::prepare (double sampleRate)
{
    designer.hold (false);
    framesSeen = 0;
    waited = false;
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
void Session::setEngineLevels()
{
    const auto linear = [] (double db) { return static_cast<float> (std::pow (10.0, db / 20.0)); };
    const bool sounds = ! fromTake.load (std::memory_order_relaxed) || player.isPlaying();
    const double humNow = shared.humDb.load (std::memory_order_relaxed),
                 hissNow = shared.hissGainDb.load (std::memory_order_relaxed);
    shared.engine.setHumGain (sounds && humNow > -79.9 ? linear (humNow) : 0.0f);
    shared.engine.setHissGain (sounds && hissNow >= 0.0 ? linear (hissNow) : 0.0f);
    const double headroom = fromTake.load (std::memory_order_relaxed) && shared.headroomKept.load (std::memory_order_relaxed)
                                ? shared.headroomDb.load (std::memory_order_relaxed)
                                : 0.0;
    shared.engine.setTrim (linear (trim.load (std::memory_order_relaxed) + headroom));
    shared.engine.setBypassed (bypass.load (std::memory_order_relaxed));
}

/** Seconds that an option was listened to at true level: the take playing, or something live coming in. */
void Session::countHeard (const float* const* channels, int numChannels, int frames, bool takeOn)
{
    const OptionId id = shared.heard.load (std::memory_order_relaxed);
    const double rate = shared.sampleRate.load (std::memory_order_relaxed);
    if (id == asRecorded || rate <= 0.0 || shared.isBlind() || shared.matched.load (std::memory_order_relaxed)
        || bypass.load (std::memory_order_relaxed))
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

void Session::processPart (float* const* channels, int numChannels, int frames, bool waits)
{
    const bool takeOn = fromTake.load (std::memory_order_relaxed);

    constexpr int chunk = 256;
    const double step = 1.0 / (0.010 * std::max (8000.0, shared.sampleRate.load (std::memory_order_relaxed)));
    for (int done = 0; done < frames && (takeOn || sourceMix > 0.0); done += chunk)
    {
        const int part = std::min (chunk, frames - done);
        std::array<std::array<float, chunk>, FilterRunner::maxChannels> played;
        std::array<float*, FilterRunner::maxChannels> pointers {};
        for (size_t c = 0; c < pointers.size(); ++c)
            pointers[c] = played[c].data();
        player.process (pointers.data(), numChannels, part);
        for (int i = 0; i < part; ++i)
        {
            sourceMix = takeOn ? std::min (1.0, sourceMix + step) : std::max (0.0, sourceMix - step);
            for (int c = 0; c < numChannels; ++c)
            {
                float& sample = channels[c][done + i];
                const float other = played[static_cast<size_t> (c)][static_cast<size_t> (i)];
                sample = sourceMix >= 1.0 ? other : static_cast<float> (sample + sourceMix * (other - sample));
            }
        }
    }

    const auto measure = [&] (std::atomic<float>& peak)
    {
        float largest = 0.0f;
        for (int c = 0; c < numChannels; ++c)
            for (int i = 0; i < frames; ++i)
                largest = std::max (largest, std::abs (channels[c][i]));
        if (largest > peak.load (std::memory_order_relaxed) && std::isfinite (largest))
            peak.store (largest, std::memory_order_relaxed); // a reset in between costs one block of a meter
    };
    measure (inputPeak);
    if (! waits)
        countHeard (channels, numChannels, frames, takeOn);
    shared.engine.process (channels, numChannels, frames);
    measure (outputPeak);
}
}
