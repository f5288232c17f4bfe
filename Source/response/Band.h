#pragma once

#include "concurrency/Cancellation.h"
#include "response/CircuitConfig.h"

#include <vector>

namespace coldiron
{
/** Where the truth lies in nine of ten third octaves: string mix (32 fixed draws) and parts (32 draws of the tolerances
    that the guitar's mark leaves open; the same draw for as recorded and option, since it is the same guitar).
    -300 dB where the option is silent. The same numbers on every run. */
struct Band
{
    std::vector<double> hz, lowDb, highDb;
};

/** @param hz  where the band is wanted, rising; the 5 % and 95 % of the mean ln |T|^2 per third octave around each
    @throws Cancelled */
Band computeBand (const CircuitConfig& recorded, const CircuitConfig& option, const std::vector<double>& hz,
                  const Cancellation& = {});
}
