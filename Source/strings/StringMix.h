#pragma once

#include "strings/StringDraw.h"
#include "strings/StringSet.h"

#include <Eigen/Core>

namespace coldiron
{
/** W_ij (hz) for the coils of one harness: W = sum_s w_s 1/2 [c(d_i - d_j) - c(d_i + d_j)] over strings both hear. */
Eigen::MatrixXd stringWeights (const StringSet&, const std::vector<CoilPosition>&, double hz, const StringDraw& = {});

/** The assumed power of string s at hz, before the coils' places. */
double stringPower (const StringSet&, int s, double hz, const StringDraw& = {});
}
