#pragma once

#include "concurrency/Cancellation.h"

#include <algorithm>
#include <ctime>

namespace coldiron::support
{
/** How long work goes on between two questions whether it is still wanted, in processor time of its thread. */
class WorkGaps
{
public:
    WorkGaps() : last (now()) {}

    /** Never cancels. For one thread, and to be asked for right before the work. */
    Cancellation cancellation()
    {
        last = now();
        return Cancellation (
            [this]
            {
                const double asked = now();
                most = std::max (most, asked - last);
                last = now();
                ++times;
                return false;
            });
    }

    int count() const { return times; }
    double longest() const { return std::max (most, times > 0 ? 0.0 : 1e9); } ///< [s]

private:
    double last = 0.0, most = 0.0;
    int times = 0;

    static double now()
    {
        timespec time {};
        clock_gettime (CLOCK_THREAD_CPUTIME_ID, &time);
        return static_cast<double> (time.tv_sec) + 1e-9 * static_cast<double> (time.tv_nsec);
    }
};
}
