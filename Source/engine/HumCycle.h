#pragma once

#include "response/Hum.h"

#include <array>

namespace coldiron
{
/** One cycle of hum as heard through an option; a mains clock says where in it the mains stand. */
struct HumCycle
{
    static constexpr int length = 4096;
    double mainsHz = 50.0;
    std::array<float, length + 3> samples {}; ///< from one before the cycle's start to two after its end

    /** The harmonics stand at fixed phases that do not pile up.
        @param emfRms  of one 5000-turn coil, in full scale at 0 dB */
    static HumCycle of (const GuitarResponse&, const MainsField&, double emfRms);

    /** [audio-thread] @param phase  0 up to 1; by a third-order polynomial, within -110 dB of the highest harmonic */
    double at (double phase) const
    {
        const double place = phase * length;
        const auto index = std::min (static_cast<size_t> (place), static_cast<size_t> (length - 1));
        const double x = place - static_cast<double> (index);
        const double a = samples[index], b = samples[index + 1], c = samples[index + 2], d = samples[index + 3];
        const double below = x + 1.0, above = x - 1.0, far = x - 2.0;
        return 0.5 * above * far * below * b - 0.5 * x * far * below * c + (x * above * below * d - x * above * far * a) / 6.0;
    }
};

/** The turning of the mains, which wanders as real networks do (mainsHzAt, integrated). Live and offline hum read the same
    clock: the same phase at the same time after reset(), however the time is cut into blocks. Never allocates. */
class MainsClock
{
public:
    static constexpr int longest =
        64; ///< frames at once: between two ends the phase runs straight, to a hundred millionth of a turn

    void reset() { *this = {}; }

    /** [audio-thread] Where in their cycle the mains stand at each of the next frames, 0 up to 1. @param frames  1 to longest */
    void next (double mainsHz, double sampleRate, double* phases, int frames);

private:
    double turned = 0.0; ///< cycles without the wander, less whole ones
    double frame = 0.0;  ///< since reset()
};
}
