#include "session/TakePlayer.h"

#include "dsp/Crossfade.h"
#include "files/Log.h"

#include <algorithm>
#include <cmath>

namespace coldiron
{
namespace
{
constexpr double jumpSeconds = 0.005;
}

TakePlayer::TakePlayer()
    : resampler (
        "coldiron-player", [this] (const Cancellation& stop) { return resample (stop); },
        [] (const std::string& words) { logFault ("the take cannot be played: " + words); })
{
}

void TakePlayer::prepare (double sampleRate)
{
    const std::scoped_lock lock (loading);
    audio.before.reset();
    audio.heads = {};
    for (Head& head : audio.heads)
        head.take = audio.take.get();
    audio.wasPlaying = false;
    if (sampleRate == rate)
        return;
    rate = sampleRate;
    rateNow = rate;
    handOverTake (nullptr, 0.0); // what was loaded is of another rate
    want (0.0);
}

void TakePlayer::load (std::shared_ptr<const TakeAudio> take, double fromSeconds)
{
    const std::scoped_lock lock (loading);
    source = std::move (take);
    seekTo = -1.0; // asked for of the take before
    want (fromSeconds);
}

void TakePlayer::want (double fromSeconds)
{
    wantedFrom = fromSeconds;
    ++wanted;
    if (rate <= 0.0)
        return;
    if (source == nullptr || source->sampleRate == rate)
    {
        handOverTake (source, fromSeconds);
        loaded = wanted;
    }
    else
        resampler.wake();
}

void TakePlayer::handOverTake (std::shared_ptr<const TakeAudio> take, double fromSeconds)
{
    auto next = std::make_unique<Loaded>();
    next->frames = take == nullptr ? 0 : take->frames();
    next->from = std::clamp<int64_t> (std::llround (fromSeconds * rate), 0, next->frames);
    next->audio = std::move (take);
    handOver.publish (std::move (next));
}

bool TakePlayer::resample (const Cancellation& stop)
{
    std::shared_ptr<const TakeAudio> from;
    uint32_t number = 0;
    auto to = std::make_shared<TakeAudio>();
    {
        const std::scoped_lock lock (loading);
        if (rate <= 0.0 || loaded == wanted)
            return false;
        from = source;
        number = wanted;
        to->sampleRate = rate;
    }
    const Cancellation isUnwanted ([&] { return stop.isRequested() || wanted != number; });
    for (const auto& channel : from->channels)
        to->channels.push_back (resampled (channel, from->sampleRate, to->sampleRate, isUnwanted));
    const std::scoped_lock lock (loading);
    if (wanted == number)
    {
        handOverTake (std::move (to), wantedFrom);
        loaded = number;
    }
    return true;
}

bool TakePlayer::waitUntilLoaded (double seconds)
{
    return resampler.waitFor (seconds,
                              [this]
                              {
                                  const std::scoped_lock lock (loading);
                                  return rate <= 0.0 || loaded == wanted;
                              });
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

void TakePlayer::AudioThread::jump (int64_t to)
{
    head().rises = false;
    front = 1 - front;
    head() = { take.get(), to, {}, true };
}

/** The head that fell silent, or the one that fades out still, makes room: no third take is in use. */
void TakePlayer::AudioThread::use (Handover<Loaded>::Held fresh)
{
    const int64_t from = fresh->from;
    std::swap (take, fresh);
    jump (from);
    head().rises = wasPlaying;
    before = std::move (fresh);
}

void TakePlayer::AudioThread::letGo()
{
    bool isUsed = false;
    for (Head& each : heads)
    {
        if (each.take != take.get() && each.gain.value == 0.0)
            each.take = nullptr;
        isUsed = isUsed || (each.take != nullptr && each.take == before.get());
    }
    if (! isUsed)
        before.reset();
}

float TakePlayer::sampleOf (const Head& head, size_t channel)
{
    if (head.take == nullptr || head.at < 0 || head.at >= head.take->frames)
        return 0.0f;
    const auto& channels = head.take->audio->channels;
    return channels[std::min (channel, channels.size() - 1)][static_cast<size_t> (head.at)];
}

void TakePlayer::process (float* const* channels, int numChannels, int frames)
{
    const double fs = rateNow.load (std::memory_order_relaxed);
    if (auto fresh = handOver.take())
        audio.use (std::move (fresh));
    const Loaded* take = audio.take.get();

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
    const double sought = seekTo.exchange (-1.0);
    if (sought >= 0.0 && take != nullptr)
    {
        const auto frame = std::clamp<int64_t> (static_cast<int64_t> (sought * fs), 0, take->frames);
        if (plays && audio.wasPlaying)
            audio.jump (frame);
        else
            audio.head().at = frame;
    }
    if (plays != audio.wasPlaying)
    {
        Head& head = audio.head();
        head.rises = plays;
        if (plays && (head.at >= to || head.at < from))
            head.at = from;
        audio.wasPlaying = plays;
    }

    const double step = 1.0 / std::max (1.0, jumpSeconds * fs);
    const bool loops = looping.load (std::memory_order_relaxed);
    for (int i = 0; i < frames; ++i)
    {
        std::array<double, 2> shares {};
        for (size_t h = 0; h < 2; ++h)
        {
            Head& head = audio.heads[h];
            const double gain = head.gain.next (head.rises ? 1.0 : 0.0, step);
            shares[h] = gain >= 1.0 ? 1.0 : raisedCosine (gain);
        }
        for (int c = 0; c < numChannels; ++c)
        {
            double sum = 0.0;
            for (size_t h = 0; h < 2; ++h)
                if (shares[h] > 0.0)
                    sum += shares[h] * sampleOf (audio.heads[h], static_cast<size_t> (c));
            channels[c][i] = static_cast<float> (sum);
        }
        for (Head& head : audio.heads)
            if (head.gain.value > 0.0)
                ++head.at;
        if (plays && audio.head().at >= to)
        {
            if (loops)
                audio.jump (from);
            else
            {
                playing.store (false);
                audio.head().rises = false;
                audio.wasPlaying = plays = false;
            }
        }
    }
    audio.letGo();
    if (take != nullptr && fs > 0.0)
        position.store (static_cast<double> (std::min (audio.head().at, take->frames)) / fs);
}
}
