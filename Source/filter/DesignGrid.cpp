#include "filter/DesignGrid.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace coldiron
{
double warped (double hz, double sampleRate) { return std::tan (std::numbers::pi * hz / sampleRate); }

std::vector<double> designGrid (double sampleRate)
{
    std::vector<double> grid;
    const double top = 0.492 * sampleRate;
    const auto add = [&grid] (double from, double to, double perOctave)
    {
        const int steps = std::max (1, static_cast<int> (std::ceil (perOctave * std::log2 (to / from))));
        for (int i = 0; i < steps; ++i)
            grid.push_back (from * std::pow (to / from, static_cast<double> (i) / steps));
    };
    const double dense = std::min (23e3, 0.36 * sampleRate);
    add (8.0, 800.0, 12.0);
    add (800.0, dense, 40.0);
    add (dense, top, 24.0);
    grid.push_back (top);
    return grid;
}
}
