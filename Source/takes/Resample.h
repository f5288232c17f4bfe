#pragma once

#include "concurrency/Cancellation.h"

#include <vector>

namespace coldiron
{
/** The same sound at another sample rate, at soxr's very high quality: linear phase, level kept, clean to nine tenths of the
    lower rate's half, nothing folded back. Rates in Hz, above 0. As many samples as last as long, without delay.
    @throws Cancelled; std::runtime_error when the library cannot */
std::vector<float> resampled (const std::vector<float>&, double fromRate, double toRate, const Cancellation& = {});
}
