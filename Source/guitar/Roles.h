#pragma once

#include "guitar/Harness.h"
#include "guitar/PointName.h"

#include <optional>
#include <vector>

namespace coldiron
{
/** One connection from a pickup's side to the rest: the end inside and the end outside.
    A lead of the pickup that lands outside is its own inner end; a wire has a lug of a part that serves the pickup. */
struct Connection
{
    SolderPoint inner, outer;
    bool isLead = false;
};

/** @throws HarnessError when the side has no such connection. */
std::vector<Connection> sideConnections (const Harness&, const PickupSide&);

/** The one point that a name stands for. @throws HarnessError where there is none or several */
SolderPoint resolvePoint (const Harness&, const PointName&);

/** The whole side that a name without @ stands for; nothing where it is a point, or no pickup has that name. */
std::optional<PickupSide> sideNamed (const Harness&, const PointName&);
}
