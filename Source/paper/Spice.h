#pragma once

#include "job/Job.h"

#include <string>

namespace coldiron
{
/** A netlist any SPICE-like simulator runs as it is: AC response at node `tip` for the source `src` (ac 1). */
std::string spiceNetlist (const Job&, const Option*); ///< nullptr: as recorded
}
