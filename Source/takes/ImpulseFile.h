#pragma once

#include "concurrency/Cancellation.h"
#include "takes/TakeFile.h"

namespace coldiron
{
/** A person's own sound after the jack: an impulse response as it was read. */
struct ImpulseResponse
{
    std::filesystem::path file;
    double sampleRate = 0.0;
    std::vector<float> samples; ///< of the first channel

    std::vector<float> at (double rate, const Cancellation& = {}) const; ///< resampled. @throws Cancelled
};

/** Reads what readTake() reads; at most OutputChain::longestImpulse long, and not silent. Of two channels the first counts.
    @throws TakeError in one line that says what was expected */
ImpulseResponse readImpulse (const std::filesystem::path&);
}
