#pragma once

#include <vector>

namespace coldiron
{
/** A circuit node. 0 is ground; the others are handed out by Netlist::addNode(). */
using NodeId = int;

/** Index of a branch (EMF, resistance and inductance in series), in the order of creation. */
using BranchId = int;

inline constexpr NodeId ground = 0;

/** A linear circuit of resistors, capacitors, coil branches, mutual inductances and unity followers.

    Closed contacts and wires never appear here: they were merged into nodes before.
    Nothing is checked for sense except ranges; a violated range throws std::invalid_argument.
*/
class Netlist
{
public:
    struct Resistor
    {
        NodeId a, b;
        double ohms;
    };
    struct Capacitor
    {
        NodeId a, b;
        double farads;
    };

    /** v_a - v_b - (ohms + s henries) i = e, with i flowing from a to b through the branch and e the EMF. */
    struct Branch
    {
        NodeId a, b;
        double ohms;
        double henries;
    };
    struct Coupling
    {
        BranchId first, second;
        double henries;
    };

    /** v_out = gain * v_in, nothing drawn from the input. */
    struct Follower
    {
        NodeId in, out;
        double gain;
    };

    NodeId addNode();
    int numNodes() const; ///< ground included, at least 1

    void addResistor (NodeId a, NodeId b, double ohms);                   ///< ohms > 0
    void addCapacitor (NodeId a, NodeId b, double farads);                ///< farads >= 0; 0 adds nothing
    BranchId addBranch (NodeId a, NodeId b, double ohms, double henries); ///< both >= 0
    void addCoupling (BranchId first, BranchId second,
                      double mutualHenries); ///< |M| <= sqrt (L1 L2), sign by the branches' direction
    void addFollower (NodeId in, NodeId out, double gain);

    const std::vector<Resistor>& resistors() const { return resistorList; }
    const std::vector<Capacitor>& capacitors() const { return capacitorList; }
    const std::vector<Branch>& branches() const { return branchList; }
    const std::vector<Coupling>& couplings() const { return couplingList; }
    const std::vector<Follower>& followers() const { return followerList; }

private:
    int nodeCount = 1;
    std::vector<Resistor> resistorList;
    std::vector<Capacitor> capacitorList;
    std::vector<Branch> branchList;
    std::vector<Coupling> couplingList;
    std::vector<Follower> followerList;

    void checkNode (NodeId) const;
};
}
