#pragma once

#include "audition/AfterJack.h"
#include "audition/Hum.h"

namespace coldiron
{
/** An option on its take as heard behind the jack. */
struct HeardLevel
{
    double matchDb = 0.0;              ///< what to add before the chain so that it is as loud as the take behind it; -30..30
    double truePeakDb = -300.0;        ///< [dBTP] at true level
    double matchedTruePeakDb = -300.0; ///< [dBTP] with matchDb added
};

/** Measures whole pieces: ITU-R BS.1770 loudness and true peak. Behind a drive louder is not merely louder, so there the
    match is found in rounds, to 0.02 LU where it can be.
    @param channels  the take through the option, before the chain
    @param takeLufs  of the take as recorded, behind the same chain; not finite: nothing is matched */
HeardLevel heardLevel (const std::vector<std::vector<float>>& channels, double sampleRate, AfterJack&, double takeLufs);

/** No more than this can the hum of one coil's EMF emfRms reach through a voice and a chain [linear peak]: all harmonics
    in step, 50 or 60 Hz, facing the field. */
double mostHum (const Voice&, const AfterCurve&, double buzz, double emfRms);

/** The gain, at most 0 dB, that keeps what may reach this peak [linear] just below full scale: a hundredth of a decibel. */
double headroomDb (double peak);
}
