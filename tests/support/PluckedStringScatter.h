#pragma once

#include <cmath>
#include <cstdint>

namespace coldiron::support
{
/** A small generator of our own, so that a seed gives the same take with every library. */
class Scatter
{
public:
    explicit Scatter (uint64_t seed) : state (seed) {}

    /** 0 <= x < 1 */
    double uniform()
    {
        state += 0x9e3779b97f4a7c15ull;
        uint64_t z = state;
        z = (z ^ (z >> 30)) * 0xbf58476d1ce4e5b9ull;
        z = (z ^ (z >> 27)) * 0x94d049bb133111ebull;
        return static_cast<double> ((z ^ (z >> 31)) >> 11) * 0x1.0p-53;
    }

    double between (double low, double high) { return low + (high - low) * uniform(); }

    /** Mean 0, deviation 1. */
    double normal()
    {
        const double radius = std::sqrt (-2.0 * std::log (1.0 - uniform()));
        return radius * std::cos (2.0 * 3.14159265358979323846 * uniform());
    }

    /** A factor whose decibels scatter by this deviation. */
    double factor (double deviationDb) { return std::pow (10.0, deviationDb * normal() / 20.0); }

private:
    uint64_t state;
};
}
