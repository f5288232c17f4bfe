#pragma once

#include "job/Job.h"
#include "takes/TakeFile.h"

#include <set>

namespace coldiron::cli
{
/** What is wrong with a take, with its place in the job in front: "job.json:7: verse.wav: ...". */
Diagnostic takeFault (const Job&, int take, const TakeError&);

/** Reads, as rendering would, what a job names beside its own text: those takes to their last sample, and the impulse
    response where the choice is one. @returns one fault for each entry of the job that cannot be used */
Diagnostics sourceFaults (const Job&, const std::set<int>& takes, const OutputChainChoice&);

/** The same before anything is computed or written. @throws JobDiagnostic  all faults having been said, one a line */
void checkSources (const Job&, const std::set<int>& takes, const OutputChainChoice& = {});

std::set<int> allTakes (const Job&);
}
