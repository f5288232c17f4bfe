#pragma once

#include "job/Job.h"

#include <string>
#include <utility>
#include <vector>

namespace coldiron
{
/** What a tap with a screwdriver gives at the jack, and which way an analogue meter kicks as steel is pulled away. */
struct CoilStrike
{
    enum class Tap { loud, weak, none };

    std::string pickup, coil; ///< coil empty: the pickup has one
    Tap tap = Tap::none;
    int kick = 0; ///< +1 or -1 beside the others of the table; 0: too little to see
};

/** Where the switches stand, and each coil there, in the order of the parts. Knobs at rest. */
struct StrikeRow
{
    std::vector<std::pair<std::string, std::string>> levers;
    std::vector<CoilStrike> coils;
};

/** A row for each way of hearing coils that the switches give: positions under which all of it is the same are told once. */
std::vector<StrikeRow> strikeTable (const Harness&, const Load& listening);
}
