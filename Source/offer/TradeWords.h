#pragma once

#include <compare>
#include <string>
#include <vector>

namespace coldiron
{
/** A text as words to look for: lower case, split at everything but letters and digits, words that carry nothing left
    out ("it", "the", "my"; all stay where nothing else is there), endings taken off ("hums", "humming" -> "hum"). */
std::vector<std::string> wordStems (const std::string& text);

/** How well something answers what was asked for, in steps. */
enum class WordMatch {
    none,  ///< not at all
    some,  ///< some of the words asked for, in its names or in what else is told of it
    told,  ///< all of them, but not in one of its names
    named, ///< all of them in one of its names
    same,  ///< one of its names, but for endings and words that carry nothing
    exact  ///< one of its names, spelling of spaces, hyphens and capitals aside
};

/** A step, and within `some` how many of the words: the more the better. */
struct WordScore
{
    WordMatch match = WordMatch::none;
    size_t words = 0; ///< found, where match is `some`; else 0

    auto operator<=> (const WordScore&) const = default;
};

/** @param asked  one or several words; nothing to look for matches nothing
    @param names  what the thing is called, all ways
    @param more   what else is told of it */
WordScore matchWords (const std::string& asked, const std::vector<std::string>& names, const std::string& more = {});
}
