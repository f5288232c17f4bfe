#include "analysis/BenchLikelihood.h"

#include <Eigen/Dense>

#include <algorithm>
#include <cmath>

namespace coldiron
{
namespace
{
constexpr double copperPerDegree = 0.00393; // re 20 C, IEC 60028
constexpr double coldestCelsius = 15.0, warmestCelsius = 30.0;
constexpr double handOfAKnob = 0.25;  // ln: taper law and where the knob was really set, between its ends
constexpr double worstLog = -10.0;    // a slip of the pen is likelier than worse
constexpr double typicalSigma = 0.06; // ln of an ohm reading: that wide costs nothing
constexpr double slopeDb = 3.0;       // how sharply ears and eyes tell a tap or a kick
constexpr double slip = 0.02;         // of a wrong word at a tap or a kick

double evenVariance (double halfWidth) { return halfWidth * halfWidth / 3.0; }
double step (double x) { return 1.0 / (1.0 + std::exp (-x)); }
double withSlips (double chance) { return slip + (1.0 - 3.0 * slip) * chance; }

/** ln of the deviations of parts, learnt reading by reading. */
class Deviations
{
public:
    explicit Deviations (const std::vector<double>& variances)
        : mean (Eigen::VectorXd::Zero (static_cast<Eigen::Index> (variances.size()))),
          covariance (
              Eigen::Map<const Eigen::VectorXd> (variances.data(), static_cast<Eigen::Index> (variances.size())).asDiagonal())
    {
        mean (mean.size() - 1) = std::log1p (copperPerDegree * (0.5 * (coldestCelsius + warmestCelsius) - 20.0));
    }

    double predicted (const std::vector<double>& row) const { return asVector (row).dot (mean); }

    /** @param off  ln (read / nominal) @returns ln of the likelihood, and whether it fits */
    std::pair<double, bool> take (const std::vector<double>& row, double off, double variance)
    {
        const auto h = asVector (row);
        const Eigen::VectorXd gain = covariance * h;
        const double innovation = off - h.dot (mean), spread = h.dot (gain) + variance;
        const double squared = innovation * innovation / spread;
        const double log = -0.5 * (squared + std::log (spread / (typicalSigma * typicalSigma)));
        if (log < worstLog)
            return { worstLog, false };
        mean += gain * (innovation / spread);
        covariance.noalias() -= gain * gain.transpose() / spread;
        return { log, squared < 9.0 };
    }

private:
    Eigen::VectorXd mean;
    Eigen::MatrixXd covariance;

