#pragma once

#include "guitar/Load.h"
#include "guitar/Setting.h"
#include "support/PluckedString.h"

#include <string>
#include <vector>

namespace coldiron::support
{
/** Where a coil listens and how loud, read from the harness's parts. */
struct CoilPlace
{
    std::string pickup, coil;
    double bridgeMm = 0.0; ///< pickup's middle and the coil's offset
    double drive = 0.0;    ///< winding times magnet times output
};

/** Every coil of a harness in the order of its parts; no slant and no split coils here. */
std::vector<CoilPlace> coilPlaces (const Harness&);

/** What the strings do above each coil of a harness: the EMF of a coil of output 1. */
std::vector<std::vector<double>> harnessEmfs (const Harness&, const PluckedInstrument&, const Phrase&, double sampleRate);

/** What arrives at the input when the coils give these EMFs: ngspice's AC response of each coil, bin by bin, and an
    FFT. An independent route: nothing of the product but the description of the harness goes in.
    @param emfs   in the order of coilPlaces(); winding, magnet and output are put in here
    Above 16 kHz, where the synthesizer is silent, the band fades out. */
std::vector<double> throughHarness (const Harness&, const Setting&, const Load&, const std::vector<std::vector<double>>& emfs,
                                    double sampleRate);
}
