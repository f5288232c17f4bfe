#pragma once

#include "metering/TakeFaults.h"
#include "response/NearestTake.h"

#include <string>

namespace coldiron::wording
{
/** "bridge alone", "neck and bridge", "nothing". @param names  of pickups, as pickupsByEar() has them */
std::string pickups (const std::vector<std::string>& names);

/** "from take 2, bridge alone: same coils"; empty where there is no take. */
std::string derivedFrom (const TakeChoice&);

/** What would make it surer; empty where nothing could. */
std::string surerTake (const TakeChoice&);

std::string takeFault (const TakeFault&);     ///< short: "clipped in 12 places"
std::string takeFaultCost (const TakeFault&); ///< what it costs, and what to do: one or two sentences
}
