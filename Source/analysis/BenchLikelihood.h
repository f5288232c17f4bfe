#pragma once

#include "analysis/BenchPrediction.h"
#include "job/BenchReadings.h"

#include <memory>
#include <vector>

namespace coldiron
{
/** What a wiring gives at the setting of each reading, in their order. */
using BenchPredictions = std::vector<std::shared_ptr<const BenchPrediction>>;

/** How well a wiring explains readings. */
struct BenchScore
{
    double log = 0.0;     ///< ln of the likelihood; about 0 where all fits
    int fits = 0, of = 0; ///< of the things noted: ohms, each tap, each kick
    bool turned = false;  ///< the needle's + is the prediction's minus
};

/** Readings weighed against what a wiring would give, with everything that may be off: each part within its tolerance, the same
    part in every reading; copper at 15 to 30 C; the meter; the last digit written; the taper and the hand where a knob stands
    between its ends; slips of the pen.

    Ohms: a Kalman filter over the parts' deviations, so that what one reading has taught of a part counts in the next. A tolerance is
    taken as evenly likely all over, and its variance as a normal one's. Coils as in ohmTable(): +/-10 %, +/-2 % where their ohms are
    known; the coils of one pickup differ by 2 % from one another, by 0.5 % where known (common practice of the trade, no source).
    Taps: loud above about -12 dB of the strongest coil by itself, none below about -38. Kicks: seen above about a tenth of it;
    which way is + is not known beforehand, so all may be turned round together. */
class BenchLikelihood
{
public:
    static constexpr double shortOhms = 5.0, openOhms = 20e6; ///< as bench meters and their leads say short and open
    static constexpr double loudDb = -12.0, silentDb = -38.0; ///< of taps
    static constexpr double leastKick = 0.1;                  ///< that a needle shows
    static constexpr double leastChance = 0.15;               ///< of a tap or kick that still fits

    /** @param asked  what was noted where: the readings to be weighed have notes at the same places, of whatever value */
    BenchLikelihood (const Harness& sound, const BenchReadings& asked);

    BenchScore score (const BenchPredictions&, const BenchReadings&) const;

    /** No score of these predictions is above it: what costs nothing to compute. */
    double mostLog (const BenchPredictions&, const BenchReadings&) const;

    /** What such a wiring would be noted as. */
    BenchReadings typical (const BenchPredictions&, const BenchReadings& asked) const;

    static double tapChance (Tap, double levelDb);
    static double kickChance (Kick, double kick); ///< kick: signed
    static OhmsNoted::Kind kindOf (double ohms);
    static OhmsNoted::Kind kindOf (const OhmsNoted&);

    const std::vector<StrikePlace>& places() const { return strikes; }
    size_t numShares() const { return variances.size() - 1; } ///< of a prediction
    size_t tapPlace (size_t reading, size_t tap) const { return tapPlaces[reading][tap]; }
    size_t kickPlace (size_t reading, size_t kick) const { return kickPlaces[reading][kick]; }
    bool isBetweenEnds (size_t reading) const { return betweenEnds[reading]; } ///< a knob stands there

private:
    std::vector<StrikePlace> strikes;
    std::vector<double> variances; ///< of ln: each part, each coil, the temperature
    size_t numCoils = 0;
    std::vector<std::vector<size_t>> tapPlaces, kickPlaces;
    std::vector<bool> betweenEnds;

    std::vector<double> rowOf (const BenchPrediction&) const;
    double varianceOf (const BenchReadings&, size_t reading) const;
    void scoreTaps (BenchScore&, const BenchPredictions&, const BenchReadings&) const;
    void scoreKicks (BenchScore&, const BenchPredictions&, const BenchReadings&) const;
};
}
