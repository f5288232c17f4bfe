#pragma once

#include "metering/Spectrum.h"
#include "response/CircuitConfig.h"

#include <optional>
#include <vector>

namespace coldiron
{
/** What ears call clear against what they call full [Hz]. */
struct ClarityBands
{
    double fullLow, fullHigh, clearLow, clearHigh;
};

/** 200 to 800 Hz against 2 to 4.5 kHz on a guitar, 120 to 480 Hz against 1.2 to 2.7 kHz on a bass: DEVELOPERS.md has the table they were chosen by. */
ClarityBands clarityBands (const StringSet&);

/** Clarity: the power of the playing in the clear band over that in the full band, behind a circuit [dB]. Only differences
    mean something: one option against another, a knob against itself at 10.

    The playing is a take's own spectrum, taken through what was recorded to what is heard. Without a take it is pink, the
    same power in every octave of the strings, heard by the coils where they stand. Unlike one treble frequency against
    one middle frequency it does not rise where a resonance falls or flattens. */
class Clarity
{
public:
    /** @param recorded  what the take was recorded through; it need not outlive this
        @param take      empty: no take */
    Clarity (const CircuitConfig& recorded, const Spectrum& take);

    /** Nothing where the circuit or the recording is silent. */
    std::optional<double> db (const CircuitConfig&) const;

private:
    GuitarResponse recorded;
    ClarityBands bands;
    std::vector<double> hz, power; ///< within the bands; power is empty without a take
};
}
