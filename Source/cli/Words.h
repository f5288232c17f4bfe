#pragma once

#include <string>

namespace coldiron::cli
{
/** A word of a command line as a shell needs it written, quoted only where it must be. */
std::string shellWord (const std::string& text);
}
