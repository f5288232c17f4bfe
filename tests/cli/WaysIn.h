#pragma once

#include "Attempt.h"

#include <functional>

namespace coldiron::support
{
/** What a path ought to name. */
enum class Kind {
    job,      ///< a job
    take,     ///< a recording or impulse response
    readings, ///< of fit
    preset,   ///< a preset that a job names
    shown,    ///< a preset that is shown as it is, so that what is wrong in it beyond its syntax does not matter
    folder    ///< of presets
};

/** What stands there instead. */
enum class State { absent, empty, folder, pipe, device, unreadable, tooBig, notANumber, badText };

/** Makes ready what leads to the thing; a job and a take are there before it. */
using Make = std::function<void (const Fixture&)>;

/** One way in: a command, and where in the shop's folder the thing lies that is tried. In arguments {it} is its path,
    {job} the job's and {shop} the folder's. */
struct Way
{
    std::string name;
    std::vector<std::string> arguments;
    Kind kind;
    std::string place;
    Make make;
    std::map<std::string, std::string> environment; ///< with the same words
    int mostFaults = 1;                             ///< more where one fault makes others in the job, a line each
};

/** All that mean something for that kind of thing. */
std::vector<State> statesOf (Kind);

/** Checks the bar: one line, 1 or 2, two seconds of the processor, 500 MB, nothing written or left. */
void tryWay (const Way&, State);

/** Checks that the way leads in where the thing is as it should be: else the table would prove nothing. */
void tryWorking (const Way&);
}
