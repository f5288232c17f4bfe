#pragma once

#include "files/Json.h"

#include <map>
#include <optional>
#include <string>
#include <vector>

namespace coldiron
{
/** What a blind test found, as kept in the job. Versions are letters of options, or "recorded". An option may be gone
    or rewired since, so the names it had are kept too. */
struct BlindResult
{
    enum class Kind { ranking, abx };
    Kind kind = Kind::ranking;

    std::vector<std::vector<std::string>> ranking; ///< best first; those that share a place together
    std::vector<std::string> pair;                 ///< abx: the two told apart
    int trials = 0, right = 0;                     ///< abx

    std::map<std::string, std::string> names; ///< of the versions, when it was run
    std::optional<int> take;                  ///< counted from 1
    std::string date;                         ///< "2026-11-25"; may be empty
};

/** Reads the list; faults say what is wrong with which entry. */
std::vector<BlindResult> readBlindResults (const Json&, Diagnostics&);

/** Letters A to H, each once: the options heard at true level. */
std::vector<std::string> readHeard (const Json&, Diagnostics&);
}
