#pragma once

#include "concurrency/Cancellation.h"
#include "response/Confidence.h"
#include "response/Hum.h"
#include "response/NoiseTrust.h"
#include "response/StringResponse.h"
#include "response/Volumes.h"

#include <optional>
#include <vector>

namespace coldiron
{
/** What a table says of one option; every number in the unit of its name. Nothing here is rounded. */
struct Figures
{
    bool silent = false; ///< then all numbers but those of the jack are meaningless

    double levelDb = 0.0; ///< applied to the take: rms over the take's spectrum, or over 80 Hz to 5 kHz (equal per octave)
    std::optional<double> loudnessLu; ///< BS.1770 of the rendered take less that of the take; filled in where there is a take

    std::optional<double> clarityDb; ///< re as recorded: above 0 clearer
    Resonance resonance;             ///< of what the strings give

    std::vector<VolumeFigures> volumes;

    double humJackDb = 0.0;           ///< hum at the jack against as recorded
    double humAgainstPlayingDb = 0.0; ///< the same with the option's own level taken out
    HumFigures hum;                   ///< against a single coil of the trade
    bool humByMismatch = false;       ///< in the option or in the recording most of it is the assumed mismatch

    double hissUv = 0.0;     ///< thermal noise of harness, cable and input, 20 Hz to 20 kHz, 293.15 K [uV rms]
    double outputOhms = 0.0; ///< |Z| at the jack at 1 kHz, cable and input left out
    double dbPerMetre = 0.0; ///< at 5 kHz, for a metre (100 pF) more of cable
    Confidence confidence;
    NoiseTrust trust; ///< how far up the take's own noise lets the preview be trusted; filled in where there is a take
};

/** @throws Cancelled */
Figures computeFigures (const CircuitConfig& recorded, const CircuitConfig& option, const Spectrum& take = {},
                        const Cancellation& = {});
}
