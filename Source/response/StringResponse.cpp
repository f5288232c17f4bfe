#include "response/StringResponse.h"

#include "response/SourceResponses.h"
#include "strings/StringMix.h"

#include <algorithm>
#include <cmath>
#include <vector>

namespace coldiron
{
namespace
{
constexpr double lowestGridHz = 80.0, humpFromHz = 200.0, highestHz = 40000.0, flattestBelowHz = 2000.0;
constexpr int gridPointsPerOctave = 48;
constexpr double flatDb = 3.0, cornerDb = 3.0103, leastPeakDb = 0.05;

double levelDb (const GuitarResponse& response, double hz)
{
    return 20.0 * std::log10 (std::max (stringResponse (response, hz), 1e-15));
}

double topBetween (const GuitarResponse& response, double lowHz, double highHz)
{
    double low = std::log (lowHz), high = std::log (highHz);
    for (int i = 0; i < 60; ++i) // ternary search: one hump between the neighbours
    {
        const double a = low + (high - low) / 3.0, b = high - (high - low) / 3.0;
        if (levelDb (response, std::exp (a)) < levelDb (response, std::exp (b)))
            low = a;
        else
            high = b;
    }
    return std::exp (0.5 * (low + high));
}

/** The mean level of the flattest octave, the lowest of those alike. */
std::optional<double> passband (const std::vector<double>& levels, size_t end)
{
    std::optional<double> level;
    double flattest = flatDb;
    for (size_t from = 0; from + gridPointsPerOctave < end; from += gridPointsPerOctave / 6)
    {
        const auto first = levels.begin() + static_cast<std::ptrdiff_t> (from), last = first + gridPointsPerOctave + 1;
        const auto [least, most] = std::minmax_element (first, last);
        if (*most - *least >= flattest)
            continue;
        flattest = *most - *least;
        double sum = 0.0;
        for (auto one = first; one != last; ++one)
            sum += *one;
        level = sum / (gridPointsPerOctave + 1);
    }
    return level;
}
}

double stringResponse (const GuitarResponse& response, double hz)
{
    const Eigen::VectorXcd h = sourceResponses (response, hz);
    const double all = h.squaredNorm();
    if (! (all > 0.0))
        return 0.0;
    StringDraw spread;
    spread.sigma = 1.0;
    const Eigen::MatrixXd weights = stringWeights (response.strings(), response.coilPositions(), hz, spread);
    const Eigen::VectorXd share = h.cwiseAbs2() / all;
    const double heard = (h.adjoint() * weights * h) (0).real(), unison = share.dot (weights * share);
    return unison > 0.0 ? std::sqrt (std::max (0.0, heard / unison)) : 0.0;
}

Resonance findResonance (const GuitarResponse& response)
{
    std::vector<double> levels;
    const auto hzAt = [] (size_t i) { return lowestGridHz * std::exp2 (static_cast<double> (i) / gridPointsPerOctave); };
    for (size_t i = 0; hzAt (i) <= highestHz; ++i)
        levels.push_back (levelDb (response, hzAt (i)));
    const auto indexOf = [] (double hz)
    { return static_cast<size_t> (std::ceil (gridPointsPerOctave * std::log2 (hz / lowestGridHz))); };

    const size_t first = indexOf (humpFromHz);
    const auto top = static_cast<size_t> (std::max_element (levels.begin() + static_cast<std::ptrdiff_t> (first), levels.end())
                                          - levels.begin());
    const bool isHump = top > first && top + 1 < levels.size();

    Resonance found;
    found.passbandDb = passband (levels, indexOf (isHump ? hzAt (top) / 1.5 : flattestBelowHz));
    size_t from = first;
    if (isHump)
    {
        const double hz = topBetween (response, hzAt (top - 1), hzAt (top + 1));
        const double height = levelDb (response, hz) - found.passbandDb.value_or (-300.0);
        if (height > leastPeakDb)
        {
            found.peakHz = hz;
            from = top;
            if (found.passbandDb)
                found.peakDb = height;
        }
    }
    if (! found.passbandDb)
        return found;
    const double corner = *found.passbandDb - cornerDb;
    for (size_t i = from; i + 1 < levels.size(); ++i)
        if (levels[i] >= corner && levels[i + 1] < corner)
        {
            double low = std::log (hzAt (i)), high = std::log (hzAt (i + 1));
            for (int round = 0; round < 50; ++round)
                (levelDb (response, std::exp (0.5 * (low + high))) > corner ? low : high) = 0.5 * (low + high);
            found.cornerHz = std::exp (0.5 * (low + high));
            break;
        }
    return found;
}
}
