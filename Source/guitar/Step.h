#pragma once

#include "guitar/Harness.h"
#include "guitar/PointName.h"

#include <map>
#include <optional>
#include <string>
#include <vector>

namespace coldiron
{
/** One bench step with every name filled in; points may still be roles (`@bridge.hot`, `volume.out`). */
struct Step
{
    enum class Kind { unsolder, solder, move, swap, fit, replace, remove };

    Kind kind = Kind::solder;
    std::vector<PointName> points;               ///< unsolder, swap: two; solder: two or more; move: the one moved
    PointName from, to, leaving;                 ///< move; `from` and `leaving` may be empty
    std::string part;                            ///< fit, replace, remove: the part's name
    std::optional<Part> as;                      ///< fit, replace
    std::map<std::string, std::string> pointMap; ///< replace: old point -> new point, without the part's name
    std::vector<std::string> leftOut;            ///< replace: keys of `as` that were not said; a pot in a pot's place keeps them
    int line = 0;                                ///< in the file it came from; 0 unknown
};

/** The harness after one step. @throws HarnessError saying what could not be done and why. */
Harness applyStep (const Harness&, const Step&);

/** The steps, all of primitive kinds, that turn one harness into the other: applyStep (from, difference (from, to))
    is sameAs (to). Order: unsolder, remove, replace, fit, solder. */
std::vector<Step> difference (const Harness& from, const Harness& to);

/** A step in words for the bench, e.g. "unsolder bridge.north.finish from bridge.south.finish". */
std::string inWords (const Step&);
}
