#include "metering/Loudness.h"

#include "metering/Peak.h"

#include <ebur128.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <stdexcept>

namespace coldiron
{
namespace
{
using Handle = std::unique_ptr<ebur128_state, void (*) (ebur128_state*)>;

Handle makeState (double sampleRate, int channels, int mode)
{
    Handle state (nullptr, [] (ebur128_state* s) { ebur128_destroy (&s); });
    if (channels < 1 || channels > 2 || ! (sampleRate >= 16.0 && sampleRate <= 2822400.0))
        throw std::invalid_argument ("loudness takes one or two channels at 16 Hz to 2.8 MHz");
    state.reset (ebur128_init (static_cast<unsigned> (channels), std::lround (sampleRate), mode));
    if (state == nullptr)
        throw std::invalid_argument ("loudness could not be set up for this sample rate");
    if (channels == 1)
        ebur128_set_channel (state.get(), 0, EBUR128_DUAL_MONO);
    return state;
}

void feed (ebur128_state* state, const std::vector<std::vector<float>>& channels, size_t from, size_t end)
{
    if (channels.size() != state->channels)
        throw std::invalid_argument ("loudness was given another number of channels");
    constexpr size_t block = 2048; // frames
    const size_t width = channels.size();
    std::array<float, block * 2> mixed;
    for (; from < end; from += block)
    {
        const size_t count = std::min (block, end - from);
        if (width == 1)
        {
            ebur128_add_frames_float (state, channels[0].data() + from, count);
            continue;
        }
        for (size_t i = 0; i < count; ++i)
            for (size_t c = 0; c < width; ++c)
                mixed[i * width + c] = channels[c][from + i];
        ebur128_add_frames_float (state, mixed.data(), count);
    }
}
}

struct Loudness::Impl
{
    Handle state;
};

Loudness::Loudness (double sampleRate, int channels)
    : impl (std::make_unique<Impl> (Impl { makeState (sampleRate, channels, EBUR128_MODE_I) }))
{
}

Loudness::~Loudness() = default;
Loudness::Loudness (Loudness&&) noexcept = default;
Loudness& Loudness::operator= (Loudness&&) noexcept = default;

void Loudness::add (const std::vector<std::vector<float>>& channels)
{
    feed (impl->state.get(), channels, 0, channels.front().size());
}

double Loudness::integratedLufs() const
{
    double lufs = 0.0;
    if (ebur128_loudness_global (impl->state.get(), &lufs) != EBUR128_SUCCESS)
        return -std::numeric_limits<double>::infinity();
    return lufs;
}

/** libebur128 makes four samples of one (two at 96 kHz and more) with a filter of 12 taps whose magnitudes sum to 2.1 at
    most: samples that all stay under a level cannot make a peak of more than 2.1 times that. So stretches without a sample
    above are left away, but for those beside one with, which the filter reaches into; where two stretches are joined that
    way it holds low samples alone. */
struct TruePeak::Impl
{
    static constexpr size_t stretch = 256; ///< frames
    static constexpr double most = 2.2;

    Handle state;
    float level = 0.0f; ///< stretches whose samples all stay under it are quiet
    bool wasLoud = false, wasFed = false;
    std::vector<std::vector<float>> before; ///< the stretch before, where it was not fed

    bool isLoud (const std::vector<std::vector<float>>& channels, size_t from, size_t end) const
    {
        return std::any_of (channels.begin(), channels.end(),
                            [&] (const auto& channel) { return peakOf (channel.data() + from, end - from) >= level; });
    }
};

TruePeak::TruePeak (double sampleRate, int channels, double leastDb)
    : impl (std::make_unique<Impl> (Impl { makeState (sampleRate, channels, EBUR128_MODE_TRUE_PEAK), 0.0f, false, false, {} }))
{
    impl->level = leastDb <= -300.0 ? 0.0f : static_cast<float> (std::pow (10.0, leastDb / 20.0) / Impl::most);
}

TruePeak::~TruePeak() = default;
TruePeak::TruePeak (TruePeak&&) noexcept = default;
TruePeak& TruePeak::operator= (TruePeak&&) noexcept = default;

void TruePeak::add (const std::vector<std::vector<float>>& channels)
{
    Impl& d = *impl;
    const size_t frames = channels.front().size();
    if (d.level == 0.0f)
        return feed (d.state.get(), channels, 0, frames);
    for (size_t from = 0; from < frames; from += Impl::stretch)
    {
        const size_t end = std::min (frames, from + Impl::stretch);
        const bool loud = d.isLoud (channels, from, end);
        if (loud && ! d.wasFed && ! d.before.empty())
            feed (d.state.get(), d.before, 0, d.before.front().size());
        d.wasFed = loud || d.wasLoud;
        d.wasLoud = loud;
        if (d.wasFed)
            feed (d.state.get(), channels, from, end);
        else
        {
            d.before.resize (channels.size());
            for (size_t c = 0; c < channels.size(); ++c)
                d.before[c].assign (channels[c].begin() + static_cast<std::ptrdiff_t> (from),
                                    channels[c].begin() + static_cast<std::ptrdiff_t> (end));
        }
    }
}

double TruePeak::db() const
{
    double most = 0.0;
    for (unsigned c = 0; c < impl->state->channels; ++c)
    {
        double peak = 0.0;
        if (ebur128_true_peak (impl->state.get(), c, &peak) == EBUR128_SUCCESS)
            most = std::max (most, peak);
    }
    return most > 1e-15 ? 20.0 * std::log10 (most) : -300.0;
}

double loudnessOf (const std::vector<std::vector<float>>& channels, double sampleRate)
{
    Loudness loudness (sampleRate, static_cast<int> (channels.size()));
    loudness.add (channels);
    return loudness.integratedLufs();
}

double truePeakDb (const std::vector<std::vector<float>>& channels, double sampleRate)
{
    TruePeak peak (sampleRate, static_cast<int> (channels.size()));
    peak.add (channels);
    return peak.db();
}
}
