#pragma once

#include "job/Job.h"

#include <string>
#include <vector>

namespace coldiron
{
/** One of the answers to a question about hum. */
struct HumAnswer
{
    std::string words; ///< "Falls"
    std::string value; ///< as the job's file says it, a JSON value
    std::string means; ///< a sentence
};

/** A question about hum, put before any option, and what its answers mean for the work. */
struct HumQuestion
{
    std::string words;
    std::string key; ///< in the job, inside "hum"
    std::vector<HumAnswer> answers;

    /** Which of the answers was given; none: not asked, or said in a way that none of them has. */
    std::optional<size_t> given (const HumAnswers&) const;
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
