#include "filter/VectorFit.h"

#include "filter/LeastSquares.h"

#include <Eigen/Eigenvalues>

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

/** The basis of real coefficients at j axis[k]: 1/(w - a), or for a pair its sum and j times its difference. A function's
    real parts come first, its imaginary parts after them. */
std::vector<std::vector<double>> basis (const std::vector<double>& axis, const Poles& poles)
{
    const size_t points = axis.size();
    std::vector<std::vector<double>> functions;
    for (const auto& pole : poles)
    {
        const double damping = -pole.real(), place = pole.imag();
        std::vector<double> first (2 * points), second (place == 0.0 ? 0 : 2 * points);
        for (size_t k = 0; k < points; ++k)
        {
            const double off = axis[k] - place, scale = 1.0 / (damping * damping + off * off);
            first[k] = damping * scale;
            first[points + k] = -off * scale;
            if (place == 0.0)
                continue;
            const double across = axis[k] + place, other = 1.0 / (damping * damping + across * across);
            second[k] = off * scale - across * other;
            second[points + k] = damping * (scale - other);
            first[k] += damping * other;
            first[points + k] -= across * other;
        }
        functions.push_back (std::move (first));
        if (place != 0.0)
            functions.push_back (std::move (second));
    }
    return functions;
}

/** Keeps poles stable and not too sharp. */
Poles withStabilityEnforced (const std::vector<Complex>& zeros, const FitTarget& target)
{
    Poles poles;
    for (const auto& zero : zeros)
    {
        if (zero.imag() < 0.0)
            continue; // its partner is there
        const double least = target.damping * std::abs (zero) + target.leastReal;
        poles.emplace_back (-std::max (std::abs (zero.real()), least), zero.imag());
    }
    std::sort (poles.begin(), poles.end(),
               [] (const Complex& a, const Complex& b)
               { return a.imag() != b.imag() ? a.imag() < b.imag() : a.real() < b.real(); });
    return poles;
}

/** Where d + sum of c phi is zero: the eigenvalues of A - b c^T / d. */
std::vector<Complex> zerosOf (const Poles& poles, const std::vector<double>& coefficients, double direct)
{
    const auto n = static_cast<Eigen::Index> (coefficients.size());
    Eigen::MatrixXd state = Eigen::MatrixXd::Zero (n, n);
    Eigen::Index row = 0;
    for (const auto& pole : poles)
    {
        const bool isPair = pole.imag() != 0.0;
        for (Eigen::Index c = 0; c < n; ++c)
            state (row, c) = -(isPair ? 2.0 : 1.0) * coefficients[static_cast<size_t> (c)] / direct;
        state (row, row) += pole.real();
        if (isPair)
        {
            state (row, row + 1) += pole.imag();
            state (row + 1, row) = -pole.imag();
            state (row + 1, row + 1) = pole.real();
        }
        row += isPair ? 2 : 1;
    }

    const Eigen::RealSchur<Eigen::MatrixXd> schur (state, false);
    const auto& t = schur.matrixT();
    std::vector<Complex> zeros;
    for (Eigen::Index i = 0; i < n; ++i)
    {
        if (i + 1 < n && t (i + 1, i) != 0.0)
        {
            const double half = 0.5 * (t (i, i) - t (i + 1, i + 1)), middle = t (i + 1, i + 1) + half;
            const double spread = std::sqrt (std::abs (half * half + t (i + 1, i) * t (i, i + 1)));
            zeros.emplace_back (middle, spread);
            zeros.emplace_back (middle, -spread);
            ++i;
        }
        else
            zeros.emplace_back (t (i, i), 0.0);
    }
    return zeros;
}

