#include "circuit/Equations.h"
#include "circuit/Network.h"

#include <algorithm>
#include <stdexcept>

namespace coldiron
{
double dcResistance (const Netlist& netlist, NodeId a, NodeId b)
{
    if (! netlist.followers().empty())
        throw std::invalid_argument ("a circuit with an active stage has no DC resistance");
    if (std::min (a, b) < 0 || std::max (a, b) >= netlist.numNodes())
        throw std::invalid_argument ("there is no such node");
    if (a == b)
        return 0.0;

    const auto n = netlist.numNodes();
    Eigen::MatrixXd between = Eigen::MatrixXd::Zero (n, n); // conductances, the diagonal unused
    const auto add = [&between] (NodeId from, NodeId to, double siemens)
    {
        between (from, to) += siemens;
        between (to, from) += siemens;
    };

    for (const auto& r : netlist.resistors())
        add (r.a, r.b, 1.0 / r.ohms);
    for (const auto& branch : netlist.branches())
        add (branch.a, branch.b, 1.0 / std::max (branch.ohms, 1e-9));
    for (NodeId node = 1; node < n; ++node)
        add (ground, node, Equations::leakSiemens);

    // Stars to meshes, a node at a time. Nothing is ever subtracted, so a micro-ohm beside megohms costs no digits.
    for (NodeId star = 0; star < n; ++star)
    {
        if (star == a || star == b)
            continue;
        between (star, star) = 0.0;
        const Eigen::VectorXd arms = between.col (star);
        const auto sum = arms.sum();
        between.col (star).setZero();
        between.row (star).setZero();
        if (sum > 0.0)
            between += arms * (arms.transpose() / sum);
    }

    return 1.0 / between (a, b);
}

DcShares dcShares (const Netlist& netlist, NodeId a, NodeId b)
{
    DcShares shares;
    shares.ohms = dcResistance (netlist, a, b);
    shares.resistors.assign (netlist.resistors().size(), 0.0);
    shares.branches.assign (netlist.branches().size(), 0.0);
    if (a == b)
        return shares;

    // A current of 1 / scaleOhms into a and out of b: currents come in the same unit.
    const Equations equations (netlist);
    const Eigen::VectorXd into = (equations.voltage (a) - equations.voltage (b)).transpose();
    const Eigen::VectorXd solved = Eigen::PartialPivLU<Eigen::MatrixXd> (equations.conductance).solve (into);
    if (! solved.allFinite())
        throw std::runtime_error ("the circuit has no single solution at DC");
    const auto add = [&] (double& share, double ohms, double current) { share = current * current * ohms / shares.ohms; };
    for (size_t i = 0; i < shares.resistors.size(); ++i)
    {
        const auto& r = netlist.resistors()[i];
        const double volts = (equations.voltage (r.a) - equations.voltage (r.b)) * solved;
        add (shares.resistors[i], r.ohms, volts * Equations::scaleOhms / r.ohms);
    }
    for (size_t i = 0; i < shares.branches.size(); ++i)
        add (shares.branches[i], netlist.branches()[i].ohms, solved (equations.current (static_cast<BranchId> (i))));
    return shares;
}
}
