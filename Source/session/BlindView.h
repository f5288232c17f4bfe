#pragma once

#include "job/BlindResult.h"
#include "session/OptionId.h"

#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace coldiron
{
/** A blind test under way as a window may show it: numbers, never what is behind them. */
struct BlindView
{
    using Kind = BlindResult::Kind;

    bool isRunning = false;
    Kind kind = Kind::ranking;
    int versions = 0;                       ///< ranking: numbers 1 to this; abx: 3, of which 3 is X
    int heard = 0;                          ///< the number heard now, from 1
    std::vector<std::optional<int>> places; ///< ranking: by number less 1; from 0, the best
    std::vector<bool> tied;                 ///< ranking: shares its place
    int trials = 0, answered = 0;           ///< abx
    bool canAnswer = false;                 ///< abx: X of this trial was heard
    std::string about;                      ///< abx: which two, "Now and C"; which is 1 and which 2 is hidden
    bool canTurnOver = false;               ///< all ranked; all answered

    bool isX (int number) const { return kind == Kind::abx && number == 3; }
};

/** How a number moves in the ranking. */
enum class RankMove { up, down, tie };

/** What came out when the tags were turned over. */
struct BlindOutcome
{
    BlindResult result;
    std::vector<OptionId> behind; ///< by number less 1
};
}
