#pragma once

#include "concurrency/Cancellation.h"
#include "response/CircuitConfig.h"
#include "response/Confidence.h"

#include <optional>
#include <string>
#include <vector>

namespace coldiron
{
/** What an option would be surer from than from the take it is derived from. */
struct SurerTake
{
    enum class Kind {
        none,         ///< it could not be surer, or is sure enough
        otherTake,    ///< a take there is
        recordAnother ///< a take still to be recorded: of each of `pickups` alone
    };
    Kind kind = Kind::none;
    int take = -1;                              ///< otherTake: its index
    std::vector<std::string> pickups;           ///< loudest in that take, or those to be recorded
    Similarity playing = Similarity::sameCoils; ///< otherTake: how sure from there
};

/** Which take an option is derived from, and why. */
struct TakeChoice
{
    int take = -1;                    ///< index; -1: there is none
    Confidence confidence;            ///< of the option from that take
    bool isOwn = false;               ///< the option names it itself
    std::vector<std::string> pickups; ///< loudest in that take
    SurerTake surer;
};

/** The take nearest to an option: the one from which it is surest. Of equals: for an option whose coils work against each
    other a take of one pickup; then the one that needs the least lift of treble, since that lifts noise; then the first.
    @param takes  how each was recorded
    @param own    index that the option names itself, which always wins; a surer one is then suggested */
TakeChoice nearestTake (const std::vector<CircuitConfig>& takes, const CircuitConfig& option, std::optional<int> own = {},
                        const Cancellation& = {});

/** The pickups within 16 dB of the loudest through a wiring at 500 Hz, in the order of its parts; none where it is silent. */
std::vector<std::string> loudPickups (const GuitarResponse&);
}
