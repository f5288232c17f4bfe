#pragma once

#include <string>

namespace coldiron
{
/** Text as it stands in HTML and SVG, between tags or in a quoted attribute: nothing in it is markup. */
std::string escapedMarkup (const std::string& text);
}
