#pragma once

#include "circuit/Netlist.h"

#include <complex>
#include <memory>
#include <vector>

namespace coldiron
{
/** The responses of one circuit, factorized once, asked at any frequency.

    Modified nodal analysis with a conductance of 1e-12 S from every node to ground, factorized at one real shift
    s0 = 2 pi 3000 and reduced to the circuit's energy stores; then the modes (or the Hessenberg form where the
    eigenvectors are ill-conditioned), so that each further frequency costs O(m) or O(m^2) for m energy stores.
    Immutable after construction; any thread may ask.
*/
class Network
{
public:
    /** @param sources  branches whose EMFs are the sources, in the order of the responses
        @param output  the node heard
        @throws std::runtime_error when the circuit has no single solution */
    Network (const Netlist&, std::vector<BranchId> sources, NodeId output);
    ~Network();
    Network (Network&&) noexcept;
    Network& operator= (Network&&) noexcept;

    int numSources() const;

    /** Whether the modes serve; false where the Hessenberg form does, slower and as accurate. */
    bool isModal() const;

    /** V at the output per volt of EMF of each source, at hz > 0; `responses` has numSources() places. */
    void responses (double hz, std::complex<double>* responses) const;

    /** Impedance seen into the output node with all EMFs at zero [ohms], at hz > 0. */
    std::complex<double> outputImpedance (double hz) const;

private:
    struct Impl;
    std::unique_ptr<Impl> impl;
};

/** The DC resistance between two nodes [ohms]: branches count with their ohms (at least 1e-9), capacitors are open.
    Followers throw std::invalid_argument. Above 1e11 it is only the solver's leakage. */
double dcResistance (const Netlist&, NodeId a, NodeId b);

/** How a DC resistance comes about. A share is the power in one resistance over that in all, and so how many per cent the
    whole rises when that resistance rises by one. None is negative; they add up to 1 but for the leakage. */
struct DcShares
{
    double ohms = 0.0;
    std::vector<double> resistors, branches; ///< in the netlist's order
};

/** The DC resistance between two nodes and the shares in it; as dcResistance() in what it takes and refuses. Where the nodes
    are one, all shares are 0. */
DcShares dcShares (const Netlist&, NodeId a, NodeId b);

/** A branch current per volt of EMF in `source` at hz >= 0: for checks of whole circuits, not for audio. */
std::complex<double> branchCurrent (const Netlist&, BranchId source, BranchId measured, double hz);

/** A node voltage per volt of EMF in `source` at hz >= 0, by one plain dense solve: the slow reference. */
std::complex<double> nodeVoltage (const Netlist&, BranchId source, NodeId measured, double hz);

/** The same for many sources by one solve, in their order. */
std::vector<std::complex<double>> nodeVoltages (const Netlist&, const std::vector<BranchId>& sources, NodeId measured, double hz);
}
