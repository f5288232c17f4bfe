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
}
