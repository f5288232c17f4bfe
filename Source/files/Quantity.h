#pragma once

#include <optional>
#include <string>
#include <vector>

namespace coldiron
{
/** A number with an SI prefix: "4.1k", "22n", "2.2", "1e3"; p n u µ m k M G. Nothing for anything else, for NaN and
    for infinity. No unit is written: "22n", not "22nF". */
std::optional<double> parseQuantity (const std::string& text);

/** The number as a person would write it: 4100 -> "4.1k", 2.2e-8 -> "22n". */
std::string quantityText (double value);

/** The names nearest to a misspelled one, best first; empty where nothing is near. */
std::string nearest (const std::string& name, const std::vector<std::string>& candidates);

/** "a, b, c", shortened after `most` names. */
std::string listed (const std::vector<std::string>& names, size_t most = 24);
}
