#pragma once

#include <string>

namespace coldiron
{
/** A text as JSON writes it, in quotes; what is no UTF-8 is replaced. */
std::string quotedJson (const std::string&);
}
