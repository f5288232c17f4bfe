#pragma once

namespace coldiron
{
/** Where a number that was read ends; nullptr where there is none, or none that a double holds. */
using NumberEnd = const char*;

/** Reads a double as std::from_chars does, whatever the process's locale: [-] digits with a point, an exponent; no blank or
    plus before it, no hexadecimal, no words for infinity. It goes by the standard library where that can do it. */
NumberEnd readNumber (const char* first, const char* last, double& number);

/** The same by a stream, for standard libraries that lack it for doubles; built everywhere, so that a test compares both. */
NumberEnd readNumberByStream (const char* first, const char* last, double& number);
}
