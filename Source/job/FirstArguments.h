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

/** Arguments with which a rewire can be done; where there are none, the first of all. */
struct FirstFit
{
    std::map<std::string, std::string> arguments;
    bool canBeDone = false;
};

/** Tries firstArguments(), then each pickup in turn, then each other pot for the first pot asked for.
    @param canBeDone  whether it can be with these arguments. Asked first for firstArguments(), last for those returned if it
                      can */
FirstFit firstFit (const RewireInfo&, const Harness&, const std::set<std::string>& heard,
                   const std::function<bool (const std::map<std::string, std::string>&)>& canBeDone);

/** What an option with this rewire alone is called: "Bridge: series or parallel, on a push-pull". */
std::string optionName (const RewireInfo&, const std::map<std::string, std::string>& arguments);
}
