#pragma once

#include <filesystem>
#include <string>
#include <vector>

namespace coldiron::support
{
/** Sound in a file, by libsndfile alone: the product's own reader is not asked. */
struct Wav
{
    double sampleRate = 0.0;
    std::vector<std::vector<double>> channels;
};

Wav readWav (const std::filesystem::path&);                    ///< @throws std::runtime_error
void writeFloatWav (const std::filesystem::path&, const Wav&); ///< 32-bit float; @throws std::runtime_error

/** ITU-R BS.1770 integrated loudness [LUFS], a mono take as dual mono, by libebur128. */
double loudnessLufs (const std::vector<double>& mono, double sampleRate);
}
