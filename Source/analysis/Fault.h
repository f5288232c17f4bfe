#pragma once

#include "guitar/Harness.h"

#include <string>
#include <vector>

namespace coldiron
{
/** One thing that may be wrong with a harness that was soldered as the job says, or nothing. */
struct Fault
{
    enum class Kind {
        none,         ///< all is as it should be
        openLead,     ///< points: lead, lug: that joint is open
        openWire,     ///< points: lug, lug: the wire between them is off, at either end
        openJoint,    ///< points: leads of an air joint; the first has come off it
        dryLug,       ///< points: lug: what is soldered there holds together and does not reach the lug
        bridged,      ///< points: two neighbouring points of one part that touch
        swappedLeads, ///< points: two coil leads, each where the other belongs
        swappedLugs,  ///< points: two lugs of one part: what belongs on the one is on the other
        deadCoil,     ///< points: start, finish: the winding is open
        shortedCoil,  ///< points: start, finish: they touch
        wrongPot      ///< points: lug 2; `ohms` is what was fitted
    };

    Kind kind = Kind::none;
    std::vector<std::string> points; ///< full names; empty for none
    double ohms = 0.0;

    bool operator== (const Fault&) const = default;
};

/** Every single fault of a harness, none of them empty of effect on its wires and values: each landing, wire and air joint
    open; each lug with several things on it dry; neighbouring points of one part bridged; coil leads exchanged, of one
    pickup and of two; neighbouring lugs exchanged; each coil dead and shorted; each pot of another standard value.
    Joints inside a pickup are none: broken there, a coil is dead. */
std::vector<Fault> singleFaults (const Harness&);

/** The harness with that fault in it. Parts keep their names and their order. */
Harness withFault (const Harness&, const Fault&);

/** Where to look for it, the likeliest point first: lugs, and leads that hang in an air joint. */
std::vector<std::string> placesOf (const Fault&, const Harness&);
}
