#include "coilfit/CoilFitJudge.h"

#include <algorithm>
#include <cmath>

namespace coldiron
{
namespace
{
/** Below these uncertainties a value counts as measured: for the capacitance, that it lies within 10 % by two standard
    deviations. */
constexpr std::array<double, 5> measuredBelow { 0.03, 0.05, 0.05, 0.25, 0.25 };

/** From these uncertainties of the parameters on, the readings have said too little of a value. */
constexpr FitShape::FitParameters saidNothing { 0.3, 0.25, 0.25, 0.3, 0.35 };

/** Times the DC resistance of the generic pickup, either way. */
constexpr double farFrom = 1.2;

constexpr double misfitNoted = 2.0, misfitRefused = 4.0, outlierRefused = 8.0;

/** Enough of a sweep to find a coil by. */
constexpr int fewestSweepPoints = 6;

}

std::vector<FitRefusal> checkReadings (const Pickup& generic, const FitShape& shape, const PickupReadings& readings)
{
    using Reason = FitRefusal::Reason;
    std::vector<FitRefusal> refusals;
    if (readings.readings.empty())
        refusals.push_back ({ .reason = Reason::noReadings });

    const double expected = shape.atLeads (generic)[CoilFit::dcr];
    for (const auto& reading : readings.readings)
        if (const auto* ohms = reading.as<OhmsReading>())
            if (! (ohms->ohms > expected / 6.0 && ohms->ohms < expected * 6.0))
                refusals.push_back (
                    { .reason = Reason::otherDcr, .line = reading.line, .found = ohms->ohms, .expected = expected });

    for (size_t i = 0; i < readings.sweeps.size(); ++i)
    {
        const auto& coil = readings.sweeps[i].coil;
        int points = 0, line = 0;
        for (const auto& reading : readings.readings)
            if (const auto* response = reading.as<ResponseReading>(); response != nullptr && response->sweep == (int)i)
            {
                line = points++ == 0 ? reading.line : line;
            }
        if (points < fewestSweepPoints)
            refusals.push_back ({ .reason = Reason::shortSweep,
                                  .line = line,
                                  .found = static_cast<double> (points),
                                  .expected = fewestSweepPoints });
        if (! coil.empty()
            && std::none_of (generic.coils.begin(), generic.coils.end(), [&coil] (const Coil& c) { return c.name == coil; }))
            refusals.push_back ({ .reason = Reason::noSuchCoil, .line = line, .name = coil });
    }
    return refusals;
}

double misfitOf (const FitSolution& solution, int numReadings, int numSweeps)
{
    Eigen::MatrixXd prior = Eigen::MatrixXd::Zero (5, 5);
    for (int i = 0; i < 5; ++i)
        prior (i, i) = std::pow (FitShape::spread[(size_t)i], -2.0);
    // The degrees of freedom that the readings use up: each parameter counts by the share of it that they decide.
    const double used = ((solution.information + prior).inverse() * solution.information).trace();
    return std::sqrt (solution.readingCost / std::max (1.0, numReadings - used - numSweeps));
}

std::array<FittedValue, 5> judgeValues (const FitShape& shape, const FitSolution& solution, double misfit)
{
    Eigen::MatrixXd precision = solution.information / std::max (1.0, misfit * misfit);
    for (int i = 0; i < 5; ++i)
        precision (i, i) += std::pow (FitShape::spread[(size_t)i], -2.0);
    const Eigen::MatrixXd covariance = precision.inverse();
    Eigen::MatrixXd slopes (5, 5);
    for (int i = 0; i < 5; ++i)
        for (int k = 0; k < 5; ++k)
            slopes (i, k) = FitShape::slopes()[(size_t)i][(size_t)k];
    const Eigen::MatrixXd values = slopes * covariance * slopes.transpose();

    const auto atLeads = shape.atLeads (shape.pickup (solution.parameters));
    std::array<double, 5> rivals {};
    if (solution.rival)
    {
        const auto other = shape.atLeads (shape.pickup (*solution.rival));
        for (int i = 0; i < 5; ++i)
            rivals[(size_t)i] = shape.has (i) ? std::abs (std::log (other[(size_t)i] / atLeads[(size_t)i])) : 0.0;
    }
    std::array<FittedValue, 5> result;
    for (int i = 0; i < 5; ++i)
    {
        auto& value = result[(size_t)i];
        value.value = atLeads[(size_t)i];
        value.uncertainty = std::sqrt (values (i, i));
        const bool said = std::sqrt (covariance (i, i)) < saidNothing[(size_t)i];
        // A DC resistance that is not read well was only guessed from the inductance by the law of turns.
        value.found = value.uncertainty < measuredBelow[(size_t)i] ? Found::measured
                      : said && i != CoilFit::dcr                  ? Found::roughly
                                                                   : Found::assumed;
        if (rivals[(size_t)i] > std::max (0.05, 2.0 * value.uncertainty))
        {
            value.uncertainty = rivals[(size_t)i];
            value.found = Found::roughly;
        }
        if (! shape.has (i))
            value.found = Found::assumed;
    }
    return result;
}

void judgeFit (CoilFit& fit, const Pickup& generic, const FitShape& shape, const PickupReadings& readings)
{
    using Reason = FitRefusal::Reason;
    using Kind = FitNote::Kind;
    const auto& values = fit.values;
    const auto isMeasured = [&values] (int i) { return values[(size_t)i].found == Found::measured; };
    const auto usual = shape.atLeads (generic);

    // Readings that no such pickup gives.
    auto far = fit.readings;
    std::stable_sort (far.begin(), far.end(), [] (const auto& a, const auto& b) { return a.misfit > b.misfit; });
    if (fit.misfit > misfitRefused)
    {
        fit.refusals.push_back ({ .reason = Reason::notOnePickup, .found = fit.misfit });
    }
    int shown = 0;
    for (const auto& reading : far)
        if (reading.misfit > (fit.misfit > misfitRefused ? 2.0 : outlierRefused) && shown++ < 5)
            fit.refusals.push_back ({ .reason = Reason::outlier, .line = reading.line, .reading = reading });

    const double henries = values[CoilFit::inductance].value, farads = values[CoilFit::capacitance].value;
    const double henriesRatio = henries / usual[CoilFit::inductance], faradsRatio = farads / usual[CoilFit::capacitance];
    if (values[CoilFit::inductance].found != Found::assumed && (henriesRatio > 8.0 || henriesRatio < 0.125))
        fit.refusals.push_back ({ .reason = Reason::otherInductance, .found = henries, .expected = usual[CoilFit::inductance] });
    if (values[CoilFit::capacitance].found != Found::assumed && (faradsRatio > 10.0 || faradsRatio < 0.1))
        fit.refusals.push_back ({ .reason = Reason::otherCapacitance, .found = farads, .expected = usual[CoilFit::capacitance] });
    if (std::all_of (values.begin(), values.end(), [] (const auto& value) { return value.found == Found::assumed; }))
        fit.refusals.push_back ({ .reason = Reason::nothingSaid });

    // The mark.
    int impedances = 0;
    for (const auto& reading : readings.readings)
        impedances += reading.as<ImpedanceReading>() != nullptr;
    const bool swept = ! readings.sweeps.empty() || impedances >= fewestSweepPoints;
    const bool measured =
        isMeasured (CoilFit::inductance) && isMeasured (CoilFit::capacitance) && (isMeasured (CoilFit::dcr) || swept);
    fit.pickup.known = measured                                                        ? Provenance::measured
                       : isMeasured (CoilFit::dcr) || isMeasured (CoilFit::inductance) ? Provenance::fromOhms
                                                                                       : Provenance::assumed;

    // From ohms alone the rest is only known near the pickup it is scaled from.
    const double dcrRatio = values[CoilFit::dcr].value / usual[CoilFit::dcr];
    const bool isFar = values[CoilFit::inductance].found == Found::assumed && (dcrRatio > farFrom || dcrRatio < 1.0 / farFrom);
    if (isFar)
        fit.pickup.known = Provenance::assumed;

    // What to know about it.
    if (generic.coils.size() > 1)
        fit.notes.push_back ({ Kind::coilsInSeries, static_cast<double> (generic.coils.size()), generic.coupling });
    if (isFar)
        fit.notes.push_back ({ Kind::farFromGeneric, dcrRatio });
    if (fit.misfit > misfitNoted && fit.misfit <= misfitRefused)
        fit.notes.push_back ({ Kind::misfit, fit.misfit });
    if (! isMeasured (CoilFit::capacitance) && isMeasured (CoilFit::inductance))
        fit.notes.push_back ({ Kind::openCapacitance });
    fit.notes.push_back ({ Kind::turns });
}
}
