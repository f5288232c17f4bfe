#pragma once

#include "filter/ModalFilter.h"

#include <functional>
#include <vector>

namespace coldiron
{
/** A take as it sounds through one option. */
struct Rendered
{
    std::vector<std::vector<float>> channels; ///< as many, and as long, as the take
    double peak = 0.0;                        ///< largest absolute sample, linear; over 1 needs a float file

    bool overFullScale() const { return peak > 1.0; }
    double peakDb() const;                    ///< [dBFS]; -300 for silence
};

/** Runs a take through a filter in blocks: sample count kept, no latency.
    @param gain      linear, on top of the filter
    @param progress  called with the share done, 0..1, about every second of the take; may be empty */
Rendered renderTake (const std::vector<std::vector<float>>& take, const ModalFilter&, double gain = 1.0,
                     const std::function<void (double)>& progress = {});
}
