#pragma once

#include "job/Job.h"

#include <string>
#include <vector>

namespace coldiron
{
/** A question about hum, put before any option, and what its answers mean for the work. */
struct HumQuestion
{
    std::string words;
    std::optional<bool> HumAnswers::* answer;
    std::string key;                 ///< in the job, inside "hum"
    std::string whenYes, whenNo;
};

/** In the order they are asked: what is mended elsewhere comes before what a rewire can help. */
const std::vector<HumQuestion>& humQuestions();

/** What to do first, from all answers so far; empty before the first. */
std::string humAdvice (const HumAnswers&);

/** A caution that goes with the advice; empty where none is due. */
std::string humCaution (const HumAnswers&);

/** One short line for later, where something comes before a rewire; else empty. */
std::string humInShort (const HumAnswers&);
}
