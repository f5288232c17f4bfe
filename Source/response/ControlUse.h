#pragma once

#include "guitar/Setting.h"
#include "response/CircuitConfig.h"

#include <array>
#include <string>
#include <vector>

namespace coldiron
{
/** A pickup that is heard. */
struct PickupOn
{
    std::string pickup;
    std::vector<std::string> coils; ///< where it plays without some of its coils, those that are left; else empty

    bool operator== (const PickupOn&) const = default;
};

/** What is heard at one position of a control; none: silent. */
using PickupsOn = std::vector<PickupOn>;

/** One position of a switch. */
struct PositionUse
{
    std::string position;
    PickupsOn heard;

    /** Where an earlier position has the same pickups on: which, and whether this one differs by more than 2 dB at 500 Hz, and
        in treble (3 kHz re 300 Hz). More than 0: louder, brighter. */
    std::string likePosition;
    int louder = 0, brighter = 0;
};

/** What a control of a guitar does. */
struct ControlUse
{
    enum class Kind {
        volume,
        tone,  ///< turned to 0 it darkens, at some position of some switch
        blend, ///< its two ends have different pickups on
        knob,  ///< any other knob
        lever
    };

    Control control;
    Kind kind = Kind::knob;
    std::array<PickupsOn, 3> blended;   ///< a blend's at 0, 5 and 10
    std::vector<PositionUse> positions; ///< of a lever
};

/** Every control of a guitar, in the order of its parts, by what its circuit does with the others where `config` has them. */
std::vector<ControlUse> controlUses (const CircuitConfig& config);

/** How many pickups the guitar has: of one alone it need not be said that it plays alone. */
int numPickups (const Harness&);
}
