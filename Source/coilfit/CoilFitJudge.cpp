#include "coilfit/CoilFitJudge.h"

#include <algorithm>
#include <cmath>
#include <cstdarg>
#include <cstdio>

namespace coldiron
{
namespace
{
std::string words (const char* form, ...) __attribute__ ((format (printf, 1, 2)));

std::string words (const char* form, ...)
{
    char text[400];
    va_list arguments;
    va_start (arguments, form);
    std::vsnprintf (text, sizeof text, form, arguments);
    va_end (arguments);
    return text;
}

/** Below these uncertainties a value counts as measured: for the capacitance, that it lies within 10 % by two standard
    deviations. */
constexpr std::array<double, 5> measuredBelow { 0.03, 0.05, 0.05, 0.25, 0.25 };

/** From these uncertainties of the freedoms on, the readings have said too little of a value. */
constexpr FitShape::FitParameters saidNothing { 0.3, 0.25, 0.25, 0.3, 0.35 };

/** Times the DC resistance of the generic pickup, either way. */
constexpr double farFrom = 1.2;

constexpr double misfitNoted = 2.0, misfitRefused = 4.0, outlierRefused = 8.0;

/** Enough of a sweep to find a coil by. */
constexpr int fewestSweepPoints = 6;

const char* const termNames[] = { "DC resistance at 20 C", "inductance", "winding capacitance", "loss resistance",
                                  "loss inductance" };
const char* const units[] = { "ohm", "H", "F", "ohm", "H" };
}

std::vector<FitRefusal> checkReadings (const Pickup& generic, const FitShape& shape, const PickupReadings& readings)
{
    std::vector<FitRefusal> refusals;
    if (readings.readings.empty())
        refusals.push_back ({ 0, "there are no readings; add at least one row like dcr,8.1k" });

    const double expected = shape.atLeads (generic)[CoilFit::dcr];
    for (const auto& reading : readings.readings)
        if (const auto* ohms = reading.as<OhmsReading>())
            if (! (ohms->ohms > expected / 6.0 && ohms->ohms < expected * 6.0))
                refusals.push_back (
                    { reading.line,
                      words ("reads %.5g ohm, but a pickup of this kind has about %.5g: is a k missing or too many, is a "
                             "winding open or shorted, or is it another kind of pickup?",
                             ohms->ohms, expected) });

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
            refusals.push_back (
                { line, words ("a response through one load needs at least %d rows, since only its shape counts; found %d",
                               fewestSweepPoints, points) });
        if (! coil.empty()
            && std::none_of (generic.coils.begin(), generic.coils.end(), [&coil] (const Coil& c) { return c.name == coil; }))
            refusals.push_back ({ line, "the pickup has no coil \"" + coil + "\" to drive" });
    }
    return refusals;
}

double misfitOf (const FitSolution& solution, int numReadings, int numSweeps)
{
    Eigen::MatrixXd prior = Eigen::MatrixXd::Zero (5, 5);
    for (int i = 0; i < 5; ++i)
        prior (i, i) = std::pow (FitShape::spread[(size_t)i], -2.0);
    // The freedoms that the readings use up: each counts by the share of it that they decide.
    const double used = ((solution.information + prior).inverse() * solution.information).trace();
    return std::sqrt (solution.readingCost / std::max (1.0, numReadings - used - numSweeps));
}

