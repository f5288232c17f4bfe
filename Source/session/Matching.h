#pragma once

#include "metering/Spectrum.h"
#include "response/TransferFunction.h"

namespace coldiron
{
/** The K-weighting of ITU-R BS.1770 as power gain at hz (its two filters at 48 kHz, as published). */
double kWeight (double hz);

/** What to add so that an option is as loud as its take: K-weighted power over the take's spectrum, or over 80 Hz to
    5 kHz with equal power per octave. At most 30 dB either way; 0 for a silent option. [dB] */
double matchDb (const TransferFunction&, const Spectrum&);
}
