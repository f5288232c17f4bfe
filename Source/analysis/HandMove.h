#pragma once

#include "guitar/Step.h"

#include <string>
#include <vector>

namespace coldiron
{
/** One thing done with the iron by hand: a joint opened, made, or moved. */
struct HandMove
{
    std::string held; ///< what stays in the hand: a lead, or the lug at the wire's other end; where a new wire begins
    std::string from; ///< where it comes off; empty: nothing is opened, a new wire is drawn out of `held`
    std::string to;   ///< where it is soldered; empty: it is left off (a lead free, a wire removed)

    /** The bench steps, `unsolder` before `solder`; none where nothing would be done. */
    std::vector<Step> steps() const;
};

/** A joint at a point that could be opened there: what is held, and the point itself. */
struct HandJoint
{
    std::string held, from;
};

/** What can be taken off at a point: leads on it, wires to other lugs; a lead's own landing. Without joints inside a
    pickup. In the order of the parts. */
std::vector<HandJoint> jointsAt (const Harness&, const std::string& point);

/** Why a move cannot be done. */
struct HandRefusal
{
    enum class Reason {
        inside,   ///< a lead is joined inside the pickup: `detail` is its point
        toItself, ///< a wire from a point to itself
        wiring    ///< the wiring does not allow it: `detail` is what its reader says
    };
    Reason reason = Reason::wiring;
    std::string detail;
};

class HandMoveError : public HarnessError
{
public:
    explicit HandMoveError (HandRefusal why) : HarnessError (why.detail), refusal (std::move (why)) {}

    const HandRefusal refusal;
};

/** The refusal in an error that a move or a step threw. */
HandRefusal refusalOf (const HarnessError&);

/** The harness after the move. @throws HandMoveError or HarnessError where it cannot be: no such joint, a wire to itself,
    a joint inside a pickup. */
Harness applyStep (const Harness&, const HandMove&);
}
