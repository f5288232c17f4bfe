#pragma once

#include "guitar/Harness.h"

namespace coldiron
{
/** Points that belong on ground and are on none: a pickup's cover, baseplate or braid (`shield`), a pot's case, the
    bridge's ground wire (`strings`). Wires alone count: a contact that opens would leave the point live. In the order of
    the parts. */
std::vector<SolderPoint> floatingGrounds (const Harness&);

/** What it does to a player: "neck.shield is on no ground: a live cover buzzes; ..." */
std::string floatingInWords (const SolderPoint&);
}
