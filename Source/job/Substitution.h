#pragma once

#include "job/Json.h"

#include <map>
#include <string>
#include <vector>

namespace coldiron
{
/** The text with every {name} filled in; names that nothing is known for are added to `unknown` and stay as they are. */
std::string filledIn (const std::string& text, const std::map<std::string, std::string>& values, std::vector<std::string>& unknown);

/** A tree with every text filled in; keys are never touched. A name nobody asked for is a fault. */
Json filledIn (const Json&, const std::map<std::string, std::string>& values, Faults&);
}
