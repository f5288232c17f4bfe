#include "circuit/HessenbergForm.h"

#include <Eigen/Eigenvalues>

namespace coldiron
{
HessenbergForm::HessenbergForm (const StateForm& state)
    : matrix (state.matrix), columns (state.columns), row (state.row), direct (state.direct)
{
    if (matrix.rows() < 3)
        return; // is of that form already

    const Eigen::HessenbergDecomposition<Eigen::MatrixXd> decomposition (state.matrix);
    const Eigen::MatrixXd turn = decomposition.matrixQ();
    matrix = decomposition.matrixH();
    columns = turn.transpose() * state.columns;
    row = state.row * turn;
}

void HessenbergForm::responses (double w, int first, int count, std::complex<double>* result) const
{
    const std::complex<double> q (-1.0, w);
    const auto n = matrix.rows();
    Eigen::MatrixXcd left = q * matrix;
    left.diagonal().array() += 1.0;
    Eigen::MatrixXcd right = columns.middleCols (first, count).cast<std::complex<double>>();

    // Gaussian elimination of the one subdiagonal, exchanging neighbours.
    for (Eigen::Index i = 0; i + 1 < n; ++i)
    {
        const auto rest = n - i;
        if (std::norm (left (i + 1, i)) > std::norm (left (i, i)))
        {
            left.row (i).tail (rest).swap (left.row (i + 1).tail (rest));
            right.row (i).swap (right.row (i + 1));
        }
        if (left (i + 1, i) == 0.0)
            continue;
        const auto factor = left (i + 1, i) / left (i, i);
        left.row (i + 1).tail (rest) -= factor * left.row (i).tail (rest);
        right.row (i + 1) -= factor * right.row (i);
    }

    left.triangularView<Eigen::Upper>().solveInPlace (right);
    const Eigen::RowVectorXcd sum = row.cast<std::complex<double>>() * right;
    for (int k = 0; k < count; ++k)
        result[k] = direct (first + k) - q * sum (k);
}

void denseResponses (const StateForm& state, double w, std::complex<double>* result)
{
    const std::complex<double> q (-1.0, w);
    Eigen::MatrixXcd left = q * state.matrix;
    left.diagonal().array() += 1.0;
    const Eigen::MatrixXcd solved = left.partialPivLu().solve (state.columns.cast<std::complex<double>>());
    const Eigen::RowVectorXcd sum = state.row.cast<std::complex<double>>() * solved;
    for (Eigen::Index k = 0; k < sum.size(); ++k)
        result[k] = state.direct (k) - q * sum (k);
}
}
