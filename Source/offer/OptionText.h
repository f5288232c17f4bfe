#pragma once

#include "files/Json.h"
#include "offer/Starter.h"

#include <optional>
#include <set>
#include <string>
#include <vector>

namespace coldiron
{
/** The letters A to H that are not taken, in order. */
std::vector<std::string> freeLetters (const std::set<std::string>& taken);

/** An option as it stands in a job, JSON. @param indent  what the lines after the first begin with; nothing: one line */
std::string optionText (const StarterOption&, const std::optional<std::string>& indent = std::nullopt);

/** The same as a value. */
Json optionAsJson (const StarterOption&);

/** A job's text with options added. */
struct OptionsAdded
{
    std::string text;                 ///< the whole job
    std::vector<std::string> letters; ///< of the new ones, in the order of the options given
    size_t left = 0;                  ///< options for which no letter was free
};

/** Adds options under the first free letters, where they belong in the text: comments, spaces and everything else that
    stands there stay as they are, and no option is replaced.
    @returns nothing where the text is no JSON object or its "options" are none */
std::optional<OptionsAdded> withOptions (const std::string& jobText, const std::vector<StarterOption>&);
}
