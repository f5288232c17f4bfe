#pragma once

#include "response/ControlUse.h"

#include <string>

namespace coldiron::wording
{
/** "neck alone", "bridge (its north coil alone) and neck together", "silent".
    @param isOnlyOne  the guitar has one pickup, which need not be said to play alone */
std::string pickupsOn (const PickupsOn&, bool isOnlyOne);

/** "volume, 0 to 10: 10 is all the way up", "switch, 3 positions". */
std::string control (const ControlUse&, bool isOnlyOne);

/** The pickups on, and what tells it from another position with the same on. */
std::string position (const PositionUse&, bool isOnlyOne);
}
