#pragma once

#include <algorithm>

namespace coldiron
{
/** A value that moves towards a target by equal steps and reaches it exactly. For one thread. */
struct Smoother
{
    double value = 0.0;

    /** One step on. @param step  at most so far, 0 or more */
    double next (double target, double step)
    {
        value = value < target ? std::min (target, value + step) : std::max (target, value - step);
        return value;
    }
};
}
