#pragma once

#include "job/Job.h"

#include <functional>
#include <set>

namespace coldiron
{
/** What the asks of a rewire are filled with before a person chooses: the pickup heard before the others, and pots that
    belong to it by name ("bridge-volume" goes with "bridge"); an ask that nothing fits stays empty.
    @param heard   pickups that are heard now: of another nothing would be heard at first
    @param pickup  goes into the first ask for a pickup instead; empty: the first of the above */
std::map<std::string, std::string> firstArguments (const RewireInfo&, const Harness&, const std::set<std::string>& heard,
                                                   const std::string& pickup = {});

/** Arguments with which a rewire can be done; where there are none, the first of all and why they cannot. */
struct FirstFit
{
    std::map<std::string, std::string> arguments;
    std::string refusal; ///< empty: it can be done so
};

/** Tries firstArguments(), then each pickup in turn, then each other pot for the first pot asked for.
    @param whyNot  empty for arguments with which it can be done. Asked last for those returned, if it can */
FirstFit firstFit (const RewireInfo&, const Harness&, const std::set<std::string>& heard,
                   const std::function<std::string (const std::map<std::string, std::string>&)>& whyNot);

/** What an option with this rewire alone is called: "Bridge: series or parallel, on a push-pull". */
std::string optionName (const RewireInfo&, const std::map<std::string, std::string>& arguments);
}
