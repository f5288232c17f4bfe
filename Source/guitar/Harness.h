#pragma once

#include "guitar/Part.h"

#include <map>
#include <set>
#include <stdexcept>
#include <string>
#include <utility>
#include <vector>

namespace coldiron
{
/** A harness cannot be what was asked: the message says which point or part, and why. */
struct HarnessError : std::runtime_error
{
    using std::runtime_error::runtime_error;
};

/** Where a lead is: on a lug, in an air joint with other leads, or free. */
struct Landing
{
    std::string lug; ///< empty unless on a lug
    int joint = -1;  ///< >= 0 in an air joint; the number has no meaning beyond "the same"

    bool isFree() const { return lug.empty() && joint < 0; }
};

/** The capacitance of a run of wire inside the guitar, between its conductor and ground: a screened lead to a switch, the
    wire to the jack. It goes with its point: a lug, whatever is soldered there, or a lead, wherever it lands. */
struct WireRun
{
    std::string at;      ///< full name of a point
    double farads = 0.0; ///< > 0
};

/** Parts, where their leads land, and the wires between lugs: the one description of a wiring.

    Invariants: every lead of every part has a landing; a joint has two leads or more; wires join two different
    lugs, stored in order; every name exists. `ground` is the jack's sleeve. Values are immutable in use: rewires copy.
*/
class Harness
{
public:
    using Wire = std::pair<std::string, std::string>;

    void addPart (Part);                       ///< @throws HarnessError if the name exists or has a dot
    void removePart (const std::string& name); ///< lifts everything on it
    void replacePart (const std::string& name, Part, const std::map<std::string, std::string>& points);

    /** Joins the points of a chain (rules of leads and lugs: DEVELOPERS.md). */
    void solder (const std::vector<std::string>& chain);
    void unsolder (const std::string& a, const std::string& b);
    void swapLugs (const std::string& a, const std::string& b);
    void swapLeads (const std::string& a, const std::string& b);
    void lift (const std::string& lead); ///< makes it free
    void land (const std::string& lead, const Landing&);
    bool hasWire (const std::string& a, const std::string& b) const;
    void addWire (const std::string& a, const std::string& b);
    void removeWire (const std::string& a, const std::string& b);

    /** No step of the bench changes a run. It counts while its point exists; a part put in another's place takes over
        the runs of the points that are mapped to its own. @throws HarnessError for a point that does not exist */
    void addRun (const std::string& at, double farads);
    std::vector<WireRun> runs() const; ///< those whose points exist

    const std::vector<Part>& parts() const { return partList; }
    const Part* find (const std::string& part) const;
    const Part& jack() const; ///< @throws HarnessError where there is none

    /** The full name of a point: `ground` becomes the jack's sleeve. @throws HarnessError naming what exists. */
    std::string point (const std::string& name) const;
    bool isLead (const std::string& fullPoint) const;
    const Part& partOf (const std::string& fullPoint) const;
    std::vector<std::string> allPoints() const; ///< in the order of parts

    const std::map<std::string, Landing>& landings() const { return landingOf; }
    const std::set<Wire>& wires() const { return wireSet; }
    std::vector<std::string> leadsOn (const std::string& lug) const;
    std::vector<std::string> leadsInJoint (int joint) const;
    std::vector<std::string> lugsWiredTo (const std::string& lug) const;

    /** The same parts, landings and wires; the two ends of a capacitor, resistor or inductor are interchangeable. Runs of
        wire are not compared. */
    bool sameAs (const Harness&) const;

private:
    std::vector<Part> partList;
    std::map<std::string, Landing> landingOf;
    std::set<Wire> wireSet;
    std::vector<WireRun> runList; ///< also of points that are gone: the part may be fitted again
    int nextJoint = 0;

    void tidyJoints();
    bool hasPoint (const std::string& fullPoint) const;
};

/** Splits "neck.north.start" into "neck" and "north.start". */
std::pair<std::string, std::string> splitPoint (const std::string& fullPoint);
}
