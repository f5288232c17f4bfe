#pragma once

#include <cstdint>
#include <vector>

namespace coldiron
{
/** Random numbers from a seed, the same on every machine: a test can be run again exactly. */
class SeededRandom
{
public:
    explicit SeededRandom (uint64_t seed) : state (seed) {}

    uint64_t next();
    int below (int limit); ///< 0 .. limit - 1, every value equally likely; limit at least 1

private:
    uint64_t state;
};

/** 0 .. count - 1 in an order of which each is equally likely. */
std::vector<int> shuffled (int count, SeededRandom&);

/** How likely pure guessing between two gets at least so many right: sum of C (trials, k) / 2^trials from right to trials.
    @param trials  1 to 100; @param right  0 to trials; throws std::invalid_argument otherwise */
double guessingProbability (int right, int trials);

/** Is there a difference at all? X is one of two, chosen anew for every trial; the listener says which.
    The number of trials is fixed before the first, since stopping when it looks good makes guessing look good. What was
    right is not told before the last. */
class AbxTrials
{
public:
    static constexpr int fewest = 5, most = 100;

    /** @throws std::invalid_argument for a number of trials out of fewest..most */
    AbxTrials (int trials, uint64_t seed);

    int trials() const { return static_cast<int> (answers.size()); }
    int done() const { return answered; }
    bool isFinished() const { return answered == trials(); }

    /** Which of the two X is now: 0 or 1. The last one's once finished. */
    int x() const;

    /** 0 or 1; ignored once finished, or when it is neither. */
    void answer (int which);

    int right() const { return hits; } ///< of those answered

private:
    std::vector<int> answers; ///< what X is in each trial
    int answered = 0, hits = 0;
};
}
