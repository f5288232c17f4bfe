#include "wording/ListeningWords.h"

#include "listening/Ranking.h"
#include "listening/Trials.h"
#include "wording/Say.h"

#include <cmath>

namespace coldiron::wording
{
namespace
{
std::string versions (const std::vector<std::string>& letters)
{
    std::vector<std::string> names;
    for (const auto& letter : letters)
        names.push_back (letter == "recorded" ? say ("as recorded") : letter);
    return listOf (names);
}

/** How often one who hears no difference would do as well. */
std::string howOften (double chance)
{
    if (chance == 1.0)
        return say ("every time");
    if (chance > 0.949)
        return say ("nearly every time");
    if (chance >= 0.35)
        return say ("about {count} times in 10", rounded (10.0 * chance));
    double times = 1.0 / chance;
    const double step = times < 1000.0 ? 1.0 : std::pow (10.0, std::floor (std::log10 (times)) - 1.0); // two figures will do
    times = std::round (times / step) * step;
    return times < 1e6 ? say ("about 1 time in {count}", rounded (times)) : say ("less than 1 time in a million");
}
}

std::string place (int number)
{
    static_assert (Ranking::most == 9);
    switch (number)
    {
    case 0: return say ("first");
    case 1: return say ("second");
    case 2: return say ("third");
    case 3: return say ("fourth");
    case 4: return say ("fifth");
    case 5: return say ("sixth");
    case 6: return say ("seventh");
    case 7: return say ("eighth");
    case 8: return say ("ninth");
    default: return {};
    }
}

std::string guessing (int right, int trials)
{
    return say ("{right} of {trials}: guessing does that well {often}.", right, trials,
                howOften (guessingProbability (right, trials)));
}

std::string blindResult (const BlindResult& result)
{
    if (result.kind == BlindResult::Kind::abx)
        return say ("{pair}: {result}", versions (result.pair), guessing (result.right, result.trials));
    std::string order;
    for (const auto& tied : result.ranking)
        order =
            order.empty() ? say ("First {versions}", versions (tied)) : say ("{before}, then {versions}", order, versions (tied));
    return say ("{order}.", order);
}
}
