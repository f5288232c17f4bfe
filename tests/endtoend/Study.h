#pragma once

#include "job/Job.h"
#include "response/Confidence.h"
#include "support/PluckedString.h"

#include <string>
#include <vector>

namespace coldiron::support
{
/** One option of one take: how far the prediction lies from the truth. */
struct Miss
{
    std::string take, option; ///< the option's name: what kind of change it is
    Confidence confidence;
    std::vector<double> thirdOctaveDb; ///< predicted less true, where both take and truth are heard
    int held = 0;                      ///< how many of them the band holds
    double loudnessLu = 0.0;           ///< predicted less true
};

/** Makes the take of a phrase through the job's first take's harness, predicts every option and compares it with
    what the same strings give the coils of that option.
    @param jobText  a job whose options are wanted; TAKE and STRINGS in it are filled in */
std::vector<Miss> missesOf (const std::string& jobText, const PluckedInstrument&, const Phrase&);

/** Figures over many takes. */
struct Pooled
{
    double rmsDb = 0.0, heldShare = 0.0, loudnessRmsLu = 0.0, loudnessWorstLu = 0.0;
    double withinPromise = 0.0; ///< share of takes whose loudness is as near as its mark says
    int takes = 0, bands = 0;
};

Pooled pool (const std::vector<Miss>&, const std::string& option);
}
