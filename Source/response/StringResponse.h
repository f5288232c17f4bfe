#pragma once

#include "response/GuitarResponse.h"

#include <optional>

namespace coldiron
{
/** What the strings give through a circuit, in place of all coils driven alike: V at the input per volt of string EMF.

    The string-weighted power h^H W h, over the power that the same coils would give in unison, each counted by its share of
    the power heard. So where one coil is heard, or several as one, it is the circuit's own response; where coils work
    against each other it is what is left of them. The comb of the coils' places is spread until no tooth is left (sigma 1),
    so that it makes no peaks. 0 for silence. */
double stringResponse (const GuitarResponse&, double hz);

/** The resonance as a technician reads it off a sweep. */
struct Resonance
{
    std::optional<double> peakHz;     ///< top of the loudest hump above 200 Hz; none where the response only falls
    std::optional<double> peakDb;     ///< above the passband; none without a passband
    std::optional<double> cornerHz;   ///< 3 dB below the passband, above the peak; none below 40 kHz, or without a passband
    std::optional<double> passbandDb; ///< level of the flattest octave below the peak; none where no octave is within 3 dB
};

Resonance findResonance (const GuitarResponse&);
}
