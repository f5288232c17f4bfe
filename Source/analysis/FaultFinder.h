#pragma once

#include "analysis/BenchLikelihood.h"
#include "analysis/Changes.h"
#include "analysis/Fault.h"
#include "analysis/OhmTable.h"

#include <optional>
#include <set>
#include <string>
#include <vector>

namespace coldiron
{
/** A note of a reading against what it should be. */
struct OhmVerdict
{
    OhmsNoted noted;
    OhmsNoted::Kind expected = OhmsNoted::Kind::number;
    double lowOhms = 0.0, highOhms = 0.0; ///< of a number: worst case of the parts at 15 to 30 C, the meter and the last digit
    bool passes = true;
};

template <typename What>
struct StrikeVerdict
{
    StruckNote<What> noted;
    What expected;
    bool passes = true;
};

struct ReadingVerdict
{
    std::vector<std::pair<std::string, std::string>> levers; ///< every switch and its position
    std::map<std::string, double> knobs;                     ///< as the reading names them
    int line = 0;
    std::optional<OhmVerdict> ohms;
    std::vector<StrikeVerdict<Tap>> taps;
    std::vector<StrikeVerdict<Kick>> kicks; ///< with the needle's + as it fits the sound guitar best

    bool passes() const;
};

/** Faults that these readings cannot tell from one another. */
struct FaultGroup
{
    std::vector<Fault> alike;           ///< the likeliest first
    std::vector<std::string> lookFirst; ///< points, the likeliest first
    double log = 0.0;                   ///< ln of how likely, its frequency at the bench included; comparable in one verdict
    int fits = 0, of = 0;               ///< of the things noted
};

struct BenchVerdict
{
    std::vector<ReadingVerdict> readings;
    bool eachPasses = true;           ///< every note by itself
    bool passes = true;               ///< and all of them together: no single fault explains them a thousand times better
    std::vector<FaultGroup> suspects; ///< where they do not pass: the likeliest single faults, best first
    std::vector<Fault> unseen;        ///< faults under which the same would be noted: these readings do not show them
};

/** Finds what single fault readings speak of, by simulating every one on the harness. */
class FaultFinder
{
public:
    static constexpr double apart = 3.0;  ///< ln: nearer than that, what one fault would be noted as speaks for the other as well
    static constexpr double tooFar = 5.0; ///< ln: a fault that explains readings so much better than a sound guitar fails them
    static constexpr size_t mostSuspects = 5;

    /** @param asked  settings, and what is noted at each; verdict() takes any values at the same places
        @param listening  what hangs on the jack as taps are heard
        @param made  joints that were made just now: likelier to be bad than old ones */
    FaultFinder (const Harness& sound, const BenchReadings& asked, const Load& listening,
                 const std::vector<SolderPair>& made = {});

    BenchVerdict verdict (const BenchReadings&) const;

    /** One kind of circuit that faults lead to: what the bench finds under all of them is the same. */
    struct Suspect
    {
        std::vector<Fault> faults; ///< the likeliest first
        double prior = 0.0;        ///< ln, of the first
        BenchPredictions predictions;
        BenchReadings typical; ///< what would be noted
        double typicalLog = 0.0;
    };
    const std::vector<Suspect>& suspects() const { return all; } ///< the first is the sound guitar and what does not show
    const BenchLikelihood& likelihood() const { return weigh; }

    /** Whether readings as asked for tell two kinds of circuit from each other. */
    bool tellsApart (const Suspect&, const Suspect&) const;

private:
    Harness harness;
    BenchLikelihood weigh;
    std::vector<OhmReading> bounds; ///< of each reading, of the sound guitar
    std::vector<Suspect> all;

    ReadingVerdict judge (const BenchReadings&, size_t reading, bool turned) const;
    std::vector<FaultGroup> groups (const BenchReadings&, const std::vector<BenchScore>&) const;
};

/** The whole of it for readings of a job: what was soldered last is taken from the option. */
BenchVerdict checkReadings (const Job&, const BenchReadings&);
}
