#pragma once

#include "concurrency/LatestValue.h"
#include "dsp/Smoother.h"
#include "dsp/WhiteNoise.h"
#include "engine/EngineDesign.h"
#include "engine/OutputChainPlayer.h"

#include <algorithm>
#include <atomic>
#include <cmath>

namespace coldiron
{
/** Plays one design and fades to the next: both filters run, a raised cosine between them, the newest pending design
    wins. Small changes (a knob being turned) fade in 20 ms, great ones in 50: a click is as loud as the change is big.

    Hum and hiss start with prepare() as an offline rendering's do, and stand at their start while neither is heard: a take
    that begins to play brings the hum of its start along. A loop or a jump leaves the mains running: they know of neither,
    so the first pass of a loop is the one that agrees with a rendering.

    One thread publishes, one plays. Everything marked [audio-thread] neither allocates, locks nor throws. */
class SwitchEngine
{
public:
    static constexpr double shortestFade = 0.020, usualFade = 0.030, longestFade = 0.050; ///< [s]

    /** Forgets all state; nothing may play meanwhile. The next design published is taken without a fade.
        @param sampleRate  [Hz]; designs for another rate are ignored */
    void prepare (double sampleRate);

    /** [publisher] Never waits. A filter with more poles than a runner holds, or of values that are no numbers, throws
        std::invalid_argument. */
    void publish (const EngineDesign&);

    /** [publisher] What follows the jack, the same for every design; faded in 50 ms. */
    void publish (std::unique_ptr<OutputChain> chain) { after.publish (std::move (chain)); }

    void setBypassed (bool b) { bypassed.store (b, std::memory_order_relaxed); } ///< [any thread] faded in 20 ms
    void setHumGain (float g) { keep (humGain, g); }                             ///< [any thread] linear, smoothed
    void setHissGain (float g) { keep (hissGain, g); }                           ///< [any thread] linear, smoothed
    void setTrim (float g) { keep (trim, g); } ///< [any thread] linear, smoothed, last of all; not in bypass

    bool isFading() const { return fading.load (std::memory_order_relaxed); } ///< [any thread]

    static constexpr float loudest = 1000.0f; ///< of an input sample, +60 dBFS; what is louder is no sound

    /** [audio-thread] One or two channels in place. Values that are no numbers count as silence. The up to 64 frames
        around a sample beyond `loudest` are silence in its channel, and the filters forget, so that nothing rings on. */
    void process (float* const* channels, int numChannels, int frames);

private:
    static constexpr int chunk = 64;

    struct Player
    {
        FilterRunner runner, hiss;
        double gain = 1.0;
        HumCycle hum;
        std::array<float, 24> probeDb {};
    };

    OutputChainPlayer after;
    LatestValue<EngineDesign> pending;

    /** What the audio thread owns, and prepare() while nothing plays. */
    struct AudioThread
    {
        std::array<Player, 2> players; ///< the one that plays, and the one it fades to
        int playing = 0;
        double rate = 48000.0;
        bool started = false, wasNoSound = false, areNoisesAtStart = true;
        Crossfade fade;
        MainsClock mains;
        WhiteNoise white;
        Smoother bypassMix, humLevel, hissLevel, trimLevel;

        Player& now() { return players[static_cast<size_t> (playing)]; }
        Player& next() { return players[static_cast<size_t> (1 - playing)]; }
    } audio;

    std::atomic<bool> bypassed { false }, fading { false };
    std::atomic<float> humGain { 0.0f }, hissGain { 0.0f }, trim { 1.0f };

    /** A gain that is no number leaves the one before. */
    static void keep (std::atomic<float>& gain, float wanted)
    {
        if (std::isfinite (wanted))
            gain.store (wanted, std::memory_order_relaxed);
    }

    static void load (Player&, const EngineDesign&);
    void pollPending();
    static bool takeIn (const float* samples, double* out, int frames);
    void forgetSound();
    void processChunk (float* const* channels, int numChannels, int frames);
    void addHiss (Player& now, Player* next, const double* nextShare, double* sum, int frames);
    int fadeFramesTo (const EngineDesign&);
};
}
