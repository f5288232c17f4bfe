#include "filter/MinimumPhase.h"

#include <cmath>
#include <numbers>

namespace coldiron
{
namespace
{
constexpr double halfRange = std::numbers::pi * std::numbers::pi / 4.0; ///< of the kernel, 0 to infinity

/** Legendre's chi of order 2, sum of x^n/n^2 over odd n, 0 <= x <= 1. */
double chi2 (double x)
{
    if (x > 0.41421356237309503) // reflect, so that the series is short
    {
        const double y = (1.0 - x) / (1.0 + x);
        const double logs = y > 0.0 ? -0.5 * std::log (x) * std::log (y) : 0.0;
        return std::numbers::pi * std::numbers::pi / 8.0 + logs - chi2 (y);
    }
    double sum = 0.0, power = x;
    for (int n = 1; n < 60; n += 2, power *= x * x)
    {
        const double term = power / (static_cast<double> (n) * n);
        sum += term;
        if (term < 1e-18)
            break;
    }
    return sum;
}

/** Integral of ln coth (|v|/2) from 0 to u; odd in u. */
double kernelIntegral (double u)
{
    const double size = halfRange - 2.0 * chi2 (std::exp (-std::abs (u)));
    return u < 0.0 ? -size : size;
}
}

Eigen::MatrixXd minimumPhaseMatrix (const std::vector<double>& w)
{
    const auto count = static_cast<Eigen::Index> (w.size());
    Eigen::VectorXd u (count);
    for (Eigen::Index k = 0; k < count; ++k)
        u[k] = std::log (w[static_cast<size_t> (k)]);

    Eigen::MatrixXd matrix = Eigen::MatrixXd::Zero (count, count);
    for (Eigen::Index i = 0; i < count; ++i)
    {
        double before = -halfRange; // the lowest slope starts at minus infinity
        for (Eigen::Index k = 0; k + 1 < count; ++k)
        {
            const double next = kernelIntegral (u[k + 1] - u[i]);
            const double perSlope = (next - before) / std::numbers::pi / (u[k + 1] - u[k]);
            matrix (i, k + 1) += perSlope;
            matrix (i, k) -= perSlope;
            before = next;
        }
    }
    return matrix;
}
}
