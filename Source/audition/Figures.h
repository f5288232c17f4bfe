#pragma once

#include "audition/Band.h"

#include <optional>
#include <vector>

namespace coldiron
{
/** What a table says of one option; every number in the unit of its name. Nothing here is rounded. */
struct Figures
{
    bool silent = false;
    double levelDb = 0.0;             ///< applied to the take: rms over the take's own spectrum where there is one, else 80 Hz to 5 kHz
    std::optional<double> loudnessLu; ///< BS.1770 of the rendered take less that of the take
    double peakHz = 0.0, peakDb = 0.0; ///< of the plain response; dB re 100 Hz; peakHz 0: none
    double cornerHz = 0.0;            ///< -3 dB re 100 Hz, above the peak
    std::vector<std::pair<double, double>> trebleKept; ///< (knob, dB at 5 kHz re 500 Hz) of the volume heard, 10 8 6 4 2
    double humJackDb = 0.0;           ///< hum at the jack against as recorded
    double humAgainstPlayingDb = 0.0; ///< the same with the option's own level taken out
    double hissUv = 0.0;              ///< thermal noise 20 Hz to 20 kHz at the input, 293.15 K [uV]
    double outputOhms = 0.0;          ///< |Z| at the jack at 1 kHz, cable and input left out
    double dbPerMetre = 0.0;          ///< at 5 kHz, for 100 pF more of cable
    Sureness sureness;
};

/** @param takeSpectrum  power in third octaves of the take, or empty; see takeThirdOctaves() */
Figures computeFigures (const Side& recorded, const Side& option);
}
