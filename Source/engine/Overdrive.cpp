#include "engine/Overdrive.h"

#include <algorithm>
#include <cmath>

namespace coldiron
{
Overdrive::Overdrive (double sampleRate, double driveDb, double reference)
{
    const double k = 0.25 * std::pow (10.0, std::clamp (driveDb, 0.0, 24.0) / 20.0), a = std::max (1e-9, reference);
    push = k / a;
    scale = a / std::tanh (k);
    twice = sampleRate < 64e3;
    // Flat to 0.43 fs, 20.6 kHz at 48 kHz. The second stage's slope may begin where the first one's images lie.
    const HalfBand first (halfBandCoefficients (96.0, 0.035)), second (halfBandCoefficients (96.0, 0.125));
    channels.assign (2, { first, second, second, first });
}

void Overdrive::reset()
{
    for (auto& channel : channels)
        for (HalfBand* band : { &channel.up1, &channel.up2, &channel.down2, &channel.down1 })
            band->reset();
}

double Overdrive::shape (double x) const { return scale * std::tanh (push * x); }

double Overdrive::smallSignalGain() const { return scale * push; }

void Overdrive::process (int channel, double* samples, int frames)
{
    Channel& bands = channels[static_cast<size_t> (channel)];
    const auto shapedTwice = [&] (double x)
    {
        double a, b;
        bands.up2.up (x, a, b);
        return bands.down2.down (shape (a), shape (b));
    };
    for (int i = 0; i < frames; ++i)
    {
        double a, b;
        bands.up1.up (samples[i], a, b);
        a = twice ? shapedTwice (a) : shape (a);
        b = twice ? shapedTwice (b) : shape (b);
        samples[i] = bands.down1.down (a, b);
    }
}
}
