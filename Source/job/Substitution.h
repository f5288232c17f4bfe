#pragma once

#include "files/Json.h"

#include <map>
#include <string>
#include <vector>

namespace coldiron
{
/** The text with every {name} filled in; names that nothing is known for are added to `unknown` and stay as they are.
    It ends where it is longer than limits::filledLength. */
std::string filledIn (const std::string& text, const std::map<std::string, std::string>& values,
                      std::vector<std::string>& unknown);

/** A tree with every text filled in; keys are never touched. A name nobody asked for is a fault.
    @param length  of all texts so far; more than limits::filledLength is a fault, and the rest stays as it is */
Json filledIn (const Json&, const std::map<std::string, std::string>& values, size_t& length, Diagnostics&);
}
