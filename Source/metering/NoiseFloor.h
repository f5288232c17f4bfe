#pragma once

#include <memory>
#include <vector>

namespace coldiron
{
/** What a take's pauses sound like, in third octaves from 50 Hz to 16 kHz (as far as its sample rate reaches). */
struct NoiseFloor
{
    std::vector<double> hz;      ///< band centres, 1000 Hz x 10^(n/10)
    std::vector<double> noise;   ///< mean square of the band in the quietest stretches, full scale 1, mean of the channels
    std::vector<double> playing; ///< the same while it plays: the louder half of the take

    double pauseSeconds = 0.0; ///< of the stretches that count as pauses
    bool isKnown = false;      ///< there are pauses, and they are not digital silence
    bool isSilent = false;     ///< pauses are exact zeros: cut or gated, so what noise plays along cannot be told

    double noiseDb() const; ///< all bands together, noise against playing [dB]; -300 where unknown
};

/** Finds it block by block, in constant memory: of a take over ten minutes every second stretch counts, over twenty every
    fourth, and so on. */
class NoiseFloorMeter
{
public:
    explicit NoiseFloorMeter (double sampleRate);
    ~NoiseFloorMeter();
    NoiseFloorMeter (NoiseFloorMeter&&) noexcept;
    NoiseFloorMeter& operator= (NoiseFloorMeter&&) noexcept;

    void add (const std::vector<std::vector<float>>& channels); ///< equal lengths; as many channels each time
    NoiseFloor floor();                                         ///< at the take's end: nothing is added after it

private:
    struct Impl;
    std::unique_ptr<Impl> impl;
};

/** Looks for pauses: the quietest stretches of about a twelfth of a second, all within 4 dB of each other, at least
    0.25 s of them, and 20 dB or more under the playing. Robust against single clicks: the median over stretches. */
NoiseFloor measureNoiseFloor (const std::vector<std::vector<float>>& channels, double sampleRate);
}
