#include "filter/MinimumPhase.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace coldiron
{
namespace
{
constexpr int finer = 4;                                                ///< straight pieces between two grid points
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

/** The cubic through the four grid points around a place between points k and k + 1, as weights of those four. */
std::array<double, 4> cubicWeights (const std::vector<double>& u, size_t first, double place)
{
    std::array<double, 4> weights;
    for (size_t i = 0; i < 4; ++i)
    {
        weights[i] = 1.0;
        for (size_t j = 0; j < 4; ++j)
            if (j != i)
                weights[i] *= (place - u[first + j]) / (u[first + i] - u[first + j]);
    }
    return weights;
}
}

Eigen::MatrixXd minimumPhaseMatrix (const std::vector<double>& w)
{
    const size_t count = w.size();
    std::vector<double> u (count), places;
    for (size_t k = 0; k < count; ++k)
        u[k] = std::log (w[k]);
    for (size_t k = 0; k + 1 < count; ++k)
        for (int part = 0; part < finer; ++part)
            places.push_back (u[k] + part * (u[k + 1] - u[k]) / finer);
    places.push_back (u.back());

    Eigen::MatrixXd matrix = Eigen::MatrixXd::Zero (static_cast<Eigen::Index> (count), static_cast<Eigen::Index> (count));
    std::vector<double> shares (places.size());
    for (size_t i = 0; i < count; ++i)
    {
        // What each place's ln|T| adds to the phase at point i ...
        std::fill (shares.begin(), shares.end(), 0.0);
        double before = -halfRange; // the lowest slope starts at minus infinity
        for (size_t k = 0; k + 1 < places.size(); ++k)
        {
            const double next = kernelIntegral (places[k + 1] - u[i]);
            const double perSlope = (next - before) / std::numbers::pi / (places[k + 1] - places[k]);
            shares[k + 1] += perSlope;
            shares[k] -= perSlope;
            before = next;
        }
        // ... handed on to the grid points that the place is joined from.
        for (size_t k = 0; k < places.size(); ++k)
        {
            const auto row = static_cast<Eigen::Index> (i);
            if (k % finer == 0)
            {
                matrix (row, static_cast<Eigen::Index> (k / finer)) += shares[k];
                continue;
            }
            const size_t first = std::clamp<size_t> (k / finer, 1, count - 3) - 1;
            const auto weights = cubicWeights (u, first, places[k]);
            for (size_t j = 0; j < 4; ++j)
                matrix (row, static_cast<Eigen::Index> (first + j)) += shares[k] * weights[j];
        }
    }
    return matrix;
}
}
