#include "circuit/Netlist.h"

#include <cmath>
#include <stdexcept>
#include <string>

namespace coldiron
{
namespace
{
void require (bool holds, const char* what)
{
    if (! holds)
        throw std::invalid_argument (what);
}

bool isAtLeastZero (double value) { return std::isfinite (value) && value >= 0.0; }
}

NodeId Netlist::addNode() { return nodeCount++; }

int Netlist::numNodes() const { return nodeCount; }

void Netlist::checkNode (NodeId node) const
{
    if (node < 0 || node >= nodeCount)
        throw std::invalid_argument ("there is no node " + std::to_string (node));
}

void Netlist::addResistor (NodeId a, NodeId b, double ohms)
{
    checkNode (a);
    checkNode (b);
    require (std::isfinite (ohms) && ohms > 0.0, "a resistor needs more than 0 ohms");
    resistorList.push_back ({ a, b, ohms });
}

void Netlist::addCapacitor (NodeId a, NodeId b, double farads)
{
    checkNode (a);
    checkNode (b);
    require (isAtLeastZero (farads), "a capacitor needs 0 farads or more");

    if (farads > 0.0)
        capacitorList.push_back ({ a, b, farads });
}

BranchId Netlist::addBranch (NodeId a, NodeId b, double ohms, double henries)
{
    checkNode (a);
    checkNode (b);
    require (isAtLeastZero (ohms), "a branch needs 0 ohms or more");
    require (isAtLeastZero (henries), "a branch needs 0 henries or more");
    branchList.push_back ({ a, b, ohms, henries });
    return (BranchId)branchList.size() - 1;
}

void Netlist::addCoupling (BranchId first, BranchId second, double mutualHenries)
{
    const auto count = (BranchId)branchList.size();
    require (first >= 0 && first < count && second >= 0 && second < count, "a coupling needs two branches that exist");
    require (first != second, "a branch cannot be coupled with itself");

    const auto most = std::sqrt (branchList[(size_t)first].henries * branchList[(size_t)second].henries);
    require (std::abs (mutualHenries) <= most * (1.0 + 1e-12), "a mutual inductance is at most sqrt (L1 L2)");
    couplingList.push_back ({ first, second, mutualHenries });
}

void Netlist::addFollower (NodeId in, NodeId out, double gain)
{
    checkNode (in);
    checkNode (out);
    require (std::isfinite (gain), "a follower needs a finite gain");
    followerList.push_back ({ in, out, gain });
}
}
