#pragma once

#include "coilfit/CoilFitShape.h"

#include <Eigen/Dense>

namespace coldiron
{
/** How far a pickup on the bench is from its readings. */
class FitResiduals
{
public:
    FitResiduals (const SeriesPath&, const PickupReadings&);

    /** One to two numbers a reading, each in standard deviations of its kind. */
    Eigen::VectorXd of (const Pickup&) const;

    /** The same by reading, with what was read and what this pickup would read. */
    std::vector<FittedReading> table (const Pickup&) const;

    int numSweeps() const { return (int)readings.sweeps.size(); }

private:
    const SeriesPath& path;
    const PickupReadings& readings;

    struct Point
    {
        FittedReading shown;
        double signedMisfit = 0.0;
        int sweep = -1;
    };

    std::vector<Point> points (const Pickup&) const;
};
}
