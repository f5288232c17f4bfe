#include "circuit/Equations.h"
#include "circuit/Network.h"

#include <stdexcept>

namespace coldiron
{
namespace
{
Eigen::VectorXcd solve (const Equations& equations, BranchId source, double hz)
{
    const std::complex<double> p (0.0, hz / Equations::shiftHz);
    Eigen::VectorXcd sources = Eigen::VectorXcd::Zero (equations.size());
    sources (equations.current (source)) = 1.0;

    const Eigen::PartialPivLU<Eigen::MatrixXcd> factors (equations.conductance + p * equations.reactance);
    const Eigen::VectorXcd solved = factors.solve (sources);
    if (! solved.allFinite())
        throw std::runtime_error ("the circuit has no single solution at this frequency");
    return solved;
}

void checkBranch (const Netlist& netlist, BranchId branch)
{
    if (branch < 0 || branch >= (BranchId)netlist.branches().size())
        throw std::invalid_argument ("there is no such branch");
}
}

std::complex<double> branchCurrent (const Netlist& netlist, BranchId source, BranchId measured, double hz)
{
    checkBranch (netlist, source);
    checkBranch (netlist, measured);
    const Equations equations (netlist);
    return solve (equations, source, hz) (equations.current (measured)) / Equations::scaleOhms;
}

std::complex<double> nodeVoltage (const Netlist& netlist, BranchId source, NodeId measured, double hz)
{
    checkBranch (netlist, source);
    if (measured < 0 || measured >= netlist.numNodes())
        throw std::invalid_argument ("there is no such node");
    const Equations equations (netlist);
    return equations.voltage (measured).cast<std::complex<double>>() * solve (equations, source, hz);
}

std::vector<std::complex<double>> nodeVoltages (const Netlist& netlist, const std::vector<BranchId>& drives, NodeId measured,
                                                double hz)
{
    for (const auto drive : drives)
        checkBranch (netlist, drive);
    if (measured < 0 || measured >= netlist.numNodes())
        throw std::invalid_argument ("there is no such node");
    const Equations equations (netlist);
    const std::complex<double> p (0.0, hz / Equations::shiftHz);
    const Eigen::MatrixXcd system = equations.conductance + p * equations.reactance;

    // One row of the inverse: what each source gives there.
    const Eigen::VectorXcd given = Eigen::PartialPivLU<Eigen::MatrixXcd> (system.transpose())
                                       .solve (equations.voltage (measured).transpose().cast<std::complex<double>>());
    if (! given.allFinite())
        throw std::runtime_error ("the circuit has no single solution at this frequency");
    std::vector<std::complex<double>> voltages;
    for (const auto drive : drives)
        voltages.push_back (given (equations.current (drive)));
    return voltages;
}
}
