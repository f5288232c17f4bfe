#pragma once

#include "job/Library.h"
#include "job/Reader.h"

#include <optional>
#include <set>
#include <string>
#include <vector>

// Readers of one shape each. They add every fault they find and give back the best they could make of it; callers look
// at the list of faults before they use anything.

namespace coldiron
{
Pickup readPickup (const Json&, Diagnostics&);
SwitchType readSwitch (const Json&, Diagnostics&);

/** A name (preset, "linear", "log-15", "reverse-log-15") or an object. */
Taper readTaper (const Json&, Library&);

/** The law that a name stands for by itself. */
std::optional<Taper> taperByName (const std::string&);

/** @param inPlace  the part takes another's place, so a pickup may leave "bridge_mm" away */
std::optional<Part> readPart (const Json&, const std::string& name, bool inPlace, Library&);

std::optional<Guitar> readGuitar (const Resolved&, Library&);

/** A knob 0..10 or a lever's position each; faults name the controls there are. */
Setting readSetting (const Json*, const Harness&, Diagnostics&);

OutputChainChoice readOutputChain (const Json&, const std::filesystem::path& folder, Diagnostics&);
Load readLoad (const Json&, const Load& standard, Diagnostics&);

/** A rewire as written where it is used: { "use": ..., ask: value, ... }. Not tried yet on the guitar, which only gives
    the values that defaults are taken from. */
std::optional<RewireUse> readRewireUse (const Json& entry, const Harness&, Library&);

std::optional<Step> readStep (const Json&, Library&);
std::optional<RewireInfo> readRewireInfo (const Resolved&, Library&);

/** @returns why the rewire cannot be filled in so on this harness; empty: it can */
std::string whyNotFilled (const RewireUse&, const Harness&);

/** The lead joined inside a pickup that a name stands for or asks the landing of; nothing where it is another point. */
std::optional<SolderPoint> leadInside (const Harness&, const PointName&);

/** What no wiring may lose: its jack, the positions of its switches, every joint inside a pickup with nothing else on it,
    and controls of one name that are of one kind; and no more parts and positions than limits:: says. @returns what is wrong; empty: nothing */
std::string whyUnsound (const Harness&);

/** Every string that a coil says it hears is a string of the guitar. @returns what is wrong; empty: nothing */
std::string whyUnheard (const Harness&, const std::vector<GuitarString>&);

std::optional<Job> readJobTree (const Json&, const std::filesystem::path& folder, Library&);
}
