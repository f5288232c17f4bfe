#include "engine/OutputChainPlayer.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace coldiron
{
void OutputChainPlayer::prepare (double sampleRate)
{
    rate = sampleRate;
    started = false;
    now.chain = next.chain = nullptr;
    fadeAt = fadeLength = 0;
}

void OutputChainPlayer::reset()
{
    for (const Numbered& each : { now, next })
        if (each.chain != nullptr)
            each.chain->reset();
}

void OutputChainPlayer::publish (std::unique_ptr<OutputChain> chain)
{
    const uint64_t oldest = oldestInUse.load (std::memory_order_acquire);
    std::erase_if (keep, [&] (const auto& old) { return old.first < oldest; });
    keep.emplace_back (++counter, std::move (chain));
    handOver.write ({ keep.back().second.get(), counter });
}

bool OutputChainPlayer::isActive()
{
    if (fadeLength > 0)
        return true; // whatever comes meanwhile waits
    if (const Numbered* fresh = handOver.read(); fresh != nullptr && fresh->chain->sampleRate() == rate)
    {
        const bool wasIdle = now.chain == nullptr || now.chain->isNone();
        if (! started || (wasIdle && fresh->chain->isNone()))
        {
            now = *fresh;
            oldestInUse.store (now.number, std::memory_order_release);
        }
        else
        {
            next = *fresh;
            fadeAt = 0;
            fadeLength = std::max (1, static_cast<int> (fadeSeconds * rate));
        }
    }
    started = true;
    return fadeLength > 0 || (now.chain != nullptr && ! now.chain->isNone());
}

void OutputChainPlayer::process (double* const* channels, int numChannels, int frames)
{
    constexpr int longest = 64;
    std::array<std::array<double, longest>, 2> other;
    double* others[] = { other[0].data(), other[1].data() };
    frames = std::min (frames, longest);
    if (fadeLength > 0)
        for (int c = 0; c < numChannels; ++c)
            std::copy (channels[c], channels[c] + frames, others[c]);

    if (now.chain != nullptr)
        now.chain->process (channels, numChannels, frames);
    if (fadeLength == 0)
        return;

    next.chain->process (others, numChannels, frames);
    for (int i = 0; i < frames; ++i)
    {
        const double share = 0.5 - 0.5 * std::cos (std::numbers::pi * std::min (1.0, (fadeAt + i + 1.0) / fadeLength));
        for (int c = 0; c < numChannels; ++c)
            channels[c][i] += share * (others[c][i] - channels[c][i]);
    }
    if ((fadeAt += frames) >= fadeLength)
    {
        now = next;
        next.chain = nullptr;
        fadeLength = 0;
        oldestInUse.store (now.number, std::memory_order_release);
    }
}
}
