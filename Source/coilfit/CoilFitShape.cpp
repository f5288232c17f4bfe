#include "coilfit/CoilFitShape.h"

#include <cmath>

namespace coldiron
{
namespace
{
double cellHenries (const Pickup& pickup)
{
    double sum = 0.0;
    for (const auto& coil : pickup.coils)
        for (const auto& cell : coil.losses)
            sum += cell.henries;
    return sum;
}
}

FitShape::FitShape (const Pickup& start) : generic (start), series (start)
{
    uncelled = series.henries (generic);
    celled = cellHenries (generic);
    if (! (uncelled > 0.0))
        throw NotInSeries (SeriesFault::noInductance);
}

bool FitShape::has (int parameter) const
{
    switch (parameter)
    {
    case CoilFit::capacitance: return series.farads (generic) > 0.0;
    case CoilFit::lossOhms:
    case CoilFit::lossHenries: return celled > 0.0;
    default: return true;
    }
}

double FitShape::inductanceFrom (double dcrParameter)
{
    const double sameWire = std::log (1.2), size = std::abs (dcrParameter), beyond = std::max (0.0, size - sameWire);
    return -std::copysign ((2.0 - 1.1) * beyond, dcrParameter); // less than squared, either way
}

Pickup FitShape::pickup (const FitParameters& u) const
{
    const double inductance = std::exp (u[CoilFit::inductance] + 2.0 * u[CoilFit::dcr]);
    const double odds = celled / uncelled * std::exp (u[CoilFit::lossHenries]);
    const double total = (uncelled + celled) * inductance;
    const double uncelledRatio = total / (1.0 + odds) / uncelled;
    const double celledRatio = celled > 0.0 ? total * odds / (1.0 + odds) / celled : 1.0;
    const double turns = std::sqrt (inductance);

    Pickup result = generic;
    for (auto& coil : result.coils)
    {
        coil.dcrOhms *= std::exp (u[CoilFit::dcr]);
        coil.henries *= uncelledRatio;
        coil.farads *= std::exp (u[CoilFit::capacitance]);
        for (auto& cell : coil.losses)
        {
            cell.henries *= celledRatio;
            cell.ohms *= std::exp (u[CoilFit::lossOhms]) * inductance;
        }
        coil.output *= turns;
        coil.turns *= turns;
    }
    return result;
}

const std::array<FitShape::FitParameters, 5>& FitShape::slopes()
{
    static const std::array<FitParameters, 5> rows {
        { { 1, 0, 0, 0, 0 }, { 2, 1, 0, 0, 0 }, { 0, 0, 1, 0, 0 }, { 2, 1, 0, 1, 0 }, { 0, 0, 0, 0, 1 } }
    };
    return rows;
}

std::array<double, 5> FitShape::atLeads (const Pickup& pickup) const
{
    double ohms = 0.0, lossOhms = 0.0;
    for (const auto& coil : pickup.coils)
    {
        ohms += coil.dcrOhms;
        for (const auto& cell : coil.losses)
            lossOhms += cell.ohms;
    }
    const double cells = cellHenries (pickup);
    return { ohms, series.henries (pickup) + cells, series.farads (pickup), lossOhms, cells };
}
}
