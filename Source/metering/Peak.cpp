#include "metering/Peak.h"

#include "dsp/Simd.h"

#include <algorithm>
#include <bit>
#include <cstdint>

namespace coldiron
{
/** Without its sign a float is as its bits are, as a whole number: infinity above all numbers, what is no number above that. */
COLDIRON_SIMD static int32_t largestBits (const float* samples, size_t count)
{
    int32_t most = 0;
    for (size_t i = 0; i < count; ++i)
        most = std::max (most, std::bit_cast<int32_t> (samples[i]) & 0x7fffffff);
    return most;
}

float peakOf (const float* samples, size_t count) { return std::bit_cast<float> (largestBits (samples, count)); }

float peakOf (const std::vector<std::vector<float>>& channels)
{
    int32_t most = 0;
    for (const auto& channel : channels)
        most = std::max (most, largestBits (channel.data(), channel.size()));
    return std::bit_cast<float> (most);
}
}
