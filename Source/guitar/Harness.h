#pragma once

#include "guitar/Part.h"
#include "guitar/SolderPoint.h"

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
    SolderPoint lug; ///< empty unless on a lug
    int joint = -1;  ///< >= 0 in an air joint; the number has no meaning beyond "the same"

    bool isFree() const { return lug.empty() && joint < 0; }
};

/** The capacitance of a run of wire inside the guitar, between its conductor and ground: a screened lead to a switch, the
    wire to the jack. It goes with its point: a lug, whatever is soldered there, or a lead, wherever it lands. */
struct WireRun
{
    SolderPoint at;
    double farads = 0.0; ///< > 0
};

/** Parts, where their leads land, and the wires between lugs: the one description of a wiring.

    Invariants: every lead of every part has a landing; a joint has two leads or more; wires join two different
    lugs, stored in order; every name exists. `ground` is the jack's sleeve. Values are immutable in use: rewires copy.
*/
class Harness
{
public:
    using Wire = std::pair<SolderPoint, SolderPoint>;

    void addPart (Part);                       ///< @throws HarnessError if the name exists or has a dot
    void removePart (const std::string& name); ///< lifts everything on it
    void replacePart (const std::string& name, Part, const std::map<std::string, std::string>& points);

    /** Joins the points of a chain (rules of leads and lugs: DEVELOPERS.md). */
    void solder (const std::vector<SolderPoint>& chain);
    void unsolder (const SolderPoint& a, const SolderPoint& b);
    void swapLugs (const SolderPoint& a, const SolderPoint& b);
    void swapLeads (const SolderPoint& a, const SolderPoint& b);
    void lift (const SolderPoint& lead); ///< makes it free
    void land (const SolderPoint& lead, const Landing&);
    bool hasWire (const SolderPoint& a, const SolderPoint& b) const;
    void addWire (const SolderPoint& a, const SolderPoint& b);
    void removeWire (const SolderPoint& a, const SolderPoint& b);

    /** No step of the bench changes a run. It counts while its point exists; a part put in another's place takes over
        the runs of the points that are mapped to its own. @throws HarnessError for a point that does not exist */
    void addRun (const SolderPoint& at, double farads);
    std::vector<WireRun> runs() const; ///< those whose points exist

    const std::vector<Part>& parts() const { return partList; }
    const Part* find (const std::string& part) const;
    const Part& jack() const; ///< @throws HarnessError where there is none

    /** The point itself, which exists; `ground` becomes the jack's sleeve. @throws HarnessError naming what exists. */
    SolderPoint point (const SolderPoint&) const;
    bool isLead (const SolderPoint&) const;
    const Part& partOf (const SolderPoint&) const;
    std::vector<SolderPoint> allPoints() const; ///< in the order of parts

    const std::map<SolderPoint, Landing>& landings() const { return landingOf; }
    const std::set<Wire>& wires() const { return wireSet; }
    std::vector<SolderPoint> leadsOn (const SolderPoint& lug) const;
    std::vector<SolderPoint> leadsInJoint (int joint) const;
    std::vector<SolderPoint> lugsWiredTo (const SolderPoint& lug) const;

    /** The same parts, landings and wires; the two ends of a capacitor, resistor or inductor are interchangeable. Runs of
        wire are not compared. */
    bool sameAs (const Harness&) const;

private:
    std::vector<Part> partList;
    std::map<SolderPoint, Landing> landingOf;
    std::set<Wire> wireSet;
    std::vector<WireRun> runList; ///< also of points that are gone: the part may be fitted again
    int nextJoint = 0;

    void tidyJoints();
    bool hasPoint (const SolderPoint&) const;
};

/** For the layers that still speak in text. */
inline std::pair<std::string, std::string> splitPoint (const SolderPoint& point) { return { point.part(), point.terminal() }; }
}
