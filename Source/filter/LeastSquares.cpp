#include "filter/LeastSquares.h"

#include "dsp/SimdKernels.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace coldiron
{
using simd::lanes;

OverdeterminedSystem::OverdeterminedSystem (int rows, int unknowns)
    : rowCount (rows), unknownCount (unknowns), stride (static_cast<std::size_t> ((rows + lanes - 1) / lanes * lanes)),
      data (stride * static_cast<std::size_t> (unknowns + 1)), reflector (stride)
{
}

void OverdeterminedSystem::reflect (int c)
{
    const auto row = static_cast<std::size_t> (c), from = row / lanes * lanes, groups = (stride - from) / lanes;
    double* own = column (c);
    std::copy (own + from, own + stride, reflector.begin() + static_cast<std::ptrdiff_t> (from));
    std::fill (reflector.begin() + static_cast<std::ptrdiff_t> (from), reflector.begin() + c, 0.0);
    const double square = simd::sumOfSquares (reflector.data() + from, groups);
    if (square == 0.0)
        return;
    const double head = own[row], length = head < 0.0 ? std::sqrt (square) : -std::sqrt (square);
    reflector[row] = head - length;
    own[row] = length;
    simd::reflectColumns (reflector.data() + from, 1.0 / (square - length * head), column (c + 1) + from, stride,
                          unknownCount - c, groups);
}

void OverdeterminedSystem::triangularize()
{
    for (int c = 0; c < unknownCount; ++c)
        reflect (c);
}

std::vector<double> OverdeterminedSystem::solve()
{
    constexpr double undecided = 1e-14; // of a column's length, which scaling made one
    const auto n = static_cast<std::size_t> (unknownCount);
    std::vector<double> scales (n);
    for (int c = 0; c < unknownCount; ++c)
    {
        const double length = std::sqrt (simd::sumOfSquares (column (c), stride / lanes));
        scales[static_cast<std::size_t> (c)] = length;
        if (length > 0.0)
            std::for_each (column (c), column (c) + stride, [length] (double& x) { x /= length; });
    }

    std::vector<int> order (n);
    std::iota (order.begin(), order.end(), 0);
    int rank = 0;
    for (; rank < unknownCount; ++rank)
    {
        int longest = rank;
        double most = -1.0;
        for (int c = rank; c < unknownCount; ++c)
        {
            double square = 0.0;
            if (const int whole = (rank + lanes - 1) / lanes * lanes; whole < static_cast<int> (stride))
                square = simd::sumOfSquares (column (c) + whole, (stride - static_cast<std::size_t> (whole)) / lanes);
            for (int r = rank; r % lanes != 0; ++r)
                square += column (c)[r] * column (c)[r];
            if (square > most)
            {
                most = square;
                longest = c;
            }
        }
        if (most < undecided * undecided)
            break;
        if (longest != rank)
        {
            std::swap_ranges (column (rank), column (rank) + stride, column (longest));
            std::swap (order[static_cast<std::size_t> (rank)], order[static_cast<std::size_t> (longest)]);
        }
        reflect (rank);
    }

    std::vector<double> solution (n, 0.0);
    for (int c = rank - 1; c >= 0; --c)
    {
        double value = rightHandSide()[c];
        for (int k = c + 1; k < rank; ++k)
            value -= column (k)[c] * solution[static_cast<std::size_t> (order[static_cast<std::size_t> (k)])];
        solution[static_cast<std::size_t> (order[static_cast<std::size_t> (c)])] = value / column (c)[c];
    }
    for (std::size_t c = 0; c < n; ++c)
        solution[c] = scales[c] > 0.0 ? solution[c] / scales[c] : 0.0;
    return solution;
}
}
