#include "circuit/Equations.h"

#include <algorithm>
#include <numbers>
#include <numeric>
#include <stdexcept>

namespace coldiron
{
namespace
{
/** Adds value between two unknowns as an element between two nodes is stamped; -1 is ground. */
void stamp (Eigen::MatrixXd& matrix, int a, int b, double value)
{
    if (a == b)
        return;
    if (a >= 0)
        matrix (a, a) += value;
    if (b >= 0)
        matrix (b, b) += value;
    if (a >= 0 && b >= 0)
    {
        matrix (a, b) -= value;
        matrix (b, a) -= value;
    }
}

/** Too small to be a conductance beside megohms: its current is an unknown instead, as a branch's is. */
bool isSmall (const Netlist::Resistor& resistor) { return resistor.ohms < 30.0; }

/** A current that leaves a node, and the node's voltage in the current's own row. */
void join (Eigen::MatrixXd& matrix, int node, int current, double sign)
{
    if (node < 0)
        return;
    matrix (node, current) += sign;
    matrix (current, node) += sign;
}

/** Columns f with sum f f^T = matrix, for a symmetric matrix without negative eigenvalues. */
Eigen::MatrixXd choleskyColumns (Eigen::MatrixXd matrix)
{
    const auto n = matrix.rows();
    const Eigen::VectorXd diagonal = matrix.diagonal();
    Eigen::MatrixXd columns (n, n);
    Eigen::Index count = 0;

    for (Eigen::Index k = 0; k < n; ++k)
    {
        const auto pivot = matrix (k, k);
        if (pivot < -1e-9 * diagonal (k))
            throw std::runtime_error ("the couplings ask for more flux than the coils' inductances have");
        if (pivot <= 1e-14 * diagonal (k))
            continue; // dependent on the ones before

        auto column = columns.col (count++);
        column.setZero();
        column.tail (n - k) = matrix.col (k).tail (n - k) / std::sqrt (pivot);
        for (auto j = k; j < n; ++j)
            if (column (j) != 0.0)
                matrix.col (j).tail (n - k) -= column (j) * column.tail (n - k);
    }

    return columns.leftCols (count);
}
}

void Equations::findIslands (const Netlist& netlist)
{
    std::vector<NodeId> parent ((size_t)netlist.numNodes());
    std::iota (parent.begin(), parent.end(), 0);
    const auto rootOf = [&parent] (NodeId node)
    {
        while (parent[(size_t)node] != node)
            node = parent[(size_t)node] = parent[(size_t)parent[(size_t)node]];
        return node;
    };
    const auto tie = [&] (NodeId a, NodeId b) // the lower number stays the root, so ground does
    {
        const auto first = rootOf (a), second = rootOf (b);
        parent[(size_t)std::max (first, second)] = std::min (first, second);
    };

    for (const auto& r : netlist.resistors())
        tie (r.a, r.b);
    for (const auto& c : netlist.capacitors())
        tie (c.a, c.b);
    for (const auto& branch : netlist.branches())
        tie (branch.a, branch.b);
    for (const auto& follower : netlist.followers())
        tie (follower.out, ground);

    for (NodeId node = 0; node < netlist.numNodes(); ++node)
    {
        const auto root = rootOf (node);
        unknownOf.push_back (node == root ? -1 : node - 1);
        islandOf.push_back (root - 1);
    }
}

Eigen::RowVectorXd Equations::voltage (NodeId node) const
{
    Eigen::RowVectorXd row = Eigen::RowVectorXd::Zero (size());
    for (const auto unknown : { unknownOf[(size_t)node], islandOf[(size_t)node] })
        if (unknown >= 0)
            row (unknown) = 1.0;
    return row;
}

Equations::Equations (const Netlist& netlist) : numVoltages (netlist.numNodes() - 1), numBranches ((int)netlist.branches().size())
{
    findIslands (netlist);
    const auto numSmall = (int)std::count_if (netlist.resistors().begin(), netlist.resistors().end(), isSmall);
    const auto n = numVoltages + numBranches + (int)netlist.followers().size() + numSmall;
    const auto shift = 2.0 * std::numbers::pi * shiftHz;
    conductance.setZero (n, n);
    reactance.setZero (n, n);
    const auto against = [this] (NodeId node) { return unknownOf[(size_t)node]; };

    for (NodeId node = 1; node < netlist.numNodes(); ++node)
        for (const auto i : { unknownOf[(size_t)node], islandOf[(size_t)node] })
            for (const auto j : { unknownOf[(size_t)node], islandOf[(size_t)node] })
                if (i >= 0 && j >= 0)
                    conductance (i, j) += leakSiemens * scaleOhms;

    // Both ends of an element lie in one island, so the island's own voltage never enters.
    for (const auto& r : netlist.resistors())
        if (! isSmall (r))
            stamp (conductance, against (r.a), against (r.b), scaleOhms / r.ohms);

    for (const auto& c : netlist.capacitors())
        stamp (reactance, against (c.a), against (c.b), shift * c.farads * scaleOhms);

    for (int k = 0; k < numBranches; ++k)
    {
        const auto& branch = netlist.branches()[(size_t)k];
        const auto i = current (k);
        join (conductance, against (branch.a), i, 1.0);
        join (conductance, against (branch.b), i, -1.0);
        conductance (i, i) = -branch.ohms / scaleOhms;
        reactance (i, i) = -shift * branch.henries / scaleOhms;
    }

    for (const auto& coupling : netlist.couplings())
    {
        const auto i = current (coupling.first), j = current (coupling.second);
        reactance (i, j) -= shift * coupling.henries / scaleOhms;
        reactance (j, i) = reactance (i, j);
    }

    auto row = numVoltages + numBranches;
    for (const auto& follower : netlist.followers())
    {
        join (conductance, against (follower.out), row, 1.0);
        conductance.row (row) -= follower.gain * voltage (follower.in);
        ++row;
    }

    for (const auto& r : netlist.resistors())
        if (isSmall (r))
        {
            join (conductance, against (r.a), row, 1.0);
            join (conductance, against (r.b), row, -1.0);
            conductance (row, row) = -r.ohms / scaleOhms;
            ++row;
        }
}

Equations::Energy Equations::energy() const
{
    const auto capacitors = choleskyColumns (reactance.topLeftCorner (numVoltages, numVoltages));
    const auto coils = choleskyColumns (-reactance.block (numVoltages, numVoltages, numBranches, numBranches));

    Energy energy;
    energy.capacitorColumns = (int)capacitors.cols();
    energy.columns.setZero (size(), capacitors.cols() + coils.cols());
    energy.columns.topLeftCorner (numVoltages, capacitors.cols()) = capacitors;
    energy.columns.block (numVoltages, capacitors.cols(), numBranches, coils.cols()) = coils;
    return energy;
}
}
