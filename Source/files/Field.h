#pragma once

#include <limits>

namespace coldiron
{
/** A number that a file says or a person sets: what it is called, its unit, its range, and what holds where nothing is said.

    Whoever reads, types, automates or describes such a number takes its range from the one field (job/Fields.h). */
struct Field
{
    const char* key;
    const char* unit; ///< "ohm", "F", "H", "mm", "dB", "deg"; empty: none
    double least, most;
    double standard; ///< where it is left out; of one that is needed, what is gone on with after the fault; or `none`
    bool isNeeded = false;

    static constexpr double none = std::numeric_limits<double>::quiet_NaN(); ///< nothing, or something that depends

    constexpr bool holds (double value) const { return value >= least && value <= most; } ///< false for NaN
};
}
