#pragma once

#include "analysis/OhmTable.h"
#include "cli/Command.h"
#include "metering/TakeFaults.h"
#include "response/Band.h"
#include "response/CoilChoice.h"
#include "response/Figures.h"

namespace coldiron::cli
{
/** One column of the comparison. */
struct Compared
{
    std::string letter, name; ///< "now" for as recorded
    int take = -1;            ///< index; -1: no take
    StringSet strings;        ///< of the guitar heard
    Figures figures;
    std::vector<OtherCoil> otherCoils;    ///< to keep instead, where two kept coils hum together
    OhmReading ohms;                      ///< at the option's own switch positions
    Band band;                            ///< third octaves, 50 Hz to 16 kHz; empty for as recorded
    TakeChoice choice;                    ///< from which take, and how it would be surer
    std::vector<std::string> stillAtRest; ///< switches until which it sounds like as recorded
};

/** What a take has to say of itself. */
struct TakeRemarks
{
    std::string name; ///< of the file
    NoiseFloor noise;
    std::vector<TakeFault> faults;
};

std::string compareTable (const Job&, const std::vector<Compared>&, const std::vector<TakeRemarks>&);
std::string compareJson (const Job&, const std::vector<Compared>&, const std::vector<TakeRemarks>&);
}
