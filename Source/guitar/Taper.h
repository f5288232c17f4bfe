#pragma once

#include <string>
#include <utility>
#include <vector>

namespace coldiron
{
/** The share of a pot's track between lug 1 and the wiper, over travel 0 to 1.

    linear; log-M and reverse-log-M: r(t) = (a^t - 1)/(a - 1), a = (1/m - 1)^2 with m = M % at mid travel
    (CHECKS of the exponential law are in tests/guitar); or points, joined by straight lines. */
class Taper
{
public:
    Taper(); ///< linear

    static Taper linear();
    /** @param midTravel  r at half travel, 0 < m < 1, not 0.5 */
    static Taper logarithmic (double midTravel);
    static Taper reverseLogarithmic (double midTravel);
    /** @param points  (travel, share) from (0, 0) to (1, 1), both rising; throws std::invalid_argument otherwise */
    static Taper fromPoints (std::vector<std::pair<double, double>> points);

    double share (double travel) const; ///< travel is clamped to 0..1

    std::string name;

private:
    enum class Law { linear, logarithmic, reverse, points };
    Law law = Law::linear;
    double base = 1.0;
    std::vector<std::pair<double, double>> table;
};
}
