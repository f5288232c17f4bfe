#pragma once

#include "analysis/Changes.h"
#include "paper/Anatomy.h"

#include <utility>
#include <vector>

namespace coldiron
{
/** How wide the plan is laid out. */
struct PlanStyle
{
    bool blocksBeside = false; ///< a push-pull's block left of its pot, not above
    bool pickupsClose = false; ///< one under the other as close as they go, not each beside its pots
    int spread = 0;            ///< more between columns
    int gaps = 0;              ///< how many there were, told back
};

/** Every part of both harnesses in its place: columns follow the signal, rows the pickups, neck first. Parts that stay
    are placed as `before` has them, so that the options of one guitar look alike.
    @param aspect  width over height of the page to fill: a push-pull's block then stands beside its pot where that makes
                   the drawing larger, and columns move apart. 0: blocks above, columns close */
std::vector<PlacedPart> placeParts (const Harness& before, const Harness& after, const Changes&, double aspect = 0.0);

/** The same in one style. */
std::vector<PlacedPart> placeAll (const Harness& before, const Harness& after, const Changes&, PlanStyle&);

/** Width and height of all parts with their margins and the legend, in drawing units. */
std::pair<int, int> sizeOf (const std::vector<PlacedPart>&, bool withLegend);
}
