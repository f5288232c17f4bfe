#pragma once

#include "job/Job.h"

#include <set>

namespace coldiron
{
/** What the asks of a rewire are filled with before a person chooses: the pickup heard before the others, and pots that
    belong to it by name ("bridge-volume" goes with "bridge"); an ask that nothing fits stays empty.
    @param heard   pickups that are heard now: of another nothing would be heard at first
    @param pickup  goes into the first ask for a pickup instead; empty: the first of the above */
std::map<std::string, std::string> firstArguments (const RewireInfo&, const Harness&, const std::set<std::string>& heard,
                                                   const std::string& pickup = {});
}
