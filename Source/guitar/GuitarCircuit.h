#pragma once

#include "circuit/Netlist.h"
#include "guitar/Load.h"
#include "guitar/Setting.h"

#include <string>
#include <vector>

namespace coldiron
{
/** One coil as the circuit knows it. */
struct CoilSource
{
    std::string pickup, coil; ///< names
    BranchId branch = 0;      ///< carries the EMF
    double stringDrive = 0.0; ///< string EMF: output times string sign
    double humDrive = 0.0;    ///< hum EMF: winding sign times turns/5000
    double bridgeMm = 0.0;    ///< pickup's middle plus the coil's offset, from the bridge
    double slantMm = 0.0;
    std::vector<std::string> hears; ///< empty: all strings
    Provenance known = Provenance::assumed;
};

enum class Path {
    open,   ///< something drives the tip
    none,   ///< no coil reaches what is heard
    shorted ///< what is heard and the sleeve are one node
};

/** A harness at a setting into a load, as a circuit. */
struct GuitarCircuit
{
    Netlist netlist;
    NodeId tip = 0;                                 ///< what is heard: the jack's tip, or its ring where the load says so
    std::vector<CoilSource> coils;                  ///< every coil of the harness, also those not heard
    std::vector<size_t> resistorParts, branchParts; ///< of which part of the harness they are; the load's come after them
    Path path = Path::open;
};

/** Values to bend while building: one factor for each kind of part, for tolerances. 1 is as stated. */
struct PartFactors
{
    double inductance = 1.0, capacitance = 1.0, loss = 1.0, pots = 1.0, cable = 1.0, resistance = 1.0;
    double couplingShift = 0.0; ///< added to k where a pickup has more than one coil
};

/** Options of building. */
struct BuildOptions
{
    double potFloorOhms = 1.0;                                                 ///< each side of a wiper is at least this
    bool withLoad = true;                                                      ///< false: nothing on the jack
    const std::vector<std::pair<std::string, PartFactors>>* factors = nullptr; ///< by part name; "cable" for the load
};

/** @throws HarnessError for a knob or position that does not exist. */
GuitarCircuit buildCircuit (const Harness&, const Setting&, const Load&, const BuildOptions& = {});
}
