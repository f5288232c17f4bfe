#pragma once

#include <vector>

namespace coldiron
{
/** How the powers of the strings are bent for one draw of the band; neutral by default. */
struct StringDraw
{
    std::vector<double> levelDb; ///< per string; empty: 0
    std::vector<double> slopeDb; ///< per string and octave above 1 kHz; empty: 0
    double sigma = 0.12;         ///< smoothing of the comb
    int onlyString = -1;         ///< >= 0: this string alone
};
}
