#pragma once

#include "guitar/Setting.h"
#include "response/CircuitConfig.h"

#include <string>
#include <utility>
#include <vector>

namespace coldiron
{
/** A control of a guitar in words for people: what kind it is and what its ends or its positions do. */
struct ControlWords
{
    Control control;
    std::string about;                                          ///< "volume, 0 to 10; at 10 it is all the way up"
    std::vector<std::pair<std::string, std::string>> positions; ///< each with the pickups then heard; empty for a knob
};

/** Every control of a guitar, in the order of its parts, by what its circuit does with the others where `side` has them. */
std::vector<ControlWords> controlWords (const CircuitConfig&);
}
