#pragma once

#include <cstdint>
#include <filesystem>
#include <memory>
#include <stdexcept>
#include <string>
#include <vector>

namespace coldiron
{
struct TakeError : std::runtime_error
{
    using std::runtime_error::runtime_error;
};

/** A take in memory, channels apart. */
struct TakeAudio
{
    double sampleRate = 0.0;
    std::vector<std::vector<float>> channels; ///< one or two, equal lengths
    int64_t frames() const { return channels.empty() ? 0 : static_cast<int64_t> (channels.front().size()); }
};

struct TakeInfo
{
    double sampleRate = 0.0;
    int channels = 0;
    int64_t frames = 0;
};

/** What the file holds, checked: WAV (16, 24, 32-bit, float), AIFF or FLAC, 8 to 192 kHz, mono or stereo, not empty,
    not shorter than its header says. @throws TakeError in one line that says what was expected and what to do. */
TakeInfo takeInfo (const std::filesystem::path&);

/** Reads it all and keeps nothing: whether readTake() would read it, a number beyond loudestSample or none at all in it.
    @throws TakeError likewise */
void checkTake (const std::filesystem::path&);

/** No sample of any recording is beyond this, +120 dBFS [full scale]: what is, is no sound. */
inline constexpr float loudestSample = 1e6f;

TakeAudio readTake (const std::filesystem::path&);

/** Writes WAV whole or not at all (WholeFile); a fault or an early end leaves nothing. 24-bit where all samples fit within full
    scale, else 32-bit float, so that nothing is clipped. */
class TakeWriter
{
public:
    TakeWriter (const std::filesystem::path& target, double sampleRate, int channels, bool asFloat);
    ~TakeWriter(); ///< removes what was not finished
    TakeWriter (const TakeWriter&) = delete;
    TakeWriter& operator= (const TakeWriter&) = delete;
    void write (const std::vector<std::vector<float>>& channels); ///< @throws TakeError also for what is not finite
    void finish();                                                ///< @throws TakeError

private:
    struct Impl;
    std::unique_ptr<Impl> impl;
};
}
