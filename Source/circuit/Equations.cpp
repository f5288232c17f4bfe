#include "circuit/Equations.h"

#include <numbers>
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

/** Adds a current's column to the node rows and, where wanted, the node voltages to the current's row. */
void join (Eigen::MatrixXd& matrix, int node, int current, double sign, bool bothWays)
{
    if (node < 0)
        return;
    matrix (node, current) += sign;
    if (bothWays)
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

Equations::Equations (const Netlist& netlist)
    : numVoltages (netlist.numNodes() - 1), numBranches ((int) netlist.branches().size())
{
    const auto n = numVoltages + numBranches + (int) netlist.followers().size();
    const auto shift = 2.0 * std::numbers::pi * shiftHz;
    conductance.setZero (n, n);
    reactance.setZero (n, n);

    for (int i = 0; i < numVoltages; ++i)
        conductance (i, i) = leakSiemens * scaleOhms;

    for (const auto& r : netlist.resistors())
        stamp (conductance, voltage (r.a), voltage (r.b), scaleOhms / r.ohms);

    for (const auto& c : netlist.capacitors())
        stamp (reactance, voltage (c.a), voltage (c.b), shift * c.farads * scaleOhms);

    for (int k = 0; k < numBranches; ++k)
    {
        const auto& branch = netlist.branches()[(size_t) k];
        const auto i = current (k);
        join (conductance, voltage (branch.a), i, 1.0, true);
        join (conductance, voltage (branch.b), i, -1.0, true);
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
        join (conductance, voltage (follower.out), row, 1.0, true);
        if (const auto in = voltage (follower.in); in >= 0)
            conductance (row, in) -= follower.gain;
        ++row;
    }
}

Equations::Energy Equations::energy() const
{
    const auto capacitors = choleskyColumns (reactance.topLeftCorner (numVoltages, numVoltages));
    const auto coils = choleskyColumns (-reactance.block (numVoltages, numVoltages, numBranches, numBranches));

    Energy energy;
    energy.capacitorColumns = (int) capacitors.cols();
    energy.columns.setZero (size(), capacitors.cols() + coils.cols());
    energy.columns.topLeftCorner (numVoltages, capacitors.cols()) = capacitors;
    energy.columns.block (numVoltages, capacitors.cols(), numBranches, coils.cols()) = coils;
    return energy;
}
}
