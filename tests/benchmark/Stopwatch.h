#pragma once

#include <algorithm>
#include <chrono>
#include <vector>

namespace coldiron::support
{
/** Seconds of one call: the best and the median of many, so that other work on the machine shows as a gap. */
struct Timing
{
    double best = 0.0, median = 0.0;
};

template <typename Work>
Timing timed (int times, Work&& work)
{
    std::vector<double> seconds;
    for (int i = 0; i < times; ++i)
    {
        const auto start = std::chrono::steady_clock::now();
        work (i);
        seconds.push_back (std::chrono::duration<double> (std::chrono::steady_clock::now() - start).count());
    }
    std::sort (seconds.begin(), seconds.end());
    return { seconds.front(), seconds[seconds.size() / 2] };
}

void benchDesigns();   ///< knob to coefficients
void benchRunning();   ///< ns a frame
void benchRendering(); ///< times real time
void benchCircuits();  ///< ours, ngspice in process, ngspice started
}
