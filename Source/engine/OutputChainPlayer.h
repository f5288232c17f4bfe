#pragma once

#include "concurrency/Handover.h"
#include "dsp/Crossfade.h"
#include "engine/OutputChain.h"

#include <memory>

namespace coldiron
{
/** Plays one chain after the jack and fades to the next over 50 ms, both running. One thread publishes, one plays; what
    is no longer played is freed by the publisher. */
class OutputChainPlayer
{
public:
    static constexpr double fadeSeconds = 0.050;

    /** Forgets what it played; nothing may play meanwhile. Chains of another rate are ignored. */
    void prepare (double sampleRate);

    /** [audio-thread] The chains forget what they played. */
    void reset();

    /** [publisher] */
    void publish (std::unique_ptr<OutputChain> chain) { handOver.publish (std::move (chain)); }

    /** [audio-thread] Looks for a new chain. @return whether there is anything to do */
    bool isActive();

    /** [audio-thread] One or two channels in place, at most 64 frames. */
    void process (double* const* channels, int numChannels, int frames);

private:
    Handover<OutputChain> handOver;

    /** What the audio thread owns, and prepare() while nothing plays. */
    struct AudioThread
    {
        double rate = 48000.0;
        bool started = false;
        Handover<OutputChain>::Held now, next; ///< no chain: nothing is done
        Crossfade fade;
    } audio;
};
}
