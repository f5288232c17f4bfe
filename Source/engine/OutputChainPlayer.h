#pragma once

#include "concurrency/LatestValue.h"
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
    void publish (std::unique_ptr<OutputChain>);

    /** [audio-thread] Looks for a new chain. @return whether there is anything to do */
    bool isActive();

    /** [audio-thread] One or two channels in place, at most 64 frames. */
    void process (double* const* channels, int numChannels, int frames);

private:
    struct Numbered
    {
        OutputChain* chain = nullptr;
        uint64_t number = 0;
    };

    std::vector<std::pair<uint64_t, std::unique_ptr<OutputChain>>> keep; ///< the publisher's
    uint64_t counter = 0;
    LatestValue<Numbered> handOver;
    std::atomic<uint64_t> oldestInUse { 0 };

    double rate = 48000.0;
    bool started = false;
    Numbered now, next; ///< no chain: nothing is done
    int fadeAt = 0, fadeLength = 0;
};
}
