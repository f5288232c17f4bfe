#include "response/Band.h"

#include "response/Draws.h"
#include "response/SourceResponses.h"
#include "response/TransferFunction.h"
#include "response/Weights.h"

#include <algorithm>
#include <cmath>

namespace coldiron
{
namespace
{
constexpr int numDraws = 32;
constexpr int bandsPerOctave = 12; ///< of the grid the draws are computed on
constexpr double lowestBandHz = 16.0;
constexpr int numPoints = 11 * bandsPerOctave + 1; ///< to 32.8 kHz
constexpr double unplayedShare = 0.02 / 1.02;      ///< an unticked string's power against a ticked one's, as strings/ weighs them
/** A third octave holds few partials of a phrase, and the draws' means are over many: what the phrase itself adds each
    way [dB]. Set on synthesized takes so that the band holds nine truths in ten. */
constexpr double fewPartialsDb = 1.0;
constexpr double silence = 1e-30; ///< power ratio that stands for nothing

using Curve = std::vector<double>; ///< ln |T|^2 at the grid's points

Curve gridHz()
{
    Curve hz;
    for (int i = 0; i < numPoints; ++i)
        hz.push_back (lowestBandHz * std::exp2 (static_cast<double> (i) / bandsPerOctave));
    return hz;
}

/** The mean over a third octave around each point, trapezoidal. */
Curve thirdOctaveMeans (const Curve& curve)
{
    constexpr int reach = bandsPerOctave / 6;
    Curve means (curve.size());
    for (int i = 0; i < numPoints; ++i)
    {
        double sum = 0.0, weight = 0.0;
        for (int j = std::max (0, i - reach); j <= std::min (numPoints - 1, i + reach); ++j)
        {
            const double share = std::abs (j - i) == reach ? 0.5 : 1.0;
            sum += share * curve[static_cast<size_t> (j)];
            weight += share;
        }
        means[static_cast<size_t> (i)] = sum / weight;
    }
    return means;
}

/** power[string][point] of what a response hears of each string alone. */
std::vector<Curve> stringPowers (const GuitarResponse& response, const Curve& hz, double sigma)
{
    std::vector<Curve> powers (response.strings().strings.size(), Curve (hz.size()));
    for (size_t i = 0; i < hz.size(); ++i)
    {
        const Eigen::VectorXcd h = sourceResponses (response, hz[i]);
        for (size_t s = 0; s < powers.size(); ++s)
        {
            StringDraw alone;
            alone.sigma = sigma;
            alone.onlyString = static_cast<int> (s);
            const Eigen::MatrixXd weights = stringWeights (response.strings(), response.coilPositions(), hz[i], alone);
            powers[s][i] = std::max (0.0, (h.adjoint() * weights * h) (0).real());
        }
    }
    return powers;
}

/** One curve a draw: the nominal circuit under bent string powers. */
std::vector<Curve> stringDraws (const GuitarResponse& recorded, const GuitarResponse& option, const Curve& hz)
{
    const double sigma = drawStrings (recorded.strings(), Draw (0)).sigma;
    const auto recordedPowers = stringPowers (recorded, hz, sigma), optionPowers = stringPowers (option, hz, sigma);
    std::vector<Curve> curves;
    for (int d = 0; d < numDraws; ++d)
    {
        const auto draw = drawStrings (recorded.strings(), Draw (d));
        Curve curve (hz.size());
        for (size_t i = 0; i < hz.size(); ++i)
        {
            double recordedSum = 0.0, optionSum = 0.0;
            const double octaves = std::log2 (hz[i] / 1000.0);
            for (size_t s = 0; s < recordedPowers.size(); ++s)
            {
                const double ticked = s >= recorded.strings().played.size() || recorded.strings().played[s] ? 1.0 : unplayedShare;
                const double bend = ticked * std::pow (10.0, 0.1 * (draw.levelDb[s] + draw.slopeDb[s] * octaves));
                recordedSum += bend * recordedPowers[s][i];
                if (s < optionPowers.size())
                    optionSum += bend * optionPowers[s][i];
            }
            curve[i] = std::log (std::max (silence, recordedSum > 0.0 ? optionSum / recordedSum : 0.0));
        }
        curves.push_back (thirdOctaveMeans (curve));
    }
    return curves;
}

Curve nominal (const TransferFunction& transfer, const Curve& hz)
{
    Curve curve = transfer.gains (hz);
    for (auto& value : curve)
        value = std::log (std::max (silence, value * value));
    return thirdOctaveMeans (curve);
}

/** One curve a draw: how far bent parts move the nominal string mix. */
std::vector<Curve> partDraws (const CircuitConfig& recorded, const CircuitConfig& option, const Curve& centre, const Curve& hz,
                              const Cancellation& isUnwanted)
{
    std::vector<Curve> curves;
    for (int d = 0; d < numDraws; ++d)
    {
        isUnwanted.check();
        const auto recordedFactors = drawParts (recorded.harness, Draw (d));
        const auto optionFactors = drawParts (option.harness, Draw (d));
        BuildOptions bentRecorded, bentOption;
        bentRecorded.factors = &recordedFactors;
        bentOption.factors = &optionFactors;
        const GuitarResponse recordedResponse = recorded.response (bentRecorded), optionResponse = option.response (bentOption);
        Curve curve = nominal (TransferFunction (recordedResponse, optionResponse), hz);
        for (size_t i = 0; i < curve.size(); ++i)
            curve[i] -= centre[i];
        curves.push_back (std::move (curve));
    }
    return curves;
}

/** The value below which a share of the values lies, straight between neighbours. */
double quantile (std::vector<double>& sorted, double share)
{
    const double place = share * static_cast<double> (sorted.size() - 1);
    const auto below = static_cast<size_t> (place);
    const auto above = std::min (below + 1, sorted.size() - 1);
    return sorted[below] + (place - static_cast<double> (below)) * (sorted[above] - sorted[below]);
}

double interpolated (const Curve& curve, double hz)
{
    const double place = std::clamp (bandsPerOctave * std::log2 (hz / lowestBandHz), 0.0, static_cast<double> (numPoints - 1));
    const auto below = std::min (static_cast<size_t> (place), curve.size() - 2);
    return curve[below] + (place - static_cast<double> (below)) * (curve[below + 1] - curve[below]);
}
}

Band computeBand (const CircuitConfig& recorded, const CircuitConfig& option, const std::vector<double>& hz,
                  const Cancellation& isUnwanted)
{
    Band band;
    band.hz = hz;
    const GuitarResponse recordedResponse = recorded.response(), optionResponse = option.response();
    const TransferFunction transfer (recordedResponse, optionResponse);
    if (recordedResponse.isSilent() || optionResponse.isSilent())
    {
        band.lowDb.assign (hz.size(), -300.0);
        band.highDb = band.lowDb;
        return band;
    }

    const Curve grid = gridHz();
    const Curve centre = nominal (transfer, grid);
    const auto byParts = partDraws (recorded, option, centre, grid, isUnwanted);
    // Where the coils are heard in the same proportion the strings cancel, whatever their mix.
    const auto byStrings = transfer.confidence().isEstimated() ? stringDraws (recordedResponse, optionResponse, grid)
                                                               : std::vector<Curve> (1, centre);

    // The two are independent: their sum is drawn as every pair of draws.
    Curve low (grid.size()), high (grid.size());
    std::vector<double> sums (byParts.size() * byStrings.size());
    constexpr double toDb = 10.0 / 2.302585092994046;
    const double widerDb = transfer.confidence().isEstimated() ? fewPartialsDb : 0.0;
    for (size_t i = 0; i < grid.size(); ++i)
    {
        size_t n = 0;
        for (const auto& parts : byParts)
            for (const auto& strings : byStrings)
                sums[n++] = parts[i] + strings[i];
        std::sort (sums.begin(), sums.end());
        low[i] = std::max (-300.0, toDb * quantile (sums, 0.05) - widerDb);
        high[i] = std::max (-300.0, toDb * quantile (sums, 0.95) + widerDb);
    }
    for (const double f : hz)
    {
        band.lowDb.push_back (interpolated (low, f));
        band.highDb.push_back (interpolated (high, f));
    }
    return band;
}
}
