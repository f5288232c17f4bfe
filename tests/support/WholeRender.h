#pragma once

#include "filter/FilterRunner.h"

#include <algorithm>
#include <cmath>
#include <vector>

namespace coldiron
{
/** A take in memory as it sounds through one option. */
struct Rendered
{
    std::vector<std::vector<float>> channels;
    double peak = 0.0; ///< largest absolute sample, linear
};

/** The filter over a whole take at once, without any of the steps of a rendering by blocks. @param gain  linear */
inline Rendered renderTake (const std::vector<std::vector<float>>& take, const ModalFilter& filter, double gain = 1.0)
{
    Rendered rendered;
    for (const auto& channel : take)
    {
        FilterRunner runner;
        runner.use (filter.scaled (gain));
        auto& out = rendered.channels.emplace_back (channel.size());
        runner.process (0, channel.data(), out.data(), static_cast<int> (out.size()));
        for (const float sample : out)
            rendered.peak = std::max (rendered.peak, static_cast<double> (std::abs (sample)));
    }
    return rendered;
}
}
