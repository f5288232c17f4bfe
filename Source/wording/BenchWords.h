#pragma once

#include "analysis/BenchPlan.h"

#include <string>
#include <vector>

namespace coldiron::wording
{
/** What a step is called: one line in the imperative, its lug named. */
std::string benchStep (const BenchStep&, const Harness& before, const Harness& after);

/** One line for each wire or lead of the step. */
std::vector<std::string> benchEnds (const BenchStep&, const Harness& before, const Harness& after);

/** How to find a new switch's lugs with a meter: a line for each position, "down: a rings to a down, b rings to b down". */
std::vector<std::string> ringOut (const SwitchType&);

/** A part to buy. */
struct BuyLine
{
    std::string what;              ///< "Push-pull, two poles, on a pot 500 kΩ log"
    std::string code;              ///< IEC 60062 with the letter of the tolerance, "500KM", "22nK"; empty where there is none
    std::string tolerance;         ///< "±20 %"; empty where none is known
    std::vector<std::string> fits; ///< to check before it is bought or drilled for
};

/** @param after  names of one thing to buy: a push-pull is a pot and its switch */
BuyLine buyLine (const Harness& after, const std::vector<std::string>& names);

/** IEC 60062:2016, 3.3 and 4: the letter of the unit's multiple stands for the decimal point, three figures at most. */
std::string valueCode (double value, bool isFarads);

/** IEC 60062:2016, table 3: B 0.1 %, C 0.25, D 0.5, F 1, G 2, J 5, K 10, M 20, N 30; 0 where the table has no letter. */
char toleranceLetter (double share);

/** The usual cautions, a sentence or two each; local codes and licensed practice last. */
std::vector<std::string> benchCautions (const Harness& before, const Harness& after);
}
