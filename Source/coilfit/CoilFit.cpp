#include "coilfit/CoilFit.h"

#include "coilfit/CoilFitJudge.h"

#include <cmath>

namespace coldiron
{
namespace
{
/** The DC resistance as read, at 20 C, to start from. */
FitShape::FitParameters firstGuess (const Pickup& generic, const FitShape& shape, const PickupReadings& readings)
{
    FitShape::FitParameters u {};
    for (const auto& reading : readings.readings)
        if (const auto* ohms = reading.as<OhmsReading>())
            u[CoilFit::dcr] = std::log (ohms->ohms / copperFactor (readings.celsius) / shape.atLeads (generic)[CoilFit::dcr]);
    return u;
}
}

CoilFit fitCoil (const Pickup& generic, const PickupReadings& readings)
{
    CoilFit fit;
    fit.pickup = generic;
    try
    {
        const FitShape shape (generic);
        fit.refusals = checkReadings (generic, shape, readings);
        if (! fit.refusals.empty())
            return fit;

        const FitResiduals residuals (shape.path(), readings);
        const int count = (int)residuals.of (generic).size();
        auto solution = solveFit (shape, residuals, { true, true, true, true, true }, firstGuess (generic, shape, readings));
        fit.values = judgeValues (shape, solution, misfitOf (solution, count, residuals.numSweeps()));

        if (solution.rival)
        {
            const auto other = shape.atLeads (shape.pickup (*solution.rival));
            fit.notes.push_back ({ FitNote::Kind::rival, other[CoilFit::inductance], other[CoilFit::capacitance] });
        }

        // What the readings do not say goes back to the scaled generic pickup, and the rest is fitted again. The loss stays
        // free where the winding capacitance is found: it lowers the inductance at the resonance, so a loss held at the
        // generic pickup's would shift the capacitance by up to a tenth.
        const bool findsFarads = fit.values[CoilFit::capacitance].found != Found::assumed;
        std::array<bool, 5> free;
        for (int i = 0; i < 5; ++i)
        {
            const bool isLoss = i == CoilFit::lossOhms || i == CoilFit::lossHenries;
            free[(size_t)i] = i == CoilFit::dcr || (isLoss && findsFarads) || fit.values[(size_t)i].found != Found::assumed;
            if (! free[(size_t)i])
                solution.parameters[(size_t)i] =
                    i == CoilFit::inductance ? FitShape::inductanceFrom (solution.parameters[CoilFit::dcr]) : 0.0;
        }
        solution = solveFit (shape, residuals, free, solution.parameters);

        fit.pickup = shape.pickup (solution.parameters);
        const auto atLeads = shape.atLeads (fit.pickup);
        for (size_t i = 0; i < 5; ++i)
            fit.values[i].value = atLeads[i];
        fit.misfit = misfitOf (solution, count, residuals.numSweeps());
        fit.readings = residuals.table (fit.pickup);
        fit.resonanceHz = LoosePickup (fit.pickup, shape.path(), 20.0).resonance();
        judgeFit (fit, generic, shape, readings);
    }
    catch (const NotInSeries& fault)
    {
        fit.refusals.push_back ({ .reason = FitRefusal::Reason::notInSeries, .name = fault.lead, .series = fault.why });
    }
    catch (const std::exception& fault)
    {
        fit.refusals.push_back ({ .reason = FitRefusal::Reason::failed, .name = fault.what() });
    }
    return fit;
}
}
