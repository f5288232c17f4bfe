#pragma once

#include "audition/Figures.h"
#include "cli/Command.h"
#include "paper/OhmTable.h"

namespace coldiron::cli
{
/** One column of the comparison. */
struct Compared
{
    std::string letter, name;      ///< "now" for as recorded
    int take = -1;                 ///< index; -1: no take
    Figures figures;
    OhmReading ohms;               ///< at the option's own switch positions
    Band band;                     ///< third octaves, 50 Hz to 16 kHz; empty for as recorded
    std::string betterTake;        ///< a sentence where another take of the job would be surer; else empty
};

std::string compareTable (const Job&, const std::vector<Compared>&);
std::string compareJson (const Job&, const std::vector<Compared>&);
}
