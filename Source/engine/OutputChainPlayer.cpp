#include "engine/OutputChainPlayer.h"

#include <algorithm>

namespace coldiron
{
void OutputChainPlayer::prepare (double sampleRate)
{
    rate = sampleRate;
    started = false;
    now.reset();
    next.reset();
    fade.stop();
}

void OutputChainPlayer::reset()
{
    for (const auto* each : { &now, &next })
        if (*each)
            (*each)->reset();
}

bool OutputChainPlayer::isActive()
{
    if (fade.isActive())
        return true; // whatever comes meanwhile waits
    if (auto fresh = handOver.take(); fresh && fresh->sampleRate() == rate)
    {
        const bool wasIdle = ! now || now->isNone();
        if (! started || (wasIdle && fresh->isNone()))
            now = std::move (fresh);
        else
        {
            next = std::move (fresh);
            fade.start (static_cast<int> (fadeSeconds * rate));
        }
    }
    started = true;
    return fade.isActive() || (now && ! now->isNone());
}

void OutputChainPlayer::process (double* const* channels, int numChannels, int frames)
{
    constexpr int longest = 64;
    std::array<std::array<double, longest>, 2> other;
    double* others[] = { other[0].data(), other[1].data() };
    frames = std::min (frames, longest);
    if (fade.isActive())
        for (int c = 0; c < numChannels; ++c)
            std::copy (channels[c], channels[c] + frames, others[c]);

    if (now)
        now->process (channels, numChannels, frames);
    if (! fade.isActive())
        return;

    next->process (others, numChannels, frames);
    for (int i = 0; i < frames; ++i)
    {
        const double share = fade.share (i);
        for (int c = 0; c < numChannels; ++c)
            channels[c][i] += share * (others[c][i] - channels[c][i]);
    }
    if (fade.advance (frames))
        now = std::move (next);
}
}
