#include "session/TakePlayer.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace coldiron
{
namespace
{
constexpr double pi = std::numbers::pi;
constexpr double jumpSeconds = 0.005;
}

void TakePlayer::prepare (double sampleRate)
{
    const std::scoped_lock lock (loading);
    heads = {};
    for (Head& head : heads)
        head.take = take;
    wasPlaying = false;
    if (sampleRate == rate)
        return;
    rate = sampleRate;
    rateNow = rate;
    loadAtRate (0.0);
}

void TakePlayer::load (std::shared_ptr<const TakeAudio> audio, double fromSeconds)
{
    const std::scoped_lock lock (loading);
    source = std::move (audio);
    seekTo = -1.0; // asked for of the take before
    loadAtRate (fromSeconds);
}

void TakePlayer::loadAtRate (double fromSeconds)
{
    if (rate <= 0.0)
        return;
    auto next = std::make_unique<Loaded>();
    next->number = ++counter;
    if (source)
        for (const auto& channel : source->channels)
            next->channels.push_back (resampled (channel, source->sampleRate, rate));
    next->frames = next->channels.empty() ? 0 : static_cast<int64_t> (next->channels.front().size());

    const uint64_t reached = inUse.load (std::memory_order_acquire);
    std::erase_if (keep, [&] (const auto& old) { return old->number < reached; });
    keep.push_back (std::move (next));
    const auto from = std::clamp<int64_t> (std::llround (fromSeconds * rate), 0, keep.back()->frames);
    handOver.write ({ keep.back().get(), from });
}

void TakePlayer::setLoop (double from, double to)
{
    const auto inUnits = [] (double s) { return static_cast<uint64_t> (std::clamp (s, 0.0, longestSeconds) * 1e4 + 0.5); };
    if (! (to - from >= 0.05))
        from = to = 0.0;
    loopEnds = (inUnits (from) << 32) | inUnits (to);
}

std::pair<double, double> TakePlayer::loop() const
{
    const uint64_t both = loopEnds.load();
    return { static_cast<double> (both >> 32) * 1e-4, static_cast<double> (both & 0xffffffffu) * 1e-4 };
}

void TakePlayer::jump (int64_t to)
{
    heads[static_cast<size_t> (front)].rises = false;
    front = 1 - front;
    heads[static_cast<size_t> (front)] = { take, to, 0.0, true };
}

void TakePlayer::process (float* const* channels, int numChannels, int frames)
{
    const double fs = rateNow.load (std::memory_order_relaxed);
    if (const Pointer* fresh = handOver.read())
    {
        take = fresh->take;
        jump (fresh->from);
        heads[static_cast<size_t> (front)].rises = wasPlaying;
    }

    int64_t from = 0, to = take ? take->frames : 0;
    const auto ends = loop();
    if (take && ends.second > ends.first)
    {
        from = std::min (static_cast<int64_t> (ends.first * fs), take->frames);
        to = std::min (static_cast<int64_t> (ends.second * fs), take->frames);
        if (to - from < 64)
            from = 0, to = take->frames;
    }

    bool plays = playing.load (std::memory_order_relaxed) && take != nullptr && take->frames > 0;
    const double wanted = seekTo.exchange (-1.0);
    if (wanted >= 0.0 && take != nullptr)
    {
        const auto frame = std::clamp<int64_t> (static_cast<int64_t> (wanted * fs), 0, take->frames);
        if (plays && wasPlaying)
            jump (frame);
        else
            heads[static_cast<size_t> (front)].at = frame;
    }
    if (plays != wasPlaying)
    {
        Head& head = heads[static_cast<size_t> (front)];
        head.rises = plays;
        if (plays && (head.at >= to || head.at < from))
            head.at = from;
        wasPlaying = plays;
    }

    const double step = 1.0 / std::max (1.0, jumpSeconds * fs);
    const bool loops = looping.load (std::memory_order_relaxed);
    for (int i = 0; i < frames; ++i)
    {
        double shares[2] = {};
        for (size_t h = 0; h < 2; ++h)
        {
            Head& head = heads[h];
            head.gain = head.rises ? std::min (1.0, head.gain + step) : std::max (0.0, head.gain - step);
            shares[h] = head.gain >= 1.0 ? 1.0 : 0.5 - 0.5 * std::cos (pi * head.gain);
        }
        for (int c = 0; c < numChannels; ++c)
        {
            double sum = 0.0;
            for (size_t h = 0; h < 2; ++h)
                if (shares[h] > 0.0 && heads[h].take != nullptr && heads[h].at >= 0 && heads[h].at < heads[h].take->frames)
                {
                    const auto& sides = heads[h].take->channels;
                    const auto& channel = sides[std::min (static_cast<size_t> (c), sides.size() - 1)];
                    sum += shares[h] * channel[static_cast<size_t> (heads[h].at)];
                }
            channels[c][i] = static_cast<float> (sum);
        }
        for (Head& head : heads)
            if (head.gain > 0.0)
                ++head.at;
        if (plays && heads[static_cast<size_t> (front)].at >= to)
        {
            if (loops)
                jump (from);
            else
            {
                playing.store (false);
                heads[static_cast<size_t> (front)].rises = false;
                wasPlaying = plays = false;
            }
        }
    }
    if (take != nullptr)
    {
        uint64_t oldest = take->number;
        for (const Head& head : heads)
            if (head.take != nullptr && head.gain > 0.0)
                oldest = std::min (oldest, head.take->number);
        inUse.store (oldest, std::memory_order_release);
    }
    if (take != nullptr && fs > 0.0)
        position.store (static_cast<double> (std::min (heads[static_cast<size_t> (front)].at, take->frames)) / fs);
}
}
