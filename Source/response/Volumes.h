#pragma once

#include "concurrency/Cancellation.h"
#include "response/Clarity.h"

#include <optional>
#include <string>
#include <vector>

namespace coldiron
{
/** One step of a volume knob as heard, with everything else as the setting has it. */
struct VolumeStep
{
    double knob = 10.0;
    double levelDb = 0.0;            ///< of what the strings give at 500 Hz, re the same knob at 10
    std::optional<double> clarityDb; ///< re the same knob at 10: below 0 duller, above 0 brighter; none where not asked for
};

/** What one volume does. */
struct VolumeFigures
{
    std::string knob;
    bool heard = false;              ///< turning it down changes what is heard at this setting
    std::vector<VolumeStep> steps;   ///< knob 10 8 6 4 2 where heard
    std::optional<bool> mutesOthers; ///< at 0 where another volume is heard too; none where they never are
};

/** Knobs that work as volumes: wiper and one end carry signal, the other end lies at ground. In the order of parts. */
std::vector<std::string> volumeKnobs (const Harness&, const Setting&);

/** Every volume of an option. mutesOthers is asked at the option's own switch positions if two volumes are heard
    there, else at the first positions where two are.
    @param clarity  what to judge the steps by; without it they say the level alone. @throws Cancelled */
std::vector<VolumeFigures> volumeFigures (const CircuitConfig&, const Clarity* clarity = nullptr, const Cancellation& = {});
}
