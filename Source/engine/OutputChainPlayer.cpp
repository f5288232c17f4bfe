#include "engine/OutputChainPlayer.h"

#include <algorithm>

namespace coldiron
{
void OutputChainPlayer::prepare (double sampleRate)
{
    audio.rate = sampleRate;
    audio.started = false;
    audio.now.reset();
    audio.next.reset();
    audio.fade.stop();
}

void OutputChainPlayer::reset()
{
    for (const auto* each : { &audio.now, &audio.next })
        if (*each)
            (*each)->reset();
}

bool OutputChainPlayer::isActive()
{
    if (audio.fade.isActive())
        return true; // whatever comes meanwhile waits
    if (auto fresh = handOver.take(); fresh && fresh->sampleRate() == audio.rate)
    {
        const bool wasIdle = ! audio.now || audio.now->isNone();
        if (! audio.started || (wasIdle && fresh->isNone()))
            audio.now = std::move (fresh);
        else
        {
            audio.next = std::move (fresh);
            audio.fade.start (static_cast<int> (fadeSeconds * audio.rate));
        }
    }
    audio.started = true;
    return audio.fade.isActive() || (audio.now && ! audio.now->isNone());
}

void OutputChainPlayer::process (double* const* channels, int numChannels, int frames)
{
    constexpr int longest = 64;
    std::array<std::array<double, longest>, 2> other;
    double* others[] = { other[0].data(), other[1].data() };
    frames = std::min (frames, longest);
    if (audio.fade.isActive())
        for (int c = 0; c < numChannels; ++c)
            std::copy (channels[c], channels[c] + frames, others[c]);

    if (audio.now)
        audio.now->process (channels, numChannels, frames);
    if (! audio.fade.isActive())
        return;

    audio.next->process (others, numChannels, frames);
    for (int i = 0; i < frames; ++i)
    {
        const double share = audio.fade.share (i);
        for (int c = 0; c < numChannels; ++c)
            channels[c][i] += share * (others[c][i] - channels[c][i]);
    }
    if (audio.fade.advance (frames))
        audio.now = std::move (audio.next);
}
}