/** New poles: the zeros of sigma (w) = d + sum c phi, found with T sigma = N on the points. */
Poles relocated (const FitTarget& target, const Poles& poles)
{
    const auto phi = basis (target.axis, poles);
    const int n = columns (poles), points = static_cast<int> (target.axis.size());
    OverdeterminedSystem system (2 * points + 1, 2 * n + 2);
    double size = 0.0;
    for (int k = 0; k < points; ++k)
    {
        const double weight = target.weights[static_cast<size_t> (k)];
        const Complex value = weight * target.values[static_cast<size_t> (k)];
        size += std::norm (value);
        system.column (n)[k] = weight;
        system.column (2 * n + 1)[k] = -value.real();
        system.column (2 * n + 1)[points + k] = -value.imag();
    }
    // Relaxation: the mean of sigma's real part is one, instead of its value at infinity.
    const double scale = std::sqrt (size) / points;
    for (int c = 0; c < n; ++c)
    {
        const auto& function = phi[static_cast<size_t> (c)];
        double *plain = system.column (c), *times = system.column (n + 1 + c);
        const double* negative = system.column (2 * n + 1);
        double sum = 0.0;
        for (int k = 0; k < points; ++k)
        {
            const auto at = static_cast<size_t> (k), below = static_cast<size_t> (points + k);
            const double weight = target.weights[at], re = function[at], im = function[below];
            plain[k] = weight * re;
            plain[points + k] = weight * im;
            times[k] = re * negative[k] - im * negative[points + k];
            times[points + k] = re * negative[points + k] + im * negative[k];
            sum += re;
        }
        times[2 * points] = scale * sum;
    }
    system.column (2 * n + 1)[2 * points] = scale * points;
    system.rightHandSide()[2 * points] = scale * points;
    system.triangularize();

    // Only sigma's coefficients are wanted: the lower right corner of the triangle.
    OverdeterminedSystem corner (n + 1, n + 1);
    for (int c = 0; c <= n + 1; ++c)
    {
        const double* from = system.column (n + 1 + c) + n + 1;
        std::copy (from, from + std::min (c + 1, n + 1), corner.column (c));
    }
    auto sigma = corner.solve();
    double direct = sigma.back();
    sigma.pop_back();
    if (std::abs (direct) < 1e-8)
        direct = direct < 0.0 ? -1e-8 : 1e-8;
    return withStabilityEnforced (zerosOf (poles, sigma, direct), target);
}

RationalFit withResidues (const FitTarget& target, const Poles& poles)
{
    const auto phi = basis (target.axis, poles);
    const int n = columns (poles), points = static_cast<int> (target.axis.size());
    OverdeterminedSystem system (2 * points, n + 1);
    for (int k = 0; k < points; ++k)
    {
        const double weight = target.weights[static_cast<size_t> (k)];
        const Complex value = weight * target.values[static_cast<size_t> (k)];
        for (int c = 0; c < n; ++c)
        {
            const auto& function = phi[static_cast<size_t> (c)];
            system.column (c)[k] = weight * function[static_cast<size_t> (k)];
            system.column (c)[points + k] = weight * function[static_cast<size_t> (points + k)];
        }
        system.column (n)[k] = weight;
        system.rightHandSide()[k] = value.real();
        system.rightHandSide()[points + k] = value.imag();
    }
    const auto solved = system.solve();

    RationalFit fit;
    fit.direct = solved.back();
    fit.poles = poles;
    size_t column = 0;
    for (const auto& pole : poles)
    {
        const bool isPair = pole.imag() != 0.0;
        fit.residues.emplace_back (solved[column], isPair ? solved[column + 1] : 0.0);
        column += isPair ? 2 : 1;
    }
    return fit;
}
}

std::complex<double> RationalFit::at (double x) const
{
    double re = direct, im = 0.0;
    for (size_t p = 0; p < poles.size(); ++p)
    {
        // (a + jb)/(d + jo) = (a + jb)(d - jo)/(d^2 + o^2); the partner has -b and the other place.
        const double damping = -poles[p].real(), a = residues[p].real(), b = residues[p].imag();
        const double off = x - poles[p].imag(), scale = 1.0 / (damping * damping + off * off);
        re += (a * damping + b * off) * scale;
        im += (b * damping - a * off) * scale;
        if (poles[p].imag() == 0.0)
            continue;
        const double across = x + poles[p].imag(), other = 1.0 / (damping * damping + across * across);
        re += (a * damping - b * across) * other;
        im -= (b * damping + a * across) * other;
    }
    return { re, im };
}

RationalFit fitRational (const FitTarget& target, int order, int iterations)
{
    auto poles = startingPoles (target, order);
    for (int i = 0; i < iterations; ++i)
        poles = relocated (target, poles);
    return withResidues (target, poles);
}
}
