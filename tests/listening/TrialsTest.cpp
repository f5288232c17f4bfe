// Guessing is counted exactly: the probability of at least k right of n between two is the sum of the binomial
// coefficients C (n, i), i = k..n, over 2^n [calc].
#include "listening/Trials.h"
#include "listening/Ranking.h"

#include <catch2/catch.hpp>

#include <bit>

#include <map>
#include <set>

namespace trialsTest
{
using namespace coldiron;

TEST_CASE ("guessing has the probabilities of the binomial formula")
{
    CHECK (guessingProbability (12, 16) == 2517.0 / 65536.0);    // 1820 + 560 + 120 + 16 + 1
    CHECK (guessingProbability (9, 10) == 11.0 / 1024.0);        // 10 + 1
    CHECK (guessingProbability (14, 20) == 60460.0 / 1048576.0); // 38760 + 15504 + 4845 + 1140 + 190 + 20 + 1
    CHECK (guessingProbability (5, 5) == 1.0 / 32.0);
    CHECK (guessingProbability (0, 16) == Approx (1.0).margin (1e-15));
    // From memory of printed tables of the cumulative binomial distribution: P (X <= 8, n = 20, 1/2) = 0.2517.
    CHECK (guessingProbability (12, 20) == Approx (0.2517).margin (5e-5));
    // Symmetry: at least half of an odd number is as likely as less than half.
    CHECK (guessingProbability (51, 100) + guessingProbability (50, 100) == Approx (1.0).margin (1e-14));
    CHECK (guessingProbability (50, 99) == Approx (0.5).margin (1e-14));
    CHECK (guessingProbability (100, 100) == Approx (std::ldexp (1.0, -100)));
}

TEST_CASE ("guessing has the probabilities of counting every outcome")
{
    for (int trials = 1; trials <= 14; ++trials)
        for (int right = 0; right <= trials; ++right)
        {
            int well = 0;
            for (unsigned outcome = 0; outcome < (1u << trials); ++outcome)
                well += std::popcount (outcome) >= right;
            REQUIRE (guessingProbability (right, trials) == static_cast<double> (well) / static_cast<double> (1u << trials));
        }
}

TEST_CASE ("guessing of what cannot be is refused")
{
    CHECK_THROWS_AS (guessingProbability (1, 0), std::invalid_argument);
    CHECK_THROWS_AS (guessingProbability (-1, 10), std::invalid_argument);
    CHECK_THROWS_AS (guessingProbability (11, 10), std::invalid_argument);
    CHECK_THROWS_AS (guessingProbability (5, 101), std::invalid_argument);
    CHECK_THROWS_AS (AbxTrials (4, 1), std::invalid_argument);
    CHECK_THROWS_AS (AbxTrials (101, 1), std::invalid_argument);
    CHECK_THROWS_AS (Ranking (1), std::invalid_argument);
    CHECK_THROWS_AS (Ranking (10), std::invalid_argument);
}

TEST_CASE ("the words of guessing") {}

TEST_CASE ("every order is equally likely, and a seed gives the same one again")
{
    SeededRandom random (20), again (20), other (21);
    const auto nine = shuffled (9, random);
    CHECK (nine == shuffled (9, again));
    CHECK (nine != shuffled (9, other));
    CHECK (std::set<int> (nine.begin(), nine.end()) == std::set<int> { 0, 1, 2, 3, 4, 5, 6, 7, 8 });

    std::map<std::vector<int>, int> counts;
    for (uint64_t seed = 0; seed < 24000; ++seed)
    {
        SeededRandom fresh (seed);
        ++counts[shuffled (4, fresh)];
    }
    REQUIRE (counts.size() == 24);
    double chiSquared = 0.0;
    for (const auto& [order, count] : counts)
        chiSquared += (count - 1000.0) * (count - 1000.0) / 1000.0;
    CHECK (chiSquared < 49.73); // chi-squared, 23 degrees of freedom, 99.9 %: from memory of printed tables
}

TEST_CASE ("X is one of two, each as often, and not to be foreseen from the one before")
{
    int ones = 0, changes = 0;
    for (uint64_t seed = 0; seed < 400; ++seed)
    {
        AbxTrials run (25, seed);
        int before = -1;
        while (! run.isFinished())
        {
            ones += run.x();
            changes += before >= 0 && run.x() != before;
            before = run.x();
            run.answer (0);
        }
    }
    CHECK (std::abs (ones - 5000) < 250);    // 10000 trials: five standard deviations of 50
    CHECK (std::abs (changes - 4800) < 245); // 9600 pairs
}

TEST_CASE ("answers count when they say what X is, and only as many as were agreed")
{
    AbxTrials run (10, 7);
    for (int i = 0; i < 10; ++i)
    {
        CHECK (run.done() == i);
        run.answer (2); // neither: ignored
        run.answer (i < 7 ? run.x() : 1 - run.x());
    }
    CHECK (run.isFinished());
    CHECK (run.right() == 7);
    run.answer (run.x());
    CHECK (run.right() == 7);
    CHECK (run.done() == 10);
}

TEST_CASE ("versions are ranked as they are heard")
{
    Ranking ranking (5);
    CHECK_FALSE (ranking.placeOf (0));
    ranking.up (3);   // 3
    ranking.up (1);   // 1 3
    ranking.down (4); // 1 3 4
    CHECK (ranking.placeOf (1) == 0);
    CHECK (ranking.placeOf (4) == 2);
    ranking.up (4); // 1 4 3
    ranking.up (4); // 4 1 3
    ranking.up (4); // no further
    CHECK (ranking.places() == std::vector<std::vector<int>> { { 4 }, { 1 }, { 3 } });
    CHECK_FALSE (ranking.isComplete());
    ranking.down (0);
    ranking.down (2); // 4 1 3 0 2
    CHECK (ranking.isComplete());
    ranking.down (2);
    ranking.down (4); // 1 4 3 0 2
    CHECK (ranking.placeOf (4) == 1);
    ranking.up (9);
    ranking.down (-1);
    CHECK (ranking.places().size() == 5);
}

TEST_CASE ("two may share a place, and the next place is left out")
{
    Ranking ranking (4);
    for (int version = 0; version < 4; ++version)
        ranking.down (version); // 0 1 2 3
    ranking.tie (2);            // 0 (1 2) 3
    CHECK (ranking.isTied (1));
    CHECK (ranking.placeOf (2) == 1);
    CHECK (ranking.placeOf (3) == 3); // second, second, fourth
    ranking.tie (3);                  // 0 (1 2 3)
    CHECK (ranking.placeOf (3) == 1);
    ranking.up (2); // 0 2 (1 3)
    CHECK (ranking.places() == std::vector<std::vector<int>> { { 0 }, { 2 }, { 1, 3 } });
    ranking.tie (3); // taken out again, just below
    CHECK (ranking.places() == std::vector<std::vector<int>> { { 0 }, { 2 }, { 1 }, { 3 } });
    ranking.tie (0); // nobody above
    CHECK_FALSE (ranking.isTied (0));
    CHECK (ranking.isComplete());
}
}
