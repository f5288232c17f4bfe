#pragma once

#include "analysis/HumTriage.h"

#include <string>

namespace coldiron::wording
{
std::string humQuestion (const HumQuestion&);
std::string humAnswer (const HumQuestion&, size_t answer);      ///< "Falls"
std::string humAnswerMeans (const HumQuestion&, size_t answer); ///< a sentence

/** What to do first, from all answers so far; empty before the first. */
std::string humAdvice (const HumAnswers&);

/** A caution that goes with the advice; empty where none is due. */
std::string humCaution (const HumAnswers&);

/** One short line for later, where something comes before a rewire; else empty. */
std::string humInShort (const HumAnswers&);
}
