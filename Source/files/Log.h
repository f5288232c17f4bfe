#pragma once

#include <string>

namespace coldiron
{
/** Says on the standard error output, in one line that is safe to print, what failed in the background, where nobody waits
    for an answer. Not for the audio thread. */
void logFault (const std::string& message);
}
