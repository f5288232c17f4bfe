#include "takes/TakeFile.h"

#include "files/WriteFile.h"
#include "takes/TakeReader.h"

#include <sndfile.h>

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <cstring>
#include <optional>

namespace coldiron
{
namespace
{
struct Closer
{
    void operator() (SNDFILE* file) const { sf_close (file); }
};
using File = std::unique_ptr<SNDFILE, Closer>;

/** Samples to 24-bit, least byte first, rounded to the nearest step and clipped at full scale. All must be finite. */
void pack24 (const float* samples, size_t count, unsigned char* bytes)
{
    constexpr float steps = 0x1.0p23f;
    for (size_t i = 0; i < count; ++i)
    {
        // Without branches: a sample's sign cannot be predicted.
        const float held = std::max (-steps, std::min (samples[i] * steps, steps - 1.0f));
        const auto value = static_cast<int32_t> (held + std::copysign (0.5f, held));
        bytes[3 * i] = static_cast<unsigned char> (value);
        bytes[3 * i + 1] = static_cast<unsigned char> (value >> 8);
        bytes[3 * i + 2] = static_cast<unsigned char> (value >> 16);
    }
}
}

TakeInfo takeInfo (const std::filesystem::path& path) { return TakeReader (path).info(); }

TakeAudio readTake (const std::filesystem::path& path)
{
    TakeReader reader (path);
    return readTake (reader);
}

void checkTake (const std::filesystem::path& path)
{
    TakeReader reader (path);
    for (Channels block; reader.read (block);)
        ;
}

struct TakeWriter::Impl
{
    std::filesystem::path target;
    std::optional<WholeFile> whole;
    File file; // writes into the whole one, and so goes first
    int channels = 1;
    bool asFloat = false;
    std::vector<float> interleaved;
    std::vector<unsigned char> packed;

    /** Whether all are finite: one that is not makes their sum so. */
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

TakeWriter::TakeWriter (const std::filesystem::path& target, double sampleRate, int channels, bool asFloat)
    : impl (std::make_unique<Impl>())
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
    sf_command (impl->file.get(), SFC_SET_ADD_PEAK_CHUNK, nullptr,
                SF_FALSE); // it holds the time: the same take gives the same file
}

TakeWriter::~TakeWriter()
{
    if (impl != nullptr)
        impl->discard();
}

void TakeWriter::write (const std::vector<std::vector<float>>& channels)
{
    if (static_cast<int> (channels.size()) != impl->channels)
        impl->fail ("written with " + std::to_string (channels.size()) + " channels, opened with "
                    + std::to_string (impl->channels));
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
        impl->fail (
            "not written, since some of it is not a number or infinite; that is our fault, so please tell us with the job");
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
