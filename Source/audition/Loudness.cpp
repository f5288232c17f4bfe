#include "audition/Loudness.h"

#include <ebur128.h>

#include <algorithm>
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

void feed (ebur128_state* state, const std::vector<std::vector<float>>& channels)
{
    if (channels.size() != state->channels)
        throw std::invalid_argument ("loudness was given another number of channels");
    constexpr size_t block = 8192; // frames
    const size_t frames = channels.front().size(), width = channels.size();
    std::vector<float> mixed (block * width);
    for (size_t from = 0; from < frames; from += block)
    {
        const size_t count = std::min (block, frames - from);
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
    feed (impl->state.get(), channels);
}

double Loudness::integratedLufs() const
{
    double lufs = 0.0;
    if (ebur128_loudness_global (impl->state.get(), &lufs) != EBUR128_SUCCESS)
        return -std::numeric_limits<double>::infinity();
    return lufs;
}

double loudnessOf (const std::vector<std::vector<float>>& channels, double sampleRate)
{
    Loudness loudness (sampleRate, static_cast<int> (channels.size()));
    loudness.add (channels);
    return loudness.integratedLufs();
}

double truePeakDb (const std::vector<std::vector<float>>& channels, double sampleRate)
{
    const auto state = makeState (sampleRate, static_cast<int> (channels.size()), EBUR128_MODE_TRUE_PEAK);
    feed (state.get(), channels);
    double most = 0.0;
    for (unsigned c = 0; c < channels.size(); ++c)
    {
        double peak = 0.0;
        if (ebur128_true_peak (state.get(), c, &peak) == EBUR128_SUCCESS)
            most = std::max (most, peak);
    }
    return most > 1e-15 ? 20.0 * std::log10 (most) : -300.0;
}
}
