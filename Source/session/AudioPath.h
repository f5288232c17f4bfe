#pragma once

#include "session/SharedState.h"
#include "session/TakePlayer.h"

#include <functional>

namespace coldiron
{
class Designer;

/** A block's way through the session, in real time and faster: the host's input or the take, the engine, the meters. */
class AudioPath
{
public:
    /** @param awaitSound  waits until what is heard is that of what stands now, for so many seconds at most; returns
        whether it is. Called while a render waits alone */
    AudioPath (SharedState&, Designer&, std::function<bool (double seconds)> awaitSound);

    /** Not on the audio thread; nothing plays meanwhile. Returns when the first design is in the engine. */
    void prepare (double sampleRate);

    /** [audio-thread] In place, one or two channels. @param waits  rendering faster than real time: what is heard waits
        for the take, its loudness, the levels and the design it depends on, so that a render is the same on every run
        and machine. What the host moves is then taken up every `renderStep` frames, whatever the blocks; after
        the longest wait it goes on without, and isLate() */
    void process (float* const* channels, int numChannels, int frames, bool waits);

    static constexpr int renderStep = 1024;
    void setLongestWait (double seconds) { longestWait = seconds; } ///< a minute unless set. Nothing may play meanwhile
    bool isLate() const { return lateFor.load() != 0; }             ///< a render went on before all was ready
    double sampleRate() const { return shared.sampleRate.load(); }  ///< 0 before the host has said

    double takeInputPeak() { return inputPeak.exchange (0.0f); } ///< largest absolute sample since the last call, linear
    double takeOutputPeak() { return outputPeak.exchange (0.0f); }

    TakePlayer& takePlayer() { return player; }

private:
    /** What the audio thread alone touches while it runs. */
    struct AudioThread
    {
        double sourceMix = 0.0; ///< 0 the host, 1 the take
        int64_t framesSeen = 0; ///< since it was prepared
        bool waited = false;    ///< the block before was of a render
    };

    SharedState& shared;
    Designer& designer;
    const std::function<bool (double)> awaitSound;
    double longestWait = 60.0;
    TakePlayer player;
    AudioThread audioThread;
    std::atomic<float> inputPeak { 0.0f }, outputPeak { 0.0f };
    std::atomic<uint32_t> lateFor { 0 }; ///< the snapshot that a render could not wait for; 0: none

    void setEngineLevels(); ///< [audio-thread], or while nothing plays
    void waitForSound();
    void processPart (float* const* channels, int numChannels, int frames, bool waits);
    void mixTake (float* const* channels, int numChannels, int frames, bool takeOn);
    void countHeard (const float* const* channels, int numChannels, int frames, bool takeOn);
};
}
