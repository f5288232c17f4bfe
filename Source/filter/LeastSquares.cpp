#include "filter/LeastSquares.h"

#include "dsp/Simd.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace coldiron
{
namespace
{
constexpr int sumLanes = 4;
using SumLanes = double __attribute__ ((vector_size (sumLanes * sizeof (double)), aligned (sizeof (double))));

double sumOf (const SumLanes& v) { return (v[0] + v[2]) + (v[1] + v[3]); }

const SumLanes* lanesAt (const double* p) { return reinterpret_cast<const SumLanes*> (p); }
SumLanes* lanesAt (double* p) { return reinterpret_cast<SumLanes*> (p); }

double squares (const double* values, std::size_t groups)
{
    SumLanes sum = {};
    for (std::size_t g = 0; g < groups; ++g)
        sum += lanesAt (values)[g] * lanesAt (values)[g];
    return sumOf (sum);
}

/** Takes from each of the columns its share along the mirror: column -= scale (mirror . column) mirror. */
COLDIRON_SIMD void reflectColumns (const double* reflector, double scale, double* first, std::size_t stride, int columns,
                                   std::size_t groups)
{
    const auto* m = lanesAt (reflector);
    int c = 0;
    for (; c + 1 < columns; c += 2)
    {
        auto *a = lanesAt (first + static_cast<std::size_t> (c) * stride),
             *b = lanesAt (first + static_cast<std::size_t> (c + 1) * stride);
        SumLanes sumA = {}, sumB = {};
        for (std::size_t g = 0; g < groups; ++g)
        {
            sumA += m[g] * a[g];
            sumB += m[g] * b[g];
        }
        const double shareA = scale * sumOf (sumA), shareB = scale * sumOf (sumB);
        for (std::size_t g = 0; g < groups; ++g)
        {
            a[g] -= shareA * m[g];
            b[g] -= shareB * m[g];
        }
    }
    if (c < columns)
    {
        auto* a = lanesAt (first + static_cast<std::size_t> (c) * stride);
        SumLanes sum = {};
        for (std::size_t g = 0; g < groups; ++g)
            sum += m[g] * a[g];
        const double share = scale * sumOf (sum);
        for (std::size_t g = 0; g < groups; ++g)
            a[g] -= share * m[g];
    }
}
}

OverdeterminedSystem::OverdeterminedSystem (int rows, int unknowns)
    : rowCount (rows), unknownCount (unknowns), stride (static_cast<std::size_t> ((rows + sumLanes - 1) / sumLanes * sumLanes)),
      data (stride * static_cast<std::size_t> (unknowns + 1)), reflector (stride)
{
}

void OverdeterminedSystem::reflect (int c)
{
    const auto row = static_cast<std::size_t> (c), from = row / sumLanes * sumLanes, groups = (stride - from) / sumLanes;
    double* own = column (c);
    std::copy (own + from, own + stride, reflector.begin() + static_cast<std::ptrdiff_t> (from));
    std::fill (reflector.begin() + static_cast<std::ptrdiff_t> (from), reflector.begin() + c, 0.0);
    const double square = squares (reflector.data() + from, groups);
    if (square == 0.0)
        return;
    const double head = own[row], length = head < 0.0 ? std::sqrt (square) : -std::sqrt (square);
    reflector[row] = head - length;
    own[row] = length;
    reflectColumns (reflector.data() + from, 1.0 / (square - length * head), column (c + 1) + from, stride, unknownCount - c,
                    groups);
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
        const double length = std::sqrt (squares (column (c), stride / sumLanes));
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
            if (const int whole = (rank + sumLanes - 1) / sumLanes * sumLanes; whole < static_cast<int> (stride))
                square = squares (column (c) + whole, (stride - static_cast<std::size_t> (whole)) / sumLanes);
            for (int r = rank; r % sumLanes != 0; ++r)
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
