#include "response/Clarity.h"

#include "response/SourceResponses.h"
#include "response/TransferFunction.h"
#include "response/Weights.h"

#include <cmath>

namespace coldiron
{
namespace
{
constexpr double pointsPerOctave = 24.0;

bool within (double hz, double low, double high) { return hz >= low && hz < high; }

/** h^H W h on the grid: what pink strings give. */
std::vector<double> pinkPower (const GuitarResponse& response, const std::vector<double>& hz)
{
    const auto weights = Weights::shared (response.strings(), response.coilPositions(), hz);
    std::vector<double> power;
    for (size_t i = 0; i < hz.size(); ++i)
    {
        const Eigen::VectorXcd h = sourceResponses (response, hz[i]);
        power.push_back (std::max (0.0, (h.adjoint() * weights->at (i) * h) (0).real()));
    }
    return power;
}
}

ClarityBands clarityBands (const StringSet& strings)
{
    return strings.isBass() ? ClarityBands { 120.0, 480.0, 1200.0, 2700.0 } : ClarityBands { 200.0, 800.0, 2000.0, 4500.0 };
}

Clarity::Clarity (const CircuitConfig& r, const Spectrum& take) : recorded (r.response()), bands (clarityBands (r.strings))
{
    const auto counts = [this] (double f)
    { return within (f, bands.fullLow, bands.fullHigh) || within (f, bands.clearLow, bands.clearHigh); };
    for (size_t i = 0; i < take.hz.size(); ++i)
        if (counts (take.hz[i]))
        {
            hz.push_back (take.hz[i]);
            power.push_back (take.power[i]);
        }
    if (take.isEmpty())
        for (double f = bands.fullLow; f < bands.clearHigh; f *= std::exp2 (1.0 / pointsPerOctave))
            if (counts (f))
                hz.push_back (f);
}

std::optional<double> Clarity::db (const CircuitConfig& config) const
{
    const GuitarResponse response = config.response();
    if (response.isSilent() || recorded.isSilent())
        return {};
    auto heard = power;
    if (heard.empty())
        heard = pinkPower (response, hz);
    else
    {
        const auto gains = TransferFunction (recorded, response).gains (hz);
        for (size_t i = 0; i < heard.size(); ++i)
            heard[i] *= gains[i] * gains[i];
    }
    double clear = 0.0, full = 0.0;
    for (size_t i = 0; i < hz.size(); ++i)
        (within (hz[i], bands.clearLow, bands.clearHigh) ? clear : full) += heard[i];
    if (! (clear > 0.0 && full > 0.0))
        return {};
    return 10.0 * std::log10 (clear / full);
}
}
