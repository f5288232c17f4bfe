#pragma once

#include "analysis/FaultFinder.h"

#include <string>

// What the fault finder has to say.

namespace coldiron::wording
{
/** What is wrong, without a full stop: "Open joint: Neck pickup, north start on Neck volume, lug 3". */
std::string fault (const Fault&, const Harness&);

/** Where to begin: "Look first at Neck volume, lug 3; then at Neck pickup, north start." Empty where there is no place. */
std::string lookFirst (const FaultGroup&, const Harness&);

std::string noted (const OhmsNoted&);     ///< "7.9 kΩ", "open", "short"
std::string noted (Tap);                  ///< "loud", "weak", "none"
std::string noted (Kick);                 ///< "+", "-", "none"
std::string expected (const OhmVerdict&); ///< "7.1 kΩ to 9.2 kΩ", "open"

/** One sentence: whether the readings pass, and how many do not. */
std::string verdict (const BenchVerdict&);

/** What to think of the suspects; empty where the first explains all that was noted. */
std::string doubt (const BenchVerdict&);

/** Faults that the readings do not show, the first few by name; empty where there are none. */
std::string notShown (const BenchVerdict&, const Harness&, size_t most = 4);

/** Before a meter or an iron touches the guitar. */
std::string readingsCaution();
}
