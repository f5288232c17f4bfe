#include "metering/Peak.h"

#include "dsp/SimdKernels.h"

#include <algorithm>
#include <bit>
#include <cstdint>

namespace coldiron
{
float peakOf (const float* samples, size_t count) { return std::bit_cast<float> (simd::largestMagnitudeBits (samples, count)); }

float peakOf (const std::vector<std::vector<float>>& channels)
{
    int32_t most = 0;
    for (const auto& channel : channels)
        most = std::max (most, simd::largestMagnitudeBits (channel.data(), channel.size()));
    return std::bit_cast<float> (most);
}
}
