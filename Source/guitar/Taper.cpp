#include "guitar/Taper.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>

namespace coldiron
{
namespace
{
double exponentialBase (double midTravel)
{
    if (! (midTravel > 0.0 && midTravel < 1.0) || midTravel == 0.5)
        throw std::invalid_argument ("the share at half travel lies between 0 and 1 and is not a half");
    const double root = 1.0 / midTravel - 1.0;
    return root * root;
}

double exponential (double base, double t) { return (std::pow (base, t) - 1.0) / (base - 1.0); }
}

Taper::Taper() : name ("linear") {}

Taper Taper::linear() { return {}; }

Taper Taper::logarithmic (double midTravel)
{
    Taper taper;
    taper.law = Law::logarithmic;
    taper.base = exponentialBase (midTravel);
    taper.name = "log-" + std::to_string (std::lround (midTravel * 100.0));
    return taper;
}

Taper Taper::reverseLogarithmic (double midTravel)
{
    Taper taper = logarithmic (midTravel);
    taper.law = Law::reverse;
    taper.name = "reverse-" + taper.name;
    return taper;
}

Taper Taper::fromPoints (std::vector<std::pair<double, double>> points)
{
    const auto rises = [] (const auto& a, const auto& b) { return b.first <= a.first || b.second < a.second; };
    if (points.size() < 2 || points.front() != std::pair (0.0, 0.0) || points.back() != std::pair (1.0, 1.0)
        || std::adjacent_find (points.begin(), points.end(), rises) != points.end())
        throw std::invalid_argument ("a taper starts at 0, 0, ends at 1, 1 and never falls");

    Taper taper;
    taper.law = Law::points;
    taper.table = std::move (points);
    taper.name = "points";
    return taper;
}

double Taper::share (double travel) const
{
    const double t = std::clamp (travel, 0.0, 1.0);
    switch (law)
    {
    case Law::linear: return t;
    case Law::logarithmic: return exponential (base, t);
    case Law::reverse: return 1.0 - exponential (base, 1.0 - t);
    case Law::points: break;
    }
    const auto above =
        std::lower_bound (table.begin(), table.end(), t, [] (const auto& point, double value) { return point.first < value; });
    if (above == table.begin())
        return table.front().second;
    const auto& [x1, y1] = *above;
    const auto& [x0, y0] = *std::prev (above);
    return y0 + (y1 - y0) * (t - x0) / (x1 - x0);
}
}
