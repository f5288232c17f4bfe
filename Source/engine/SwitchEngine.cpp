#include "engine/SwitchEngine.h"

#include <bit>
#include <cmath>
#include <stdexcept>

namespace coldiron
{
namespace
{
constexpr double glideSeconds = 0.020; ///< of bypass, hum and trim over their whole way of 1

bool isFinite (const ModalFilter& filter)
{
    const auto isNumber = [] (const std::complex<double>& z) { return std::isfinite (z.real()) && std::isfinite (z.imag()); };
    return std::isfinite (filter.direct) && std::all_of (filter.poles.begin(), filter.poles.end(), isNumber)
           && std::all_of (filter.residues.begin(), filter.residues.end(), isNumber);
}
}

void SwitchEngine::prepare (double sampleRate)
{
    audio.rate = sampleRate;
    audio.started = false;
    audio.fade.stop();
    fading.store (false, std::memory_order_relaxed);
    audio.mains.reset();
    audio.white.reset();
    audio.areNoisesAtStart = true;
    after.prepare (sampleRate);
    EngineDesign plain;
    plain.filter = ModalFilter::unity (sampleRate);
    plain.probe();
    audio.playing = 0;
    for (Player& p : audio.players)
        load (p, plain);
}

void SwitchEngine::publish (const EngineDesign& design)
{
    if (! FilterRunner::fits (design.filter) || ! FilterRunner::fits (design.hiss))
        throw std::invalid_argument ("a filter has more poles than a runner holds");
    if (! isFinite (design.filter) || ! isFinite (design.hiss) || ! std::isfinite (design.gain))
        throw std::invalid_argument ("a filter of values that are no numbers");
    pending.write (design);
}

void SwitchEngine::load (Player& p, const EngineDesign& design)
{
    p.runner.use (design.filter);
    p.runner.reset();
    p.hiss.use (design.hiss);
    p.hiss.reset();
    p.gain = design.gain;
    p.hum = design.hum;
    p.probeDb = design.probeDb;
}

int SwitchEngine::fadeFramesTo (const EngineDesign& design)
{
    double farthest = 0.0;
    const auto& now = audio.now().probeDb;
    for (size_t i = 0; i < now.size(); ++i)
        farthest = std::max (farthest, static_cast<double> (std::abs (now[i] - design.probeDb[i])));

    // 20 ms up to 1 dB, 30 at 6, 50 from 16 dB on.
    const double seconds = std::clamp (shortestFade + (farthest - 1.0) * 0.002, shortestFade, longestFade);
    return std::max (1, static_cast<int> (seconds * audio.rate + 0.5));
}

void SwitchEngine::pollPending()
{
    if (audio.fade.isActive())
        return; // whatever comes meanwhile waits, the newest of it
    const EngineDesign* next = pending.read();
    if (next == nullptr || next->filter.sampleRate != audio.rate)
        return;

    if (! audio.started)
    {
        load (audio.now(), *next);
        return;
    }
    load (audio.next(), *next);
    audio.fade.start (fadeFramesTo (*next));
    fading.store (true, std::memory_order_relaxed);
}

void SwitchEngine::process (float* const* channels, int numChannels, int frames)
{
    numChannels = std::min (numChannels, FilterRunner::maxChannels);
    if (frames > 0)
        pollPending();
    if (! audio.started)
    {
        audio.bypassMix.value = bypassed.load (std::memory_order_relaxed) ? 1.0 : 0.0;
        audio.humLevel.value = humGain.load (std::memory_order_relaxed);
        audio.hissLevel.value = hissGain.load (std::memory_order_relaxed);
        audio.trimLevel.value = trim.load (std::memory_order_relaxed);
    }
    for (int done = 0; done < frames;)
    {
        std::array<float*, FilterRunner::maxChannels> part {};
        for (int c = 0; c < numChannels; ++c)
            part[static_cast<size_t> (c)] = channels[c] + done;
        // A fade ends on its frame, whatever the blocks, so that what waits begins where it would in any other host.
        const int left = audio.fade.isActive() ? std::min (frames - done, audio.fade.left()) : frames - done;
        const int count = std::min (chunk, left);
        processChunk (part.data(), numChannels, count);
        done += count;
        if (! audio.fade.isActive())
            pollPending();
    }
    audio.started = audio.started || frames > 0;
}

/** @returns false, and silence, where a sample is beyond `loudest` */
bool SwitchEngine::takeIn (const float* samples, double* out, int frames)
{
    // The bits of positive numbers stand in their order, and those of no number above all.
    constexpr uint32_t most = std::bit_cast<uint32_t> (loudest);
    uint32_t beyond = 0;
    for (int i = 0; i < frames; ++i)
    {
        beyond |= static_cast<uint32_t> ((std::bit_cast<uint32_t> (samples[i]) & 0x7fffffffu) > most);
        out[i] = static_cast<double> (samples[i]);
    }
    if (beyond == 0)
        return true;
    bool isFine = true;
    for (int i = 0; i < frames; ++i)
    {
        isFine = isFine && ! (std::isfinite (samples[i]) && std::abs (samples[i]) > loudest);
        out[i] = std::isfinite (samples[i]) ? out[i] : 0.0;
    }
    if (! isFine)
        std::fill (out, out + frames, 0.0);
    return isFine;
}

void SwitchEngine::forgetSound()
{
    for (Player& p : audio.players)
    {
        p.runner.reset();
        p.hiss.reset();
    }
    after.reset();
}

/** The noise behind both designs is the same, so that nothing is heard of a switch but what it changes. */
void SwitchEngine::addHiss (Player& now, Player* next, const double* nextShare, double* sum, int frames)
{
    const double step = 1.0 / (glideSeconds * audio.rate), wanted = hissGain.load (std::memory_order_relaxed);
    if (audio.hissLevel.value == 0.0 && wanted == 0.0)
        return;
    std::array<double, chunk> noise {}, first, second;
    for (int i = 0; i < frames; ++i)
        noise[static_cast<size_t> (i)] = audio.white.next();
    now.hiss.process (0, noise.data(), first.data(), frames);
    if (next != nullptr)
        next->hiss.process (0, noise.data(), second.data(), frames);
    for (int i = 0; i < frames; ++i)
    {
        const auto k = static_cast<size_t> (i);
        double sound = now.gain * first[k];
        if (next != nullptr)
            sound += nextShare[k] * (next->gain * second[k] - sound);
        sum[k] += audio.hissLevel.next (wanted, step * std::max ({ 1e-3, wanted, audio.hissLevel.value })) * sound;
    }
}

void SwitchEngine::processChunk (float* const* channels, int numChannels, int frames)
{
    Player &now = audio.now(), &next = audio.next();
    const bool fades = audio.fade.isActive();

    std::array<double, chunk> nextShare, hum, wet, level; // hiss is added to the hum
    const double step = 1.0 / (glideSeconds * audio.rate);
    const double wantedBypass = bypassed.load (std::memory_order_relaxed) ? 1.0 : 0.0;
    const double wantedHum = humGain.load (std::memory_order_relaxed), wantedTrim = trim.load (std::memory_order_relaxed);

    const bool isQuiet = audio.humLevel.value == 0.0 && wantedHum == 0.0 && audio.hissLevel.value == 0.0
                         && hissGain.load (std::memory_order_relaxed) == 0.0f;
    if (isQuiet && ! audio.areNoisesAtStart)
    {
        audio.mains.reset();
        audio.white.reset();
        for (Player& p : audio.players)
            p.hiss.reset();
    }
    audio.areNoisesAtStart = isQuiet;
    std::array<double, chunk> phase;
    static_assert (chunk <= MainsClock::longest);
    if (! isQuiet)
        audio.mains.next (now.hum.mainsHz, audio.rate, phase.data(), frames);

    // Most of the time nothing moves: then there is nothing to work out sample by sample.
    const bool isActive = after.isActive();
    const bool isSteady = ! isActive && ! fades && audio.bypassMix.value == wantedBypass && audio.trimLevel.value == wantedTrim
                          && isQuiet && wantedBypass == 0.0;
    for (int i = 0; i < frames && ! isSteady; ++i)
    {
        const auto k = static_cast<size_t> (i);
        nextShare[k] = fades ? audio.fade.share (i) : 0.0;
        const double mix = audio.bypassMix.next (wantedBypass, step);
        wet[k] = mix == 0.0 ? 1.0 : 1.0 - raisedCosine (mix);
        level[k] = audio.trimLevel.next (wantedTrim, step * std::max (1.0, wantedTrim));
        hum[k] = audio.humLevel.next (wantedHum, step * std::max ({ 1e-3, wantedHum, audio.humLevel.value }));
        if (hum[k] > 0.0)
        {
            const double sound = now.gain * now.hum.at (phase[k]);
            hum[k] *= fades ? sound + nextShare[k] * (next.gain * next.hum.at (phase[k]) - sound) : sound;
        }
    }
    if (! isSteady)
        addHiss (now, fades ? &next : nullptr, nextShare.data(), hum.data(), frames);

    std::array<std::array<double, chunk>, FilterRunner::maxChannels> dry, sound;
    double* sounds[] = { sound[0].data(), sound[1].data() };
    bool isNoSound = false;
    for (int c = 0; c < numChannels; ++c)
        isNoSound = ! takeIn (channels[c], dry[static_cast<size_t> (c)].data(), frames) || isNoSound;
    if (isNoSound && ! audio.wasNoSound)
        forgetSound(); // once: from here on the filters are given silence
    audio.wasNoSound = isNoSound;
    for (int c = 0; c < numChannels; ++c)
    {
        const auto& in = dry[static_cast<size_t> (c)];
        auto& out = sound[static_cast<size_t> (c)];
        now.runner.process (c, in.data(), out.data(), frames);
        if (isSteady)
        {
            const double all = now.gain * audio.trimLevel.value;
            for (int i = 0; i < frames; ++i)
                channels[c][i] = static_cast<float> (all * out[static_cast<size_t> (i)]);
            continue;
        }
        std::array<double, chunk> second;
        if (fades)
            next.runner.process (c, in.data(), second.data(), frames);
        for (int i = 0; i < frames; ++i)
        {
            const auto k = static_cast<size_t> (i);
            double y = now.gain * out[k];
            if (fades)
                y += nextShare[k] * (next.gain * second[k] - y);
            out[k] = y + hum[k];
        }
    }
    if (isActive)
        after.process (sounds, numChannels, frames);
    for (int c = 0; c < numChannels && ! isSteady; ++c)
        for (int i = 0; i < frames; ++i)
        {
            const auto k = static_cast<size_t> (i);
            const double x = dry[static_cast<size_t> (c)][k], y = sounds[c][i] * level[k];
            channels[c][i] = static_cast<float> (wet[k] >= 1.0 ? y : x + wet[k] * (y - x));
        }
    // A state that is no number stays so for ever: its last sample tells.
    for (int c = 0; c < numChannels; ++c)
        if (! std::isfinite (channels[c][frames - 1]))
        {
            forgetSound();
            std::fill (channels[c], channels[c] + frames, 0.0f);
        }

    if (audio.fade.advance (frames))
    {
        audio.playing = 1 - audio.playing;
        fading.store (false, std::memory_order_relaxed);
    }
}
}
