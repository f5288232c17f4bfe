#pragma once

#include "guitar/Harness.h"

#include <set>
#include <string>
#include <utility>
#include <vector>

namespace coldiron
{
/** Two solder points joined by a wire, a landing or an air joint; the names in order. */
using SolderPair = std::pair<std::string, std::string>;

/** Every pair of a harness: wires between lugs, leads on lugs, leads in air joints (a chain in the order of parts). */
std::vector<SolderPair> solderPairs (const Harness&);

/** What a rewire changes, as a difference of pairs. */
struct Changes
{
    struct Made
    {
        SolderPair pair;
        int number = 0;      ///< from 1, by pickup, then in the order of the parts
        std::string resting; ///< the end that was soldered before and stays; empty: none
    };

    struct Opened
    {
        SolderPair pair;
        std::string stubAt; ///< the end left behind where the other end moved; empty: the whole wire goes
    };

    std::vector<SolderPair> stays;
    std::vector<Made> made;
    std::vector<Opened> opened;
    std::set<std::string> fitted, removed, replaced; ///< names of parts

    bool nothing() const { return made.empty() && opened.empty() && fitted.empty() && removed.empty() && replaced.empty(); }

    /** Solder points that get a new joint: lugs and air joints, each counted once however many wires meet there. */
    int jointsToMake (const Harness& after) const;
    int jointsToOpen (const Harness& before) const;
};

Changes changesBetween (const Harness& before, const Harness& after);
}
