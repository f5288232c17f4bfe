#include "job/TakeFile.h"

#include "job/TakeSource.h"
#include "job/WriteFile.h"

#include <sndfile.h>

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <cstring>
#include <optional>
#include <type_traits>

namespace coldiron
{
namespace
{
struct Closer
{
    void operator() (SNDFILE* file) const { sf_close (file); }
};
using File = std::unique_ptr<SNDFILE, Closer>;
}

TakeInfo takeInfo (const std::filesystem::path& path)
{
    const TakeSource source (path);
    return { source.sampleRate(), source.channels(), source.frames() };
}

namespace
{
/** Floats may hold what is no sound; `total` frames came before the block. */
template <typename Sample>
void checkSamples (const Sample* block, sf_count_t frames, sf_count_t channels, sf_count_t total, const std::filesystem::path& path)
{
    if constexpr (std::is_floating_point_v<Sample>)
        for (sf_count_t i = 0; i < frames * channels; ++i)
        {
            if (! std::isfinite (block[i]))
                throw TakeError (path.string() + ": sample " + std::to_string (total + i / channels)
                                 + " is not a number or infinite; export the take again");
            if (std::abs (block[i]) > loudestSample)
                throw TakeError (path.string() + ": sample " + std::to_string (total + i / channels)
                                 + " is over 1000000 times full scale, which no recording is; export the take again");
        }
}

/** Takes a block of interleaved samples apart; `total` frames came before it. Whole numbers are full scale at 2^31. */
template <typename Sample>
void append (TakeAudio& take, const Sample* block, sf_count_t frames, sf_count_t total)
{
    const auto channels = static_cast<sf_count_t> (take.channels.size());
    constexpr float unit = std::is_floating_point_v<Sample> ? 1.0f : 0x1.0p-31f;
    for (sf_count_t c = 0; c < channels; ++c)
    {
        auto& samples = take.channels[static_cast<size_t> (c)];
        samples.resize (static_cast<size_t> (total + frames));
        float* to = samples.data() + total;
        for (sf_count_t i = 0; i < frames; ++i)
            to[i] = static_cast<float> (block[i * channels + c]) * unit;
    }
}

sf_count_t readFrames (SNDFILE* file, float* block, sf_count_t frames) { return sf_readf_float (file, block, frames); }
sf_count_t readFrames (SNDFILE* file, int* block, sf_count_t frames) { return sf_readf_int (file, block, frames); }

/** By blocks and not by the header's count: a crafted count must not make us ask for the memory. */
template <typename Sample>
void readAll (TakeAudio& take, const TakeSource& source, const std::filesystem::path& path, bool keeps)
{
    constexpr sf_count_t blockFrames = 65536;
    std::vector<Sample> block (static_cast<size_t> (blockFrames * source.channels()));
    sf_count_t total = 0;
    while (total < source.frames())
    {
        const auto got = readFrames (source.handle(), block.data(), std::min<sf_count_t> (blockFrames, source.frames() - total));
        if (got <= 0)
            throw TakeError (path.string() + ": the take is cut short: its header says " + std::to_string (source.frames()) + " samples and "
                             + std::to_string (total) + " could be read; copy or export it again");
        checkSamples (block.data(), got, source.channels(), total, path);
        if (keeps)
            append (take, block.data(), got, total);
        total += got;
    }
}

/** Samples to 24-bit, least byte first, rounded to the nearest step and held at full scale. They are numbers: put() has looked. */
void pack24 (const float* samples, size_t count, unsigned char* bytes)
{
    constexpr float steps = 0x1.0p23f;
    for (size_t i = 0; i < count; ++i)
    {
        // Without branches: which way a sample falls is nothing a processor could guess.
        const float held = std::max (-steps, std::min (samples[i] * steps, steps - 1.0f));
        const auto value = static_cast<int32_t> (held + std::copysign (0.5f, held));
        bytes[3 * i] = static_cast<unsigned char> (value);
        bytes[3 * i + 1] = static_cast<unsigned char> (value >> 8);
        bytes[3 * i + 2] = static_cast<unsigned char> (value >> 16);
    }
}
}

namespace
{
TakeAudio readWhole (const std::filesystem::path& path, bool keeps)
{
    const TakeSource source (path);
    TakeAudio take;
    take.sampleRate = source.sampleRate();
    take.channels.resize (static_cast<size_t> (source.channels()));
    std::error_code error;
    const auto bytes = static_cast<sf_count_t> (std::filesystem::file_size (path, error));
    for (auto& samples : take.channels)
        samples.reserve (static_cast<size_t> (! keeps || error ? 0 : std::min<sf_count_t> (source.frames(), bytes)));
    if (source.isFloat())
        readAll<float> (take, source, path, keeps);
    else
        readAll<int> (take, source, path, keeps);
    return take;
}
}

TakeAudio readTake (const std::filesystem::path& path) { return readWhole (path, true); }

void checkTake (const std::filesystem::path& path) { readWhole (path, false); }

struct TakeWriter::Impl
{
    std::filesystem::path target;
    std::optional<WholeFile> whole;
    File file; // writes into the whole one, and so goes first
    int channels = 1;
    bool asFloat = false;
    std::vector<float> interleaved;
    std::vector<unsigned char> packed;

