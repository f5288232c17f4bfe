#include "response/NoiseTrust.h"

#include "response/TransferFunction.h"

#include <algorithm>
#include <cmath>

namespace coldiron
{
namespace
{
constexpr double trustFromHz = 300.0, liftAllowedDb = 6.0, audibleDb = -60.0;

double dbOfSquare (double power) { return 10.0 * std::log10 (std::max (power, 1e-30)); }
}

NoiseTrust judgeNoise (const NoiseFloor& floor, const std::function<double (double)>& gain, bool wasTurnedDown)
{
    NoiseTrust trust;
    if (! floor.isKnown)
        return trust;
    double before = 0.0, after = 0.0;
    std::vector<double> powers;
    for (size_t b = 0; b < floor.hz.size(); ++b)
    {
        const double g = gain (floor.hz[b]);
        powers.push_back (g * g);
        before += floor.playing[b];
        after += floor.playing[b] * powers[b];
    }
    if (! (before > 0.0) || ! (after > 0.0))
        return trust;
    const double softer =
        std::min (0.0, dbOfSquare (after) - dbOfSquare (before)); // a softer option is turned up again, noise and all
    for (size_t b = 0; b < floor.hz.size(); ++b)
    {
        const double lift = dbOfSquare (powers[b]) - softer,
                     stands = dbOfSquare (floor.noise[b] * powers[b]) - dbOfSquare (after);
        if (floor.hz[b] < trustFromHz || lift <= liftAllowedDb || stands <= audibleDb)
            continue;
        if (! trust.trustedToHz)
            trust.trustedToHz = floor.hz[b] * std::pow (10.0, -0.05);
        if (lift > trust.liftDb)
        {
            trust.liftDb = lift;
            trust.liftHz = floor.hz[b];
        }
    }
    trust.wasTurnedDown = wasTurnedDown && trust.trustedToHz;
    return trust;
}

NoiseTrust judgeNoise (const NoiseFloor& floor, const CircuitConfig& recorded, const TransferFunction& transfer)
{
    if (! floor.isKnown || transfer.optionResponse().isSilent() || transfer.recordedResponse().isSilent())
        return {};
    const auto gains = transfer.gains (floor.hz);
    const auto gain = [&] (double hz)
    { return gains[static_cast<size_t> (std::find (floor.hz.begin(), floor.hz.end(), hz) - floor.hz.begin())]; };

    CircuitConfig open = recorded;
    for (const auto& control : controls (open.harness))
        if (control.positions.empty())
            open.setting.knobs[control.name] = control.rest;
    const auto treble = [] (const GuitarResponse& response)
    { return std::abs (response.unisonResponse (4000.0)) / std::max (1e-12, std::abs (response.unisonResponse (500.0))); };
    return judgeNoise (floor, gain, treble (transfer.recordedResponse()) < 0.708 * treble (open.response()));
}
}
