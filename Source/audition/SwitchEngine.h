#pragma once

#include "audition/AfterJackPlayer.h"
#include "audition/Hiss.h"
#include "audition/Hum.h"
#include "filter/FilterRunner.h"
#include "filter/LatestValue.h"

#include <algorithm>
#include <array>
#include <atomic>
#include <cmath>

namespace coldiron
{
/** One cycle of hum as heard through an option. */
struct HumCycle
{
    static constexpr int length = 4096;
    double mainsHz = 50.0;
    std::array<float, length + 1> samples {}; ///< the last repeats the first; in full scale at 0 dB

    /** @param emfRms  of one 5000-turn coil, in full scale at 0 dB */
    static HumCycle of (const Voice&, const MainsField&, double emfRms);
};

/** All that the audio thread needs of one option. */
struct EngineDesign
{
    ModalFilter filter;
    double gain = 1.0;                 ///< linear, on the filter; level matching. Hum and hiss get it too
    HumCycle hum;
    ModalFilter hiss = ModalFilter::silence (0.0); ///< makes it from white noise of unit variance, in full scale at 0 dB; gain is on top
    std::array<float, 24> probeDb {};  ///< the filter and gain from 40 Hz to 16 kHz, to judge how far a switch goes

    void probe();                      ///< fills probeDb
};

/** Plays one design and fades to the next: both filters run, a raised cosine between them, the newest pending design
    wins. Small changes (a knob being turned) fade in 20 ms, great ones in 50: a click is as loud as the change is big.

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
    void publish (std::unique_ptr<AfterJack> chain) { after.publish (std::move (chain)); }

    void setBypassed (bool b) { bypassed.store (b, std::memory_order_relaxed); } ///< [any thread] faded in 20 ms
    void setHumGain (float g) { keep (humGain, g); }   ///< [any thread] linear, smoothed
    void setHissGain (float g) { keep (hissGain, g); } ///< [any thread] linear, smoothed
    void setTrim (float g) { keep (trim, g); }         ///< [any thread] linear, smoothed, last of all; not in bypass

    bool isFading() const { return fading.load (std::memory_order_relaxed); }    ///< [any thread]

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

    /** Moves towards a target in equal parts; a value of exactly 1 or 0 is reached. */
    struct Glide
    {
        double value = 0.0;
        double next (double target, double step)
        {
            value = value < target ? std::min (target, value + step) : std::max (target, value - step);
            return value;
        }
    };

    AfterJackPlayer after;
    LatestValue<EngineDesign> pending;
    std::array<Player, 2> players;
    int playing = 0;
    double rate = 48000.0;
    bool started = false, wasNoSound = false;
    int fadeLength = 0, fadeAt = 0;
    double humPhase = 0.0, humStep = 0.0, humSeconds = 0.0;
    WhiteNoise white;
    Glide bypassMix, humLevel, hissLevel, trimLevel;
    std::atomic<bool> bypassed { false }, fading { false };
    std::atomic<float> humGain { 0.0f }, hissGain { 0.0f }, trim { 1.0f };

    /** A gain that is no number leaves the one before. */
    static void keep (std::atomic<float>& gain, float wanted)
    {
        if (std::isfinite (wanted))
            gain.store (wanted, std::memory_order_relaxed);
    }

    void adopt (int player, const EngineDesign&);
    void lookForNews();
    static bool takeIn (const float* samples, double* out, int frames);
    void forgetSound();
    void processChunk (float* const* channels, int numChannels, int frames);
    double humSound (const Player& now, const Player* next, double nextShare);
    void addHiss (Player& now, Player* next, const double* nextShare, double* sum, int frames);
    int fadeFramesTo (const EngineDesign&) const;
};
}
