#pragma once

#include "guitar/Harness.h"

#include <string>
#include <utility>
#include <vector>

namespace coldiron
{
/** One end of a wire or lead at the joint that a step heats. */
struct JointEnd
{
    std::pair<std::string, std::string> pair; ///< the two solder points, as in solderPairs()
    std::string other;                        ///< the point at the other end
    std::string movedFrom; ///< solder: where this end came off; empty: it is a new wire or a lead that hung free
    bool again = false;    ///< it was there before, and hung on the part that was replaced
    bool isHooked = false; ///< solder: its link was put through the lug out of the guitar

    bool operator== (const JointEnd&) const = default;
};

/** One thing to do at the bench. */
struct BenchStep
{
    enum class Kind {
        unsolder, ///< heat one joint; the ends come off
        takeOut,  ///< a part leaves the guitar; whatever hangs on it comes off first
        prepare,  ///< a new part out of the guitar: ring it out, put its links through the lugs
        mount,    ///< it goes into the guitar
        solder,   ///< heat one joint with everything that goes there in it
        insulate  ///< a lead that hangs free from now on
    };

    Kind kind = Kind::solder;
    int number = 0;                 ///< unsolder, solder: from 1 in the order of work, each kind for itself
    std::string at;                 ///< unsolder, solder: the lug, or the first lead of a joint in the air; insulate: the lead
    std::vector<std::string> parts; ///< takeOut, prepare, mount: names; a push-pull is a pot and its switch
    std::vector<JointEnd> ends; ///< unsolder, solder: what hangs there; takeOut: what comes off it; prepare: links put through
    bool isOutOfGuitar = false; ///< solder: before the part is mounted
};

/** The work that turns one harness into the other, in the order of a good hand: what comes off and out, new parts made ready
    out of the guitar, mounted, then grounds, pickup leads and all else. One lug is heated once: what shares a lug shares a step.
    A replaced part gives up every wire on it, ground runs too. */
struct BenchPlan
{
    std::vector<BenchStep> steps;
    std::vector<Part> newParts; ///< fitted, or put in another's place, as they shall be
    int toOpen = 0, toMake = 0; ///< joints that are heated for it
};

BenchPlan planBench (const Harness& before, const Harness& after);

/** The plan done step by step on the harness as it was. The proof of a plan: it is sameAs (after). @throws HarnessError */
Harness carriedOut (const Harness& before, const BenchPlan&);
}
