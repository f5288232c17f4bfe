#pragma once

#include "concurrency/Cancellation.h"
#include "response/CircuitConfig.h"
#include "response/Confidence.h"

#include <optional>
#include <string>
#include <vector>

namespace coldiron
{
/** Which take an option is derived from, and why. */
struct TakeChoice
{
    int take = -1;          ///< index; -1: there is none
    Confidence confidence;  ///< of the option from that take
    bool isOwn = false;     ///< the option names it itself
    std::string words;      ///< "from take 2, bridge alone: same coils"
    std::string suggestion; ///< how it would be surer; empty where it could not be
};

/** The take nearest to an option: the one from which it is surest. Of equals: for an option whose coils work against each
    other a take of one pickup; then the one that needs the least lift of treble, since that lifts noise; then the first.
    @param takes  how each was recorded
    @param own    index that the option names itself, which always wins; a surer one is then suggested */
TakeChoice nearestTake (const std::vector<CircuitConfig>& takes, const CircuitConfig& option, std::optional<int> own = {},
                        const Cancellation& = {});

/** The pickups that are heard through a wiring, in the order of its parts: "bridge alone", "neck and bridge", "nothing". */
std::string pickupsInWords (const GuitarResponse&);
}
