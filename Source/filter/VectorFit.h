#pragma once

#include <complex>
#include <vector>

namespace coldiron
{
/** A rational function of w: direct + sum of residue/(w - pole); complex poles stand once for their conjugate pair. */
struct RationalFit
{
    double direct = 0.0;
    std::vector<std::complex<double>> poles; ///< left half plane; imaginary part 0 (real) or > 0 (pair)
    std::vector<std::complex<double>> residues;

    std::complex<double> at (double x) const; ///< at w = j x
};

/** What is fitted: the value at each j axis[k], and how much each point counts. */
struct FitTarget
{
    std::vector<double> axis; ///< > 0, rising
    std::vector<std::complex<double>> values;
    std::vector<double> weights;
    double damping = 0.005; ///< at least this share of |w| is kept as -Re w
    double leastReal = 0.0; ///< and this much more
};

/** Relaxed vector fitting from evenly spread starting poles, always the same number of iterations, so that one target
    gives one filter. Source: B. Gustavsen, "Improving the pole relocating properties of vector fitting",
    IEEE Trans. Power Delivery 21(3), 2006 (from memory).
    @param order       number of poles, even, >= 2 */
RationalFit fitRational (const FitTarget&, int order, int iterations);
}
