#pragma once

#include "job/Job.h"

#include <string>
#include <vector>

namespace coldiron
{
/** What a meter reads at the jack at one combination of switch positions, knobs at 10. */
struct OhmReading
{
    std::vector<std::pair<std::string, std::string>> levers;
    double ohms = 0.0;               ///< at 20 C; meaningless when open or shorted
    double lowOhms = 0.0, highOhms = 0.0; ///< with part tolerances and 15 to 30 C
    double volumeDownOhms = 0.0;     ///< every volume at 5: why to read with knobs at 10
    bool isOpen = false, isShort = false; ///< above 100 Mohm; below 1 ohm
};

std::vector<OhmReading> ohmTable (const Harness&);
}
