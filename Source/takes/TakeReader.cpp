#include "takes/TakeReader.h"

#include "takes/TakeSource.h"

#include <algorithm>
#include <cmath>

namespace coldiron
{
namespace
{
sf_count_t readFrames (SNDFILE* file, float* block, sf_count_t frames) { return sf_readf_float (file, block, frames); }
sf_count_t readFrames (SNDFILE* file, int* block, sf_count_t frames) { return sf_readf_int (file, block, frames); }
}

struct TakeReader::Impl
{
    std::filesystem::path path;
    TakeSource source { path };
    TakeInfo info { source.sampleRate(), source.channels(), source.frames() };
    int64_t total = 0; ///< frames read
    std::vector<float> floats;
    std::vector<int> integers;

    explicit Impl (const std::filesystem::path& file) : path (file) {}

    [[noreturn]] void cutShort() const
    {
        throw TakeError (path.string() + ": the take is cut short: its header says " + std::to_string (info.frames)
                         + " samples and " + std::to_string (total) + " could be read; copy or export it again");
    }

    /** A file of floats may hold NaN, infinity or absurd levels. */
    void checkSamples (sf_count_t frames) const
    {
        for (sf_count_t i = 0; i < frames * info.channels; ++i)
        {
            const float sample = floats[static_cast<size_t> (i)];
            if (std::isfinite (sample) && std::abs (sample) <= loudestSample)
                continue;
            throw TakeError (path.string() + ": sample " + std::to_string (total + i / info.channels)
                             + (std::isfinite (sample)
                                    ? " is over 1000000 times full scale, which no recording is; export the take again"
                                    : " is not a number or infinite; export the take again"));
        }
    }

    /** Takes interleaved samples apart. Whole numbers are full scale at 2^31. */
    template <typename Sample>
    static void takeApart (const std::vector<Sample>& samples, sf_count_t frames, Channels& block)
    {
        constexpr float unit = std::is_floating_point_v<Sample> ? 1.0f : 0x1.0p-31f;
        const size_t channels = block.size();
        for (size_t c = 0; c < channels; ++c)
        {
            block[c].resize (static_cast<size_t> (frames));
            const Sample* from = samples.data() + c;
            float* to = block[c].data();
            for (size_t i = 0; i < static_cast<size_t> (frames); ++i)
                to[i] = static_cast<float> (from[i * channels]) * unit;
        }
    }

    template <typename Sample>
    sf_count_t read (std::vector<Sample>& samples, sf_count_t frames)
    {
        samples.resize (static_cast<size_t> (frames * info.channels));
        const auto got = readFrames (source.handle(), samples.data(), frames);
        if (got <= 0)
            cutShort();
        return got;
    }
};

TakeReader::TakeReader (const std::filesystem::path& path) : impl (std::make_unique<Impl> (path)) {}
TakeReader::~TakeReader() = default;
TakeReader::TakeReader (TakeReader&&) noexcept = default;
TakeReader& TakeReader::operator= (TakeReader&&) noexcept = default;

const TakeInfo& TakeReader::info() const { return impl->info; }

int64_t TakeReader::bytes() const
{
    std::error_code error;
    const auto size = static_cast<int64_t> (std::filesystem::file_size (impl->path, error));
    return error ? 0 : size;
}

/** Grows with what is read, not by the header's count: a forged count must not make it ask for the memory. */
bool TakeReader::read (Channels& block, size_t most)
{
    Impl& d = *impl;
    const sf_count_t wanted = std::min (static_cast<sf_count_t> (most), d.info.frames - d.total);
    if (wanted <= 0)
        return false;
    block.resize (static_cast<size_t> (d.info.channels));
    sf_count_t got = 0;
    if (d.source.isFloat())
    {
        got = d.read (d.floats, wanted);
        d.checkSamples (got);
        Impl::takeApart (d.floats, got, block);
    }
    else
    {
        got = d.read (d.integers, wanted);
        Impl::takeApart (d.integers, got, block);
    }
    d.total += got;
    return true;
}

TakeAudio readTake (TakeReader& reader, const BlockListener& hear)
{
    TakeAudio take;
    take.sampleRate = reader.info().sampleRate;
    take.channels.resize (static_cast<size_t> (reader.info().channels));
    for (auto& samples : take.channels)
        samples.reserve (static_cast<size_t> (std::min (reader.info().frames, reader.bytes())));
    for (Channels block; reader.read (block);)
    {
        for (size_t c = 0; c < block.size(); ++c)
            take.channels[c].insert (take.channels[c].end(), block[c].begin(), block[c].end());
        if (hear)
            hear (block);
    }
    return take;
}

BlockSource blocksOf (const std::filesystem::path& take)
{
    return [reader = std::make_shared<TakeReader> (take)] (Channels& block) { return reader->read (block); };
}
}
