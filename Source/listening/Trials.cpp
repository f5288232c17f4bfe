#include "listening/Trials.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>

namespace coldiron
{
uint64_t SeededRandom::next()
{
    // A counter through a mixer (multiply and shift): any seed will do, neighbouring seeds have nothing in common.
    state += 0x9e3779b97f4a7c15ull;
    uint64_t z = state;
    z = (z ^ (z >> 30)) * 0xbf58476d1ce4e5b9ull;
    z = (z ^ (z >> 27)) * 0x94d049bb133111ebull;
    return z ^ (z >> 31);
}

int SeededRandom::below (int limit)
{
    const auto range = static_cast<uint64_t> (std::max (1, limit));
    const uint64_t unfair = (~0ull / range) * range; // beyond it the small values would come up once more
    uint64_t drawn = next();
    while (drawn >= unfair)
        drawn = next();
    return static_cast<int> (drawn % range);
}

std::vector<int> shuffled (int count, SeededRandom& random)
{
    std::vector<int> order;
    for (int i = 0; i < count; ++i)
        order.push_back (i);
    for (int i = count - 1; i > 0; --i)
        std::swap (order[static_cast<size_t> (i)], order[static_cast<size_t> (random.below (i + 1))]);
    return order;
}

double guessingProbability (int right, int trials)
{
    if (trials < 1 || trials > AbxTrials::most || right < 0 || right > trials)
        throw std::invalid_argument ("guessing: 1 to 100 trials, and no more right than there are");
    long double sum = 0.0L, ways = 1.0L; // ways to get exactly k right, from all of them downwards
    for (int k = trials; k >= right; --k)
    {
        sum += ways;
        ways = ways * static_cast<long double> (k) / static_cast<long double> (trials - k + 1);
    }
    return static_cast<double> (std::ldexp (sum, -trials));
}

AbxTrials::AbxTrials (int trials, uint64_t seed)
{
    if (trials < fewest || trials > most)
        throw std::invalid_argument ("5 to 100 trials");
    SeededRandom random (seed);
    for (int i = 0; i < trials; ++i)
        answers.push_back (random.below (2));
}

int AbxTrials::x() const { return answers[static_cast<size_t> (std::min (answered, trials() - 1))]; }

void AbxTrials::answer (int which)
{
    if (isFinished() || (which != 0 && which != 1))
        return;
    hits += which == x() ? 1 : 0;
    ++answered;
}
}
