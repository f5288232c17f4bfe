#pragma once

#include "concurrency/LatestValue.h"
#include "dsp/Resample.h"
#include "takes/TakeFile.h"

#include <algorithm>
#include <array>
#include <atomic>
#include <memory>
#include <mutex>
#include <vector>

namespace coldiron
{
/** Plays a take, looping, on the audio thread. Jumps (start, stop, seek, the loop's end) fade over 5 ms between two
    heads, so nothing clicks. The transport is atomics: every call but load() and prepare() is wait-free. */
class TakePlayer
{
public:
    /** Not for the audio thread, and nothing may play meanwhile. */
    void prepare (double sampleRate);

    /** Not for the audio thread: resamples to the prepared rate and hands it over; the one before fades out as the new
        one fades in. nullptr unloads. @param fromSeconds  where it begins */
    void load (std::shared_ptr<const TakeAudio>, double fromSeconds = 0.0);

    bool isPlaying() const { return playing.load(); }
    void setPlaying (bool p) { playing.store (p); }
    bool isLooping() const { return looping.load(); }
    void setLooping (bool l) { looping.store (l); }
    void seek (double seconds)
    {
        if (seconds >= 0.0)
            seekTo.store (std::min (seconds, longestSeconds));
    }
    void setLoop (double fromSeconds, double toSeconds);
    std::pair<double, double> loop() const;
    double positionSeconds() const { return position.load(); }

    /** [audio-thread] Overwrites the channels. A mono take sounds on all. */
    void process (float* const* channels, int numChannels, int frames);

private:
    static constexpr double longestSeconds = 4e5; ///< of what a loop's end can be

    struct Loaded
    {
        uint64_t number = 0;
        std::vector<std::vector<float>> channels;
        int64_t frames = 0;
    };
    struct Pointer
    {
        const Loaded* take = nullptr;
        int64_t from = 0;
    };
    struct Head
    {
        const Loaded* take = nullptr;
        int64_t at = 0;
        double gain = 0.0; ///< 0 to 1; the raised cosine of it is heard
        bool rises = false;
    };

    std::mutex loading;
    std::shared_ptr<const TakeAudio> source;
    std::vector<std::unique_ptr<Loaded>> keep; ///< freed when the audio thread plays later ones alone
    LatestValue<Pointer> handOver;
    std::atomic<uint64_t> inUse { 0 };
    uint64_t counter = 0;
    double rate = 0.0;
    std::atomic<double> rateNow { 0.0 };

    std::atomic<bool> playing { false }, looping { true };
    std::atomic<double> seekTo { -1.0 }, position { 0.0 };
    std::atomic<uint64_t> loopEnds { 0 }; ///< both in tenths of a millisecond, so that they change together

    const Loaded* take = nullptr;
    std::array<Head, 2> heads;
    int front = 0;
    bool wasPlaying = false;

    void loadAtRate (double fromSeconds);
    void jump (int64_t to);
};
}