    static Eigen::Map<const Eigen::VectorXd> asVector (const std::vector<double>& row)
    {
        return { row.data(), static_cast<Eigen::Index> (row.size()) };
    }
};

void count (BenchScore& score, double chance)
{
    ++score.of;
    score.fits += chance >= BenchLikelihood::leastChance ? 1 : 0;
    score.log += std::log (chance);
}

template <typename What>
std::vector<size_t> placesOf (const std::vector<StruckNote<What>>& notes, const std::vector<StrikePlace>& places)
{
    std::vector<size_t> found;
    for (const auto& note : notes)
    {
        const auto place = std::find_if (places.begin(), places.end(),
                                         [&] (const StrikePlace& p) { return p.pickup == note.pickup && p.coil == note.coil; });
        if (place == places.end())
            throw HarnessError ("there is no pickup or coil \"" + note.name() + "\" to strike");
        found.push_back (static_cast<size_t> (place - places.begin()));
    }
    return found;
}

bool isBetween (const Setting& setting, const std::vector<Control>& all)
{
    return std::any_of (all.begin(), all.end(),
                        [&] (const Control& control)
                        {
                            const double at = setting.knob (control.name, control.rest);
                            return control.positions.empty() && at > 0.0 && at < 10.0 && at != control.rest;
                        });
}
}

BenchLikelihood::BenchLikelihood (const Harness& sound, const BenchReadings& asked) : strikes (strikePlaces (sound))
{
    std::vector<double> ofCoils;
    for (const auto& part : sound.parts())
    {
        double tolerance = 0.0;
        if (const auto* pickup = part.as<PickupPart>())
        {
            const bool isKnown = pickup->pickup.known != Provenance::assumed;
            tolerance = isKnown ? 0.02 : 0.1;
            const bool isAlone = pickup->pickup.coils.size() == 1;
            ofCoils.insert (ofCoils.end(), pickup->pickup.coils.size(), isAlone ? 0.0 : evenVariance (isKnown ? 0.005 : 0.02));
        }
        else if (const auto* pot = part.as<PotPart>())
            tolerance = pot->tolerance;
        else if (const auto* resistor = part.as<ResistorPart>())
            tolerance = resistor->tolerance;
        else if (const auto* inductor = part.as<InductorPart>())
            tolerance = inductor->tolerance;
        variances.push_back (evenVariance (tolerance));
    }
    numCoils = ofCoils.size();
    variances.insert (variances.end(), ofCoils.begin(), ofCoils.end());
    variances.push_back (evenVariance (copperPerDegree * 0.5 * (warmestCelsius - coldestCelsius)));

    const auto all = controls (sound);
    for (const auto& reading : asked.readings)
    {
        tapPlaces.push_back (placesOf (reading.taps, strikes));
        kickPlaces.push_back (placesOf (reading.kicks, strikes));
        betweenEnds.push_back (isBetween (reading.setting, all));
    }
}

OhmsNoted::Kind BenchLikelihood::kindOf (double ohms)
{
    return ohms < shortOhms ? OhmsNoted::Kind::shorted : ohms > openOhms ? OhmsNoted::Kind::open : OhmsNoted::Kind::number;
}

OhmsNoted::Kind BenchLikelihood::kindOf (const OhmsNoted& noted)
{
    return noted.kind != OhmsNoted::Kind::number ? noted.kind : kindOf (noted.ohms);
}

/** How the ln of the ohms moves with each deviation; copper warms all coils alike. */
std::vector<double> BenchLikelihood::rowOf (const BenchPrediction& prediction) const
{
    auto row = prediction.shares;
    double copper = 0.0;
    for (size_t i = row.size() - numCoils; i < row.size(); ++i)
        copper += row[i];
    row.push_back (copper);
    return row;
}

double BenchLikelihood::varianceOf (const BenchReadings& noted, size_t reading) const
{
    const auto& ohms = *noted.readings[reading].ohms;
    const double digit = ohms.ohms > 0.0 ? ohms.halfStep / ohms.ohms : 0.0;
    return evenVariance (noted.accuracy) + evenVariance (digit) + (betweenEnds[reading] ? handOfAKnob * handOfAKnob : 0.0);
}

double BenchLikelihood::tapChance (Tap heard, double levelDb)
{
    const double loud = step ((levelDb - loudDb) / slopeDb), none = step ((silentDb - levelDb) / slopeDb);
    return withSlips (heard == Tap::loud ? loud : heard == Tap::none ? none : std::max (0.0, 1.0 - loud - none));
}

double BenchLikelihood::kickChance (Kick seen, double kick)
{
    const double moves = step (20.0 * std::log10 (std::max (std::abs (kick), 1e-15) / leastKick) / slopeDb);
    return withSlips (seen == Kick::none ? 1.0 - moves : (seen == Kick::up) == (kick > 0.0) ? moves : 0.0);
}

void BenchLikelihood::scoreTaps (BenchScore& score, const BenchPredictions& predictions, const BenchReadings& noted) const
{
    for (size_t i = 0; i < noted.readings.size(); ++i)
        for (size_t k = 0; k < tapPlaces[i].size(); ++k)
            count (score, tapChance (noted.readings[i].taps[k].what, predictions[i]->tapDb[tapPlaces[i][k]]));
}

void BenchLikelihood::scoreKicks (BenchScore& score, const BenchPredictions& predictions, const BenchReadings& noted) const
{
    BenchScore straight, turned;
    for (size_t i = 0; i < noted.readings.size(); ++i)
        for (size_t k = 0; k < kickPlaces[i].size(); ++k)
        {
            const double kick = predictions[i]->kicks[kickPlaces[i][k]];
            count (straight, kickChance (noted.readings[i].kicks[k].what, kick));
            count (turned, kickChance (noted.readings[i].kicks[k].what, -kick));
        }
    score.turned = turned.log > straight.log;
    const auto& better = score.turned ? turned : straight;
    score.log += better.log;
    score.fits += better.fits;
    score.of += better.of;
}

BenchScore BenchLikelihood::score (const BenchPredictions& predictions, const BenchReadings& noted) const
{
    BenchScore score;
    scoreTaps (score, predictions, noted);
    scoreKicks (score, predictions, noted);
    Deviations deviations (variances);
    for (size_t i = 0; i < noted.readings.size(); ++i)
    {
        const auto& ohms = noted.readings[i].ohms;
        const auto& prediction = *predictions[i];
        if (! ohms || prediction.isActive)
            continue;
        const auto expected = kindOf (prediction.ohms);
        std::pair<double, bool> fit { 0.0, true };
        if (kindOf (*ohms) != expected)
            fit = { worstLog, false };
        else if (expected == OhmsNoted::Kind::number)
            fit = deviations.take (rowOf (prediction), std::log (ohms->ohms / prediction.ohms), varianceOf (noted, i));
        ++score.of;
        score.fits += fit.second ? 1 : 0;
        score.log += fit.first;
    }
    return score;
}

double BenchLikelihood::mostLog (const BenchPredictions& predictions, const BenchReadings& noted) const
{
    BenchScore score;
    scoreTaps (score, predictions, noted);
    scoreKicks (score, predictions, noted);
    for (size_t i = 0; i < noted.readings.size(); ++i)
        if (noted.readings[i].ohms && ! predictions[i]->isActive)
        {
            const auto expected = kindOf (predictions[i]->ohms);
            const bool agrees = kindOf (*noted.readings[i].ohms) == expected;
            if (! agrees || expected == OhmsNoted::Kind::number) // as a number: at most as sharp as the meter
                score.log += ! agrees ? worstLog : -0.5 * std::log (varianceOf (noted, i) / (typicalSigma * typicalSigma));
        }
    return score.log;
}

BenchReadings BenchLikelihood::typical (const BenchPredictions& predictions, const BenchReadings& asked) const
{
    const Deviations deviations (variances);
    auto all = asked;
    for (size_t i = 0; i < all.readings.size(); ++i)
    {
        auto& reading = all.readings[i];
        const auto& prediction = *predictions[i];
        if (reading.ohms && ! prediction.isActive)
        {
            auto& ohms = *reading.ohms;
            const double digit = ohms.ohms > 0.0 ? std::min (ohms.halfStep / ohms.ohms, 0.05) : 0.0;
            ohms = { kindOf (prediction.ohms) };
            if (ohms.kind == OhmsNoted::Kind::number)
                ohms.ohms = prediction.ohms * std::exp (deviations.predicted (rowOf (prediction)));
            ohms.halfStep = digit * ohms.ohms;
        }
        for (size_t k = 0; k < reading.taps.size(); ++k)
        {
            const double db = prediction.tapDb[tapPlaces[i][k]];
            reading.taps[k].what = db > loudDb ? Tap::loud : db < silentDb ? Tap::none : Tap::weak;
        }
        for (size_t k = 0; k < reading.kicks.size(); ++k)
        {
            const double kick = prediction.kicks[kickPlaces[i][k]];
            reading.kicks[k].what = std::abs (kick) < leastKick ? Kick::none : kick > 0.0 ? Kick::up : Kick::down;
        }
    }
    return all;
}
}
