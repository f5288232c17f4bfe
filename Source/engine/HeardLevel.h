#pragma once

#include "concurrency/Cancellation.h"
#include "engine/OfflineRenderer.h"

namespace coldiron
{
/** An option on its take as heard behind the jack. */
struct HeardLevel
{
    double matchDb = 0.0;              ///< what to add before the chain so that it is as loud as the take behind it; -30..30
    double truePeakDb = -300.0;        ///< [dBTP] at true level
    double matchedTruePeakDb = -300.0; ///< [dBTP] with matchDb added
};

/** Finds the gain before the chain with which an option is as loud as the take, in rounds: render with db(), tell heard(),
    until it is done. One round, but for a drive, behind which more gain gives less than that: there up to seven, to 0.02 LU
    where it can be. */
class LevelMatch
{
public:
    /** @param takeLufs  of the take as recorded, behind the same chain; not finite: nothing is matched
        @param bends     whether the chain drives */
    LevelMatch (double takeLufs, bool isNonlinear) : wanted (takeLufs), isDriven (isNonlinear) {}

    double db() const { return found; } ///< the gain to try, then the one found; -30..30
    bool isDone() const { return done; }
    void heard (double lufs); ///< loudness with db()

private:
    double wanted = 0.0, found = 0.0;
    bool isDriven = false, done = false;
    int rounds = 0;
};

/** Of a whole take as rendered. */
struct SoundLevel
{
    double lufs = 0.0;          ///< -infinity for silence
    double truePeakDb = -300.0; ///< [dBTP]
    double peak = 0.0;          ///< largest absolute sample, linear
};

/** Renders a take in memory, and keeps none of it. @param leastTruePeakDb  as TruePeak's. @throws Cancelled */
SoundLevel soundLevel (const Channels& take, const RenderSpec&, double leastTruePeakDb = -300.0, const Cancellation& = {});

/** ITU-R BS.1770 loudness and true peak behind the chain, without noises, whatever gain the design has.
    @param takeLufs  as LevelMatch. @throws Cancelled */
HeardLevel heardLevel (const Channels& take, RenderSpec, double takeLufs, const Cancellation& = {});

/** No more than this can the hum of one coil's EMF emfRms reach through a voice and a chain [linear peak]: all harmonics
    in step, 50 or 60 Hz, facing the field. */
double mostHum (const GuitarResponse&, const OutputCurve&, double buzz, double emfRms);

/** The gain, at most 0 dB, that keeps what may reach this peak [linear] just below full scale: a hundredth of a decibel. */
double headroomDb (double peak);
}
