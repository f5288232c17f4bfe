#pragma once

#include "guitar/Harness.h"

#include <string>
#include <vector>

namespace coldiron
{
/** One connection from a pickup's side to the rest: the end inside and the end outside.
    A lead of the pickup that lands outside is its own inner end; a wire has a lug of a part that serves the pickup. */
struct Connection
{
    std::string inner, outer;
    bool isLead = false;
};

/** `PICKUP.hot` and `PICKUP.cold`: see DEVELOPERS.md. @throws HarnessError when the side has no such connection. */
std::vector<Connection> sideConnections (const Harness&, const std::string& pickup, bool cold);

/** The point a role or name stands for: `POT.in`, `POT.out`, `@LEAD`, `@PICKUP.hot`, or any plain point. */
std::string resolvePoint (const Harness&, const std::string& expression);

/** Whether an expression names a whole side (`PICKUP.hot` or `PICKUP.cold` without @). */
bool isSide (const Harness&, const std::string& expression, std::string& pickup, bool& cold);
}