std::array<FittedValue, 5> judgeValues (const FitShape& shape, const FitSolution& solution, double misfit)
{
    Eigen::MatrixXd precision = solution.information / std::max (1.0, misfit * misfit);
    for (int i = 0; i < 5; ++i)
        precision (i, i) += std::pow (FitShape::spread[(size_t)i], -2.0);
    const Eigen::MatrixXd freedoms = precision.inverse();
    Eigen::MatrixXd slopes (5, 5);
    for (int i = 0; i < 5; ++i)
        for (int k = 0; k < 5; ++k)
            slopes (i, k) = FitShape::slopes()[(size_t)i][(size_t)k];
    const Eigen::MatrixXd values = slopes * freedoms * slopes.transpose();

    const auto atLeads = shape.atLeads (shape.pickup (solution.freedoms));
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
        value.name = termNames[i];
        value.unit = units[i];
        value.value = atLeads[(size_t)i];
        value.uncertainty = std::sqrt (values (i, i));
        const bool said = std::sqrt (freedoms (i, i)) < saidNothing[(size_t)i];
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
    const auto& values = fit.values;
    const auto isMeasured = [&values] (int i) { return values[(size_t)i].found == Found::measured; };
    const auto usual = shape.atLeads (generic);

    // Readings that no such pickup gives.
    auto far = fit.readings;
    std::stable_sort (far.begin(), far.end(), [] (const auto& a, const auto& b) { return a.misfit > b.misfit; });
    if (fit.misfit > misfitRefused)
    {
        fit.refusals.push_back (
            { 0,
              words (
                  "the readings do not belong to one pickup of this kind: typically %.1f times the stated accuracy away from the "
                  "nearest one; the farthest follow. Read them again, state the accuracy, or start from another kind",
                  fit.misfit) });
    }
    int shown = 0;
    for (const auto& reading : far)
        if (reading.misfit > (fit.misfit > misfitRefused ? 2.0 : outlierRefused) && shown++ < 5)
            fit.refusals.push_back ({ reading.line, words ("%s reads %.5g %s, but the pickup nearest to all readings gives %.5g "
                                                           "%s, %.0f times the stated accuracy away; "
                                                           "read it again, or leave the row out",
                                                           reading.what.c_str(), reading.read, reading.unit.c_str(),
                                                           reading.fitted, reading.unit.c_str(), reading.misfit) });

    const double henries = values[CoilFit::inductance].value, farads = values[CoilFit::capacitance].value;
    const double henriesRatio = henries / usual[CoilFit::inductance], faradsRatio = farads / usual[CoilFit::capacitance];
    if (values[CoilFit::inductance].found != Found::assumed && (henriesRatio > 8.0 || henriesRatio < 0.125))
        fit.refusals.push_back ({ 0, words ("the readings ask for %.4g H, and the kind it starts from has %.4g; check units and "
                                            "mode, or start from another kind",
                                            henries, usual[CoilFit::inductance]) });
    if (values[CoilFit::capacitance].found != Found::assumed && (faradsRatio > 10.0 || faradsRatio < 0.1))
        fit.refusals.push_back (
            { 0,
              words ("the readings ask for %.3g pF of winding capacitance, and a pickup of this kind has about %.0f: with this "
                     "inductance no such "
                     "resonance is possible; check the frequencies, and that the meter's cable is counted in the added capacitor",
                     farads * 1e12, usual[CoilFit::capacitance] * 1e12) });
    if (std::all_of (values.begin(), values.end(), [] (const auto& value) { return value.found == Found::assumed; }))
        fit.refusals.push_back ({ 0, "the readings say nothing of this pickup; start with its DC resistance, dcr,8.1k" });

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
        fit.notes.push_back (words ("its %zu coils were read in series: they keep the generic pickup's proportions to each other "
                                    "and its coupling of %.2g, assumed",
                                    generic.coils.size(), generic.coupling));
    if (isFar)
        fit.notes.push_back (
            words ("stays assumed: %.2f times the DC resistance of the pickup it starts from, and beyond 20 %% that is more "
                   "often another wire than as many more turns, "
                   "so the inductance may be far off; start from a hotter or milder kind, or read the inductance",
                   dcrRatio));
    if (fit.misfit > misfitNoted && fit.misfit <= misfitRefused)
        fit.notes.push_back (words (
            "the readings lie %.1f times their stated accuracy apart from the fit; the uncertainties were widened by as much",
            fit.misfit));
    if (! isMeasured (CoilFit::capacitance) && isMeasured (CoilFit::inductance))
        fit.notes.push_back ("the winding capacitance stays open: the impedance at or near the resonance, bare or with a small "
                             "known capacitor, or a sweep would tell it");
    fit.notes.push_back ("output and hum go with the turns, taken from the inductance; magnets are not measured");
}
}
