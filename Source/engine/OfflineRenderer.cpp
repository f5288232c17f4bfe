#include "engine/OfflineRenderer.h"

#include <algorithm>
#include <array>

namespace coldiron
{
RenderSpec RenderSpec::dry() const
{
    RenderSpec spec;
    spec.design = design;
    return spec;
}

OfflineRenderer::OfflineRenderer (const RenderSpec& spec)
    : hum (spec.design.hum), humGain (spec.humGain * spec.design.gain), hissGain (spec.hissGain * spec.design.gain),
      trim (spec.trim), chain (spec.after, spec.impulse, spec.design.filter.sampleRate, spec.driveLufs)
{
    isPlain = humGain == 0.0 && hissGain == 0.0 && chain.isNone();
    wiring.use (spec.design.filter.scaled (isPlain ? spec.design.gain * trim : spec.design.gain));
    hiss.use (spec.design.hiss);
}

const Channels& OfflineRenderer::process (const Channels& block)
{
    const size_t frames = block.front().size();
    out.resize (block.size());
    for (size_t c = 0; c < block.size(); ++c)
    {
        out[c].resize (frames);
        if (isPlain)
            wiring.process (static_cast<int> (c), block[c].data(), out[c].data(), static_cast<int> (frames));
    }
    for (size_t from = 0; from < frames && ! isPlain; from += chunk)
        processChunk (block, from, static_cast<int> (std::min<size_t> (chunk, frames - from)));
    return out;
}

/** What is not playing, the same on all channels. */
void OfflineRenderer::addNoises (double* sum, int frames)
{
    for (int done = 0; done < frames && humGain != 0.0; done += MainsClock::longest)
    {
        std::array<double, MainsClock::longest> phase;
        const int count = std::min (MainsClock::longest, frames - done);
        mains.next (hum.mainsHz, chain.sampleRate(), phase.data(), count);
        for (int i = 0; i < count; ++i)
            sum[done + i] += humGain * hum.at (phase[static_cast<size_t> (i)]);
    }
    if (hissGain == 0.0)
        return;
    std::array<double, chunk> noise {};
    for (int i = 0; i < frames; ++i)
        noise[static_cast<size_t> (i)] = white.next();
    hiss.process (0, noise.data(), noise.data(), frames);
    for (int i = 0; i < frames; ++i)
        sum[i] += hissGain * noise[static_cast<size_t> (i)];
}

void OfflineRenderer::processChunk (const Channels& block, size_t from, int frames)
{
    std::array<std::array<double, chunk>, FilterRunner::maxChannels> sound;
    double* sounds[] = { sound[0].data(), sound[1].data() };
    std::array<double, chunk> noises {};
    addNoises (noises.data(), frames);
    for (size_t c = 0; c < block.size(); ++c)
    {
        std::copy_n (block[c].begin() + static_cast<std::ptrdiff_t> (from), frames, sounds[c]);
        wiring.process (static_cast<int> (c), sounds[c], sounds[c], frames);
        for (int i = 0; i < frames; ++i)
            sounds[c][i] += noises[static_cast<size_t> (i)];
    }
    chain.process (sounds, static_cast<int> (block.size()), frames);
    for (size_t c = 0; c < block.size(); ++c)
        for (int i = 0; i < frames; ++i)
            out[c][from + static_cast<size_t> (i)] = static_cast<float> (trim * sounds[c][i]);
}
}
