#pragma once

#include "circuit/Netlist.h"

#include <Eigen/Dense>

namespace coldiron
{
/** Modified nodal equations (conductance + p reactance) x = b of a netlist, scaled so that all entries are of like size.

    p = s / s0 with s0 = 2 pi 3000; voltages are in volts, currents in units of 1/Z0 amperes with Z0 = 100k, and node
    rows are multiplied by Z0. Unknowns: node voltages without ground, branch currents, follower
    currents, currents of resistors too small to stand beside the others as conductances.
    Both matrices are symmetric but for the followers.

    In an island, which only the leakage ties to ground, one node's voltage is an unknown of its own and the others
    count from it: so its elements, up to 1e12 times the leakage, never meet the leakage in one sum.
*/
class Equations
{
public:
    static constexpr double shiftHz = 3000.0;
    static constexpr double scaleOhms = 1e5;
    static constexpr double leakSiemens = 1e-12; ///< from every node to ground

    explicit Equations (const Netlist&);

    int size() const { return (int)conductance.rows(); }

    /** A row of ones where the sum of unknowns is the node's voltage; its transpose is a current into the node. */
    Eigen::RowVectorXd voltage (NodeId) const;
    int current (BranchId branch) const { return numVoltages + branch; }

    Eigen::MatrixXd conductance, reactance;

    /** The reactance as sum of +- f f^T over the columns f of a factor: its first capacitorColumns columns, from
        capacitors, count plus, the others, from inductances, minus. Its rank is the number of finite poles at most. */
    struct Energy
    {
        Eigen::MatrixXd columns;
        int capacitorColumns = 0;
    };

    /** @throws std::runtime_error when the couplings ask for more flux than the inductances have */
    Energy energy() const;

private:
    int numVoltages = 0, numBranches = 0;
    std::vector<int> unknownOf; ///< of a node against its island's reference; -1 for references and ground
    std::vector<int> islandOf;  ///< the unknown of the node's island against ground; -1 where tied to ground

    void findIslands (const Netlist&);
};
}
