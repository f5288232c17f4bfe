#pragma once

#include "guitar/Load.h"
#include "guitar/Setting.h"

#include <string>
#include <vector>

namespace coldiron::support
{
/** How an oracle's netlist is to be driven and built. */
struct OracleOptions
{
    double potFloorOhms = 1.0; ///< each side of a wiper is at least this; 0 leaves a touching wiper to a micro-ohm
    bool withLoad = true;      ///< false: nothing on the jack
    int onlyCoil = -1;         ///< the coil driven alone with an EMF of +1; -1: all, by output times string sign
    bool external = false;     ///< `vsrc` is given from outside in a transient, by the name "vsrc"
};

/** A harness as an ngspice netlist by a route of its own: it reads parts, landings and wires and shares no code with
    the product's circuit: its own joining of points, taper laws and signs. The source is `vsrc` at node `src` (ac 1),
    what is heard is node `tip` (or 0 where tip and sleeve touch). Every node has 1e12 ohms to ground. */
struct OracleNetlist
{
    std::vector<std::string> lines;
    std::vector<std::string> coils; ///< "pickup.coil" in the order of the harness
    bool shorted = false;           ///< tip and sleeve are one node: nothing to read

    OracleNetlist (const Harness&, const Setting&, const Load&, const OracleOptions& = {});
};
}
