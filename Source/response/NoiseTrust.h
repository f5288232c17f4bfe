#pragma once

#include "metering/NoiseFloor.h"
#include "response/CircuitConfig.h"

#include <functional>
#include <optional>

namespace coldiron
{
class TransferFunction;

/** How far up a preview can be trusted, with a take of that noise. */
struct NoiseTrust
{
    std::optional<double> trustedToHz; ///< none: all the way
    double liftDb = 0.0;               ///< the most that audible noise is lifted
    double liftHz = 0.0;               ///< and where
    bool wasTurnedDown = false;        ///< the take was recorded with its treble turned down: a better one has it turned up
};

/** The change lifts the take's noise with the rest. Trust ends at the first third octave from 300 Hz up where it is
    lifted by more than 6 dB (on top of what turning a softer option up costs) and stands less than 60 dB under the
    option's playing as a whole: with playing at 80 dB in the room that is 20 dB, the noise of a quiet room.
    @param gain        |T| at a frequency, linear
    @param wasTurnedDown  see NoiseTrust */
NoiseTrust judgeNoise (const NoiseFloor&, const std::function<double (double)>& gain, bool wasTurnedDown);

/** The same for a change; the recording counts as turned down where its knobs take more than 3 dB of treble. */
NoiseTrust judgeNoise (const NoiseFloor&, const CircuitConfig& recorded, const TransferFunction&);
}
