#pragma once

#include "engine/HeardLevel.h"
#include "response/CoilChoice.h"
#include "response/Figures.h"
#include "response/NearestTake.h"
#include "session/OptionId.h"

#include <optional>
#include <string>
#include <vector>

namespace coldiron
{
/** What is drawn of one option. All vectors are as long as hz. */
struct Curve
{
    std::vector<double> hz;            ///< rising, 20 Hz to 20 kHz
    std::vector<double> changeDb;      ///< what is applied to the take; -300 where silent
    std::vector<double> circuitDb;     ///< the whole circuit: V at the input per volt of coil EMF, all coils alike
    std::vector<double> lowDb, highDb; ///< the band around changeDb; empty until computed (it takes longer)
};

/** One curve of a knob's sweep. */
struct SweepCurve
{
    double knob = 0.0;
    std::vector<double> hz, changeDb, circuitDb;
};

/** All that is known of one option at its present setting. Immutable. */
struct Report
{
    OptionId option = asRecorded;
    Setting setting;
    bool silent = false;
    std::string fault;     ///< not empty: why nothing could be computed, for people; it is complete and silent then
    bool complete = false; ///< false: only the curve without band, the rest follows
    Curve curve;
    Figures figures;                      ///< once complete; confidence is there at once
    double matchDb = 0.0;                 ///< what level matching adds
    std::optional<HeardLevel> heard;      ///< behind the jack, once complete and with a take
    double humPeak = 0.0, buzzPeak = 0.0; ///< most the hum of 0 dB can reach behind the jack, buzz at 0 and at 1 [linear]
    std::vector<CoilHum> coilHums;        ///< once complete
    std::vector<OtherCoil> otherCoils;    ///< to keep instead, where two kept coils hum together
    double hissPeak = 0.0;                ///< likewise of the hiss under 0 dB: five times its rms
    std::optional<double> peakDb;         ///< of the take through this option, dBFS at true level; none without a take
    TakeChoice choice;                    ///< from which take, and why; empty words with one take or none
    double filterErrorDb = 0.0;           ///< the filter against its target, worst of 20 Hz to 20 kHz
};
}
