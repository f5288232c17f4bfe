#pragma once

#include "coilfit/CoilFitSolver.h"

namespace coldiron
{
/** What is wrong with the readings before anything is fitted. */
std::vector<FitRefusal> checkReadings (const Pickup& generic, const FitShape&, const PickupReadings&);

/** The values at the leads with how well each is found. */
std::array<FittedValue, 5> judgeValues (const FitShape&, const FitSolution&, double misfit);

/** rms misfit for the degrees of freedom that are left [standard deviations]. */
double misfitOf (const FitSolution&, int numReadings, int numSweeps);

/** Refusals and notes of a finished fit, and the mark it earns. */
void judgeFit (CoilFit&, const Pickup& generic, const FitShape&, const PickupReadings&);
}
