#pragma once

#include "dsp/HalfBand.h"

#include <vector>

namespace coldiron
{
/** A mild overdriven input, of our own: y = a tanh (k x/a)/tanh k, where a is the peak of a sine as loud as the take and
    k = 0.25 at 0 dB. So a tone as loud as the take keeps its level while what is softer comes up, as an amplifier does
    that limits. No memory, both halves alike; oversampled four times (twice above 64 kHz) through elliptic half-bands. */
class Overdrive
{
public:
    /** @param driveDb  0 to 24; @param reference  a, above 0 */
    Overdrive (double sampleRate, double driveDb, double reference);

    void reset();
    void process (int channel, double* samples, int frames); ///< [audio-thread] channel 0 or 1
    double shape (double x) const;
    double smallSignalGain() const; ///< k/tanh k, the steepest

private:
    struct Channel
    {
        HalfBand up1, up2, down2, down1;
    };
    double push = 1.0, scale = 1.0;
    bool twice = false; ///< two stages
    std::vector<Channel> channels;
};
}
