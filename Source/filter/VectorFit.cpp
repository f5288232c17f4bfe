#include "filter/VectorFit.h"

#include <Eigen/Dense>

#include <algorithm>
#include <cmath>

namespace coldiron
{
namespace
{
using Complex = std::complex<double>;
using Poles = std::vector<Complex>;

Poles startingPoles (const FitTarget& target, int order)
{
    const int pairs = order / 2;
    const double low = std::log (target.axis.front() * 6.0), high = std::log (target.axis.back() * 0.5);
    Poles poles;
    for (int i = 0; i < pairs; ++i)
    {
        const double place = pairs > 1 ? static_cast<double> (i) / (pairs - 1) : 0.5;
        const double size = std::exp (low + (high - low) * std::sqrt (place)); // denser where pickups resonate
        poles.emplace_back (-0.25 * size, size);
    }
    return poles;
}

int columns (const Poles& poles)
{
    int count = 0;
    for (const auto& pole : poles)
        count += pole.imag() == 0.0 ? 1 : 2;
    return count;
}

/** The basis of real coefficients at jw: 1/(w - a), or for a pair its sum and j times its difference. */
Eigen::MatrixXcd basis (const std::vector<double>& axis, const Poles& poles)
{
    Eigen::MatrixXcd phi (static_cast<Eigen::Index> (axis.size()), columns (poles));
    Eigen::Index column = 0;
    for (const auto& pole : poles)
    {
        for (size_t k = 0; k < axis.size(); ++k)
        {
            const Complex w (0.0, axis[k]);
            const auto row = static_cast<Eigen::Index> (k);
            const Complex one = 1.0 / (w - pole);
            if (pole.imag() == 0.0)
                phi (row, column) = one;
            else
            {
                const Complex other = 1.0 / (w - std::conj (pole));
                phi (row, column) = one + other;
                phi (row, column + 1) = Complex (0.0, 1.0) * (one - other);
            }
        }
        column += pole.imag() == 0.0 ? 1 : 2;
    }
    return phi;
}

Poles tamed (const Eigen::VectorXcd& zeros, const FitTarget& target)
{
    Poles poles;
    for (Eigen::Index i = 0; i < zeros.size(); ++i)
    {
        Complex pole = zeros[i];
        if (pole.imag() < 0.0)
            continue; // its partner is there
        const double least = target.damping * std::abs (pole) + target.leastReal;
        const double real = -std::max (std::abs (pole.real()), least);
        poles.emplace_back (real, pole.imag());
    }
    std::sort (poles.begin(), poles.end(), [] (const Complex& a, const Complex& b)
               { return a.imag() != b.imag() ? a.imag() < b.imag() : a.real() < b.real(); });
    return poles;
}

/** New poles: the zeros of sigma (w) = d + sum c phi, found with T sigma = N on the points. */
Poles relocated (const FitTarget& target, const Poles& poles)
{
    const auto phi = basis (target.axis, poles);
    const auto points = phi.rows();
    const auto n = phi.cols();
    Eigen::MatrixXd system (2 * points + 1, 2 * n + 2);
    double size = 0.0;
    Eigen::RowVectorXd sums = Eigen::RowVectorXd::Zero (n);
    for (Eigen::Index k = 0; k < points; ++k)
    {
        const double weight = target.weights[static_cast<size_t> (k)];
        const Complex value = target.values[static_cast<size_t> (k)];
        size += std::norm (weight * value);
        for (Eigen::Index c = 0; c < n; ++c)
        {
            const Complex left = weight * phi (k, c), right = -left * value;
            system (2 * k, c) = left.real();
            system (2 * k + 1, c) = left.imag();
            system (2 * k, n + 1 + c) = right.real();
            system (2 * k + 1, n + 1 + c) = right.imag();
            sums[c] += phi (k, c).real();
        }
        system (2 * k, n) = weight;
        system (2 * k + 1, n) = 0.0;
        system (2 * k, 2 * n + 1) = -weight * value.real();
        system (2 * k + 1, 2 * n + 1) = -weight * value.imag();
    }
    // Relaxation: the mean of sigma's real part is one, instead of its value at infinity.
    const double scale = std::sqrt (size) / static_cast<double> (points);
    system.row (2 * points).setZero();
    system.row (2 * points).segment (n + 1, n) = scale * sums;
    system (2 * points, 2 * n + 1) = scale * static_cast<double> (points);

    const Eigen::HouseholderQR<Eigen::Ref<Eigen::MatrixXd>> qr (system);
    Eigen::VectorXd rhs = Eigen::VectorXd::Zero (2 * points + 1);
    rhs[2 * points] = scale * static_cast<double> (points);
    rhs.applyOnTheLeft (qr.householderQ().adjoint());

    // Only sigma's coefficients are wanted: the lower right corner of R.
    const Eigen::MatrixXd corner = qr.matrixQR().block (n + 1, n + 1, n + 1, n + 1).template triangularView<Eigen::Upper>();
    const Eigen::VectorXd scales = corner.colwise().norm().cwiseMax (1e-300);
    const Eigen::VectorXd solved = (corner * scales.cwiseInverse().asDiagonal()).colPivHouseholderQr().solve (rhs.segment (n + 1, n + 1));
    const Eigen::VectorXd sigma = solved.cwiseQuotient (scales);
    double direct = sigma[n];
    if (std::abs (direct) < 1e-8)
        direct = direct < 0.0 ? -1e-8 : 1e-8;

    Eigen::MatrixXd state = Eigen::MatrixXd::Zero (n, n);
    Eigen::VectorXd input (n);
    Eigen::Index row = 0;
    for (const auto& pole : poles)
    {
        if (pole.imag() == 0.0)
        {
            state (row, row) = pole.real();
            input[row++] = 1.0;
            continue;
        }
        state (row, row) = state (row + 1, row + 1) = pole.real();
        state (row, row + 1) = pole.imag();
        state (row + 1, row) = -pole.imag();
        input[row] = 2.0;
        input[row + 1] = 0.0;
        row += 2;
    }
    const Eigen::VectorXcd zeros = (state - input * sigma.head (n).transpose() / direct).eigenvalues();
    return tamed (zeros, target);
}

RationalFit withResidues (const FitTarget& target, const Poles& poles)
{
    const auto phi = basis (target.axis, poles);
    const auto points = phi.rows();
    const auto n = phi.cols();
    Eigen::MatrixXd system (2 * points, n + 1);
    Eigen::VectorXd rhs (2 * points);
    for (Eigen::Index k = 0; k < points; ++k)
    {
        const double weight = target.weights[static_cast<size_t> (k)];
        const Complex value = weight * target.values[static_cast<size_t> (k)];
        system.row (2 * k).head (n) = weight * phi.row (k).real();
        system.row (2 * k + 1).head (n) = weight * phi.row (k).imag();
        system (2 * k, n) = weight;
        system (2 * k + 1, n) = 0.0;
        rhs[2 * k] = value.real();
        rhs[2 * k + 1] = value.imag();
    }
    const Eigen::VectorXd scales = system.colwise().norm().cwiseMax (1e-300);
    system *= scales.cwiseInverse().asDiagonal();
    const Eigen::VectorXd solved = system.colPivHouseholderQr().solve (rhs).cwiseQuotient (scales);

    RationalFit fit;
    fit.direct = solved[n];
    fit.poles = poles;
    Eigen::Index column = 0;
    for (const auto& pole : poles)
    {
        if (pole.imag() == 0.0)
            fit.residues.emplace_back (solved[column++], 0.0);
        else
        {
            fit.residues.emplace_back (solved[column], solved[column + 1]);
            column += 2;
        }
    }
    return fit;
}
}

std::complex<double> RationalFit::at (std::complex<double> w) const
{
    Complex sum = direct;
    for (size_t p = 0; p < poles.size(); ++p)
    {
        sum += residues[p] / (w - poles[p]);
        if (poles[p].imag() != 0.0)
            sum += std::conj (residues[p]) / (w - std::conj (poles[p]));
    }
    return sum;
}

RationalFit fitRational (const FitTarget& target, int order, int iterations)
{
    auto poles = startingPoles (target, order);
    for (int i = 0; i < iterations; ++i)
        poles = relocated (target, poles);
    return withResidues (target, poles);
}
}
