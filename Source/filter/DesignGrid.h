#pragma once

#include <vector>

namespace coldiron
{
/** The frequencies at which a target is asked for at one sample rate [Hz], rising: 12 to the octave from 8 to 800 Hz,
    40 to min (23 kHz, 0.36 fs), 24 to 0.492 fs. */
std::vector<double> designGrid (double sampleRate);

/** tan (pi f / fs): the frequency axis of w = (z - 1)/(z + 1). */
double warped (double hz, double sampleRate);
}
