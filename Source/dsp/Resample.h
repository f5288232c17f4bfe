#pragma once

#include "concurrency/Cancellation.h"

#include <vector>

namespace coldiron
{
/** Windowed-sinc resampling (Kaiser, 48 zero crossings): what is resampled keeps its level and is clean to 20 kHz.
    @throws Cancelled */
std::vector<float> resampled (const std::vector<float>&, double fromRate, double toRate, const Cancellation& = {});
}
