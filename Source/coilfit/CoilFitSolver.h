#pragma once

#include "coilfit/CoilFitResiduals.h"

namespace coldiron
{
/** A least-squares fit of the parameters that are free; the others stay at 0. */
struct FitSolution
{
    FitShape::FitParameters parameters {};
    double cost = 0.0;           ///< sum of squares, the priors' included
    double readingCost = 0.0;    ///< the readings' alone
    Eigen::MatrixXd information; ///< 5 x 5, from the readings alone: J^T J at the end, zero where not free

    /** Another minimum that the readings allow about as well, most unlike the first; empty: none. */
    std::optional<FitShape::FitParameters> rival;
};

/** Levenberg and Marquardt's method with a prior of FitShape::spread on each parameter, from a grid of fixed starts. */
FitSolution solveFit (const FitShape&, const FitResiduals&, const std::array<bool, 5>& free,
                      const FitShape::FitParameters& start);
}
