#pragma once

#include "concurrency/Handover.h"
#include "concurrency/Worker.h"
#include "dsp/Smoother.h"
#include "takes/Resample.h"
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
    TakePlayer();

    /** Not for the audio thread, and nothing may play meanwhile. */
    void prepare (double sampleRate);

    /** Not for the audio thread: returns at once. A take of another rate is resampled in the background first, and the one
        before plays on meanwhile; then that fades out as the new one fades in. nullptr unloads.
        @param fromSeconds  where it begins */
    void load (std::shared_ptr<const TakeAudio>, double fromSeconds = 0.0);

    /** Waits until the take loaded last is what plays. Not for the audio thread in real time. @returns whether it is */
    bool waitUntilLoaded (double seconds);

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

    /** A take at the prepared rate. */
    struct Loaded
    {
        std::shared_ptr<const TakeAudio> audio; ///< null: none
        int64_t frames = 0, from = 0;
    };

    /** One of two places in takes, fading in or out. */
    struct Head
    {
        const Loaded* take = nullptr;
        int64_t at = 0;
        Smoother gain; ///< 0 to 1; the raised cosine of it is heard
        bool rises = false;
    };

    std::mutex loading;
    std::shared_ptr<const TakeAudio> source;
    double rate = 0.0, wantedFrom = 0.0;
    uint32_t loaded = 0; ///< the number of the take that was handed over last
    Handover<Loaded> handOver;

    std::atomic<uint32_t> wanted { 0 }; ///< the number of the take asked for last
    std::atomic<double> rateNow { 0.0 };
    std::atomic<bool> playing { false }, looping { true };
    std::atomic<double> seekTo { -1.0 }, position { 0.0 };
    std::atomic<uint64_t> loopEnds { 0 }; ///< both in tenths of a millisecond, so that they change together

    /** What the audio thread owns, and prepare() while nothing plays. */
    struct AudioThread
    {
        Handover<Loaded>::Held take, before; ///< `before` as long as a head is in it
        std::array<Head, 2> heads;
        int front = 0;
        bool wasPlaying = false;

        Head& head() { return heads[static_cast<size_t> (front)]; }
        void jump (int64_t to);
        void use (Handover<Loaded>::Held);
        void letGo(); ///< of the take before, once nothing of it is heard
    } audio;

    Worker resampler; ///< last

    bool resample (const Cancellation& stop);
    void want (double fromSeconds);
    void handOverTake (std::shared_ptr<const TakeAudio>, double fromSeconds);
    static float sampleOf (const Head&, size_t channel);
};
}
