#include "response/Figures.h"

#include "response/ThermalNoise.h"

#include <algorithm>
#include <cmath>

namespace coldiron
{
namespace
{
constexpr double metreFarads = 100e-12;

double dbOfRatio (double ratio) { return 20.0 * std::log10 (std::max (ratio, 1e-15)); }

double levelOf (const TransferFunction& transfer, const Spectrum& take)
{
    Spectrum spectrum = take;
    if (spectrum.isEmpty())
        for (double hz = 80.0; hz <= 5000.0; hz *= std::exp2 (1.0 / 24.0))
        {
            spectrum.hz.push_back (hz);
            spectrum.power.push_back (1.0);
        }
    const auto gains = transfer.gains (spectrum.hz);
    double before = 0.0, after = 0.0;
    for (size_t i = 0; i < gains.size(); ++i)
    {
        before += spectrum.power[i];
        after += spectrum.power[i] * gains[i] * gains[i];
    }
    return dbOfRatio (std::sqrt (after / before));
}

void findHum (const GuitarResponse& recorded, const GuitarResponse& option, Figures& figures)
{
    const auto now = humFigures (recorded);
    figures.hum = humFigures (option);
    figures.humJackDb = figures.hum.jackDb - now.jackDb;
    figures.humAgainstPlayingDb = figures.humJackDb - figures.levelDb;
    figures.humByMismatch = figures.hum.assumed || now.assumed;
}

std::optional<double> difference (const std::optional<double>& a, const std::optional<double>& b)
{
    return a && b ? std::optional<double> (*a - *b) : std::nullopt;
}
}

Figures computeFigures (const CircuitConfig& recorded, const CircuitConfig& option, const Spectrum& take,
                        const Cancellation& isUnwanted)
{
    const GuitarResponse before = recorded.response(), after = option.response();
    const TransferFunction transfer (before, after);
    Figures figures;
    figures.silent = after.isSilent() || before.isSilent();
    figures.confidence = transfer.confidence();
    const Clarity clarity (before.isSilent() ? option : recorded, before.isSilent() ? Spectrum {} : take);
    figures.volumes = volumeFigures (option, &clarity, isUnwanted);

    BuildOptions bare;
    bare.withLoad = false;
    figures.outputOhms = std::abs (option.response (bare).outputImpedance (1000.0));
    figures.hissUv = 1e6 * thermalNoise ([&] (double hz) { return after.outputImpedance (hz); }, 20.0, 20000.0);
    if (figures.silent)
    {
        figures.levelDb = -300.0;
        return figures;
    }

    figures.levelDb = levelOf (transfer, take);
    figures.clarityDb = difference (clarity.db (option), clarity.db (recorded));
    figures.resonance = findResonance (after);
    findHum (before, after, figures);
    CircuitConfig longer = option;
    longer.load.cableFarads += metreFarads;
    figures.dbPerMetre = dbOfRatio (stringResponse (longer.response(), 5000.0)) - dbOfRatio (stringResponse (after, 5000.0));
    return figures;
}
}
