#pragma once

#include "job/Job.h"
#include "listening/Ranking.h"
#include "listening/Trials.h"
#include "session/BlindView.h"

namespace coldiron
{
/** A blind test: versions behind numbers. Not thread-safe. */
class BlindRun
{
public:
    /** @throws std::invalid_argument unless two to nine different versions */
    static BlindRun ofRanking (std::vector<OptionId>, uint64_t seed);

    /** @throws std::invalid_argument for two alike or a number of trials that cannot be */
    static BlindRun ofAbx (OptionId, OptionId, int trials, uint64_t seed);

    BlindView view() const;
    OptionId playing() const; ///< what is behind the number heard
    bool involves (OptionId id) const;

    void hear (int number);
    void rank (int number, RankMove);
    void answer (int number); ///< abx: 1 or 2

    bool isComplete() const;
    BlindOutcome outcome (const Job&, int take, const std::string& date) const; ///< @param take  index, -1: none

private:
    std::vector<OptionId> behind; ///< by number less 1, X left out
    std::optional<Ranking> ranking;
    std::optional<AbxTrials> trials;
    int heard = 1;
    bool xHeard = false; ///< in this trial

    BlindRun (std::vector<OptionId>, SeededRandom&);
};
}
