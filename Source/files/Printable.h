#pragma once

#include <string>

namespace coldiron
{
/** A line of text from a file or a name as it may go to a terminal. UTF-8 stays; what would steer the terminal or turn the
    line about (control characters C0 and C1, DEL, bidirectional embeddings, overrides and isolates, line separators) and
    bytes that are no UTF-8 are written out, like \u001b, which is also how JSON (RFC 8259) would write them. */
std::string printable (const std::string&);

/** The same for text of several lines: line feeds and tabs stay. */
std::string printableLines (const std::string&);

/** No more than so many bytes, and no character cut in two. */
std::string shortened (const std::string&, size_t bytes);
}
