#pragma once

#include "audition/Band.h"

#include <optional>
#include <string>
#include <vector>

namespace coldiron
{
/** One step of a volume knob as heard, with everything else as the setting has it. */
struct VolumeStep
{
    double knob = 10.0;
    double levelDb = 0.0;   ///< at 500 Hz, re the same knob at 10
    double trebleDb = 0.0;  ///< 5 kHz re 500 Hz, of the plain response
};

/** What one volume does. */
struct VolumeFigures
{
    std::string knob;
    bool heard = false;                 ///< turning it down changes what is heard at this setting
    std::vector<VolumeStep> steps;      ///< knob 10 8 6 4 2 where heard
    std::optional<bool> mutesOthers;    ///< at 0 where another volume is heard too; none where they never are
};

/** Knobs that work as volumes: wiper and one end carry signal, the other end lies at ground. In the order of parts. */
std::vector<std::string> volumeKnobs (const Harness&, const Setting&);

/** Every volume of an option. mutesOthers is asked at the option's own switch positions if two volumes are heard
    there, else at the first positions where two are. */
std::vector<VolumeFigures> volumeFigures (const Side&);
}
