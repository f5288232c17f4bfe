#pragma once

#include <cstddef>
#include <vector>

namespace coldiron
{
/** The largest absolute sample, linear; infinite or not a number where one sample is. */
float peakOf (const float* samples, size_t count);

/** The same of all channels. */
float peakOf (const std::vector<std::vector<float>>& channels);
}