    /** A sum that is no number has one in it that is none. */
    static bool areFinite (const float* samples, size_t count)
    {
        float sum = 0.0f;
        for (size_t i = 0; i < count; ++i)
            sum += samples[i] * 0.0f;
        return std::isfinite (sum);
    }

    /** Interleaved samples, by blocks that stay in the cache. */
    bool put (const float* samples, size_t count)
    {
        if (asFloat)
            return sf_write_float (file.get(), samples, static_cast<sf_count_t> (count)) == static_cast<sf_count_t> (count);
        const size_t blockSamples = 65536 * static_cast<size_t> (channels); // whole frames
        packed.resize (3 * std::min (blockSamples, count));
        for (size_t from = 0; from < count; from += blockSamples)
        {
            const auto here = std::min (blockSamples, count - from);
            pack24 (samples + from, here, packed.data());
            const auto bytes = static_cast<sf_count_t> (3 * here);
            if (sf_write_raw (file.get(), packed.data(), bytes) != bytes)
                return false;
        }
        return true;
    }

    [[noreturn]] void fail (const std::string& why)
    {
        discard();
        throw TakeError (target.string() + ": " + why);
    }

    void discard()
    {
        file.reset();
        whole.reset();
    }
};

TakeWriter::TakeWriter (const std::filesystem::path& target, double sampleRate, int channels, bool asFloat) : impl (std::make_unique<Impl>())
{
    impl->target = target;
    impl->channels = channels;
    impl->asFloat = asFloat;
    try
    {
        impl->whole.emplace (target);
    }
    catch (const WriteError& fault)
    {
        throw TakeError (fault.what());
    }
    if (! impl->whole->canSeek())
        impl->fail ("a take cannot be written into a pipe, since how long it is comes first; name a file");
    SF_INFO info {};
    info.samplerate = static_cast<int> (std::lround (sampleRate));
    info.channels = channels;
    info.format = (channels <= 2 ? SF_FORMAT_WAV : SF_FORMAT_WAVEX) | (asFloat ? SF_FORMAT_FLOAT : SF_FORMAT_PCM_24);
    impl->file.reset (sf_open_fd (impl->whole->descriptor(), SFM_WRITE, &info, SF_FALSE));
    if (impl->file == nullptr)
        impl->fail (std::string ("cannot be written (") + sf_strerror (nullptr) + ")");
    sf_command (impl->file.get(), SFC_SET_ADD_PEAK_CHUNK, nullptr, SF_FALSE); // it holds the time: the same take gives the same file
}

TakeWriter::~TakeWriter()
{
    if (impl != nullptr)
        impl->discard();
}

void TakeWriter::write (const std::vector<std::vector<float>>& channels)
{
    if (static_cast<int> (channels.size()) != impl->channels)
        impl->fail ("written with " + std::to_string (channels.size()) + " channels, opened with " + std::to_string (impl->channels));
    const auto frames = channels.front().size();
    for (const auto& channel : channels)
        if (channel.size() != frames)
            impl->fail ("written with channels of different lengths");
    const float* samples = channels.front().data();
    if (channels.size() > 1)
    {
        impl->interleaved.resize (frames * channels.size());
        for (size_t c = 0; c < channels.size(); ++c)
            for (size_t i = 0; i < frames; ++i)
                impl->interleaved[i * channels.size() + c] = channels[c][i];
        samples = impl->interleaved.data();
    }
    if (! Impl::areFinite (samples, frames * channels.size()))
        impl->fail ("not written, since some of it is not a number or infinite; that is our fault, so please tell us with the job");
    if (impl->file == nullptr || ! impl->put (samples, frames * channels.size()))
        impl->fail ("could not be written whole; is the disk full?");
}

void TakeWriter::finish()
{
    if (impl->file == nullptr)
        impl->fail ("is finished already, or failed before");
    if (sf_close (impl->file.release()) != 0)
        impl->fail ("could not be written whole; is the disk full?");
    try
    {
        impl->whole->finish();
    }
    catch (const WriteError& fault)
    {
        throw TakeError (fault.what());
    }
}
}
