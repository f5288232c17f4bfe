#pragma once

#include "job/Job.h"
#include "session/RewireChoice.h"

#include <nlohmann/json.hpp>

namespace coldiron
{
/** A job's text as a tree that keeps the order of keys; comments are lost once something is edited. Throws nothing for
    text that readJobText() accepts. */
using JobTree = nlohmann::ordered_json;

/** Objects and lists more than 64 within each other, counted without recursion: a crafted text must not exhaust the stack. */
bool isTooDeep (const std::string& text);
JobTree parseJobTree (const std::string& text); ///< null for what is no JSON, or too deep
std::string jobTreeText (const JobTree&);

/** Sets or (with a discarded value) removes what stands at a pointer; makes objects on the way.
    @return empty, or why not */
std::string setAt (JobTree&, const std::string& pointer, const JobTree& value, bool removes);

/** Writes a setting: what the object already names, and what differs from the base. */
void writeSetting (JobTree& owner, const Setting& now, const Setting& base, const Harness&);

/** A rewire as it stands in a job. */
JobTree asTree (const RewireChoice&);
RewireChoice asChoice (const JobTree& rewire);

/** A setting with every control of the harness named. */
Setting fullSetting (const Harness&, const Setting&);
}
