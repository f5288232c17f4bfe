#pragma once

#include "circuit/Equations.h"

#include <vector>

namespace coldiron
{
/** A circuit's responses as a small system of its energy stores alone:

        h_k (p) = direct_k - (p - 1) row (I + (p - 1) matrix)^-1 columns_k,   p = s / s0.

    By the matrix inversion lemma on the equations at p = 1, with the reactance as sum of +- f f^T. Inductance cutsets and
    capacitor loops, which make the whole equations index 2, leave only simple zero eigenvalues here; a passive
    circuit's eigenvalues lie in the disc |mu - 1/2| <= 1/2. A pole is p = 1 - 1/mu.
*/
struct StateForm
{
    Eigen::MatrixXd matrix;  ///< m x m
    Eigen::RowVectorXd row;  ///< the output
    Eigen::MatrixXd columns; ///< m x inputs: the sources, then a unit current into the output
    Eigen::RowVectorXd direct;

    /** @throws std::runtime_error when the circuit has no single solution */
    StateForm (const Netlist&, const std::vector<BranchId>& sources, NodeId output);
};
}
