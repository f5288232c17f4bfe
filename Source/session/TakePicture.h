#pragma once

#include "metering/TakeFaults.h"

#include <string>
#include <vector>

namespace coldiron
{
/** What is shown of a take. Immutable. */
struct TakePicture
{
    std::string name;  ///< of the file
    std::string fault; ///< not empty: why it cannot be played
    double seconds = 0.0;
    double sampleRate = 0.0;
    int channels = 0;
    std::vector<float> low, high; ///< least and largest sample of each of up to 4000 equal stretches
    double loudnessLufs = -300.0;
    std::vector<TakeFault> remarks; ///< what a better recording would not have, the worst first
    double noiseDb = -300.0;        ///< of its pauses against the playing; -300 where that cannot be told
};
}
