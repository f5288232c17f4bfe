#pragma once

#include "job/Job.h"

#include <string>

namespace coldiron
{
/** A netlist that a SPICE-like simulator runs as it is (`ngspice -b FILE`): the response at node `tip` for the source at
    node `src` (`ac 1`), all coils driven alike times their output and string sign: what `coldiron response` prints.
    Names are of a-z, 0-9 and _, unique whatever their case; every node has 1e12 ohms to ground, as in our own solver.
    @param option  nullptr: as recorded, the first take's harness, setting and load */
std::string spiceNetlist (const Job&, const Option*);

/** The same for any harness, setting and load. @param title  one line, for the netlist's first line */
std::string spiceNetlist (const GuitarCircuit&, const std::string& title);
}
