#pragma once

#include <array>
#include <vector>

namespace coldiron
{
/** The coefficients of a half-band low-pass of two branches of all-passes, H(z) = 1/2 (A0(z^2) + z^-1 A1(z^2)), those of
    A0 at even places. Elliptic, so the shortest for what it does; its passband is flat to better than a millionth.
    Source: R. A. Valenzuela, A. G. Constantinides, Digital signal processing schemes for efficient interpolation and
    decimation, IEE Proc. G 130(6), 1983 (from memory); a test measures the response.
    @param attenuationDb  of the stopband, 20..160; @param transition  half the width of the slope, of the higher rate, 0.001..0.24 */
std::vector<double> halfBandCoefficients (double attenuationDb, double transition);

/** Doubles a sample rate, or halves it, for one channel. No latency beyond the filter's own group delay. */
class HalfBand
{
public:
    static constexpr int most = 12; ///< coefficients

    explicit HalfBand (const std::vector<double>& coefficients = {});
    void reset();
    void up (double in, double& first, double& second); ///< [audio-thread]
    double down (double first, double second);          ///< [audio-thread]

private:
    int count = 0;
    std::array<double, most> coefficient {}, last {}, lastOut {};

    double branch (int from, double x);
};
}
