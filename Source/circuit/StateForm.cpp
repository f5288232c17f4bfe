#include "circuit/StateForm.h"

#include <stdexcept>

namespace coldiron
{
StateForm::StateForm (const Netlist& netlist, const std::vector<BranchId>& sources, NodeId output)
{
    const Equations equations (netlist);
    const auto energy = equations.energy();
    const auto states = energy.columns.cols();
    const auto inputs = (Eigen::Index)sources.size() + 1;
    const Eigen::RowVectorXd out = equations.voltage (output);

    Eigen::MatrixXd rightSides = Eigen::MatrixXd::Zero (equations.size(), states + inputs);
    rightSides.leftCols (states) = energy.columns;
    for (size_t k = 0; k < sources.size(); ++k)
        rightSides (equations.current (sources[k]), states + (Eigen::Index)k) = 1.0;
    rightSides.rightCols (1) = Equations::scaleOhms * out.transpose();

    const Eigen::PartialPivLU<Eigen::MatrixXd> factors (equations.conductance + equations.reactance);
    const Eigen::MatrixXd solved = factors.solve (rightSides);
    if (! solved.allFinite() || (equations.size() > 0 && factors.rcond() < 1e-17))
        throw std::runtime_error ("the circuit has no single solution: sources without resistance fight each other");

    // (A + (p - 1) F J F^T)^-1 with J = +-1: J goes with the rows.
    Eigen::MatrixXd product = energy.columns.transpose() * solved;
    product.bottomRows (states - energy.capacitorColumns) *= -1.0;

    matrix = product.leftCols (states);
    columns = product.rightCols (inputs);
    const Eigen::RowVectorXd heard = out * solved;
    row = heard.head (states);
    direct = heard.tail (inputs);
}
}
