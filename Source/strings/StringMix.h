#pragma once

#include "strings/StringSet.h"

#include <Eigen/Core>

namespace coldiron
{
/** How the powers of the strings are bent for one draw of the band; neutral by default. */
struct StringDraw
{
    std::vector<double> levelDb;        ///< per string; empty: 0
    std::vector<double> slopeDb;        ///< per string and octave above 1 kHz; empty: 0
    double sigma = 0.12;                ///< smoothing of the comb
    int onlyString = -1;                ///< >= 0: this string alone
};

/** W_ij (hz) for the coils of one harness: W = sum_s w_s 1/2 [c(d_i - d_j) - c(d_i + d_j)] over strings both hear. */
Eigen::MatrixXd stringWeights (const StringSet&, const std::vector<Ear>&, double hz, const StringDraw& = {});

/** The assumed power of string s at hz, before the coils' places. */
double stringPower (const StringSet&, int s, double hz, const StringDraw& = {});
}
