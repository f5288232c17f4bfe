#pragma once

#include "session/JobEdit.h"
#include "session/JobTree.h"

#include <utility>
#include <vector>

namespace coldiron
{
class JobEditor;

/** The job's own guitar with something changed: a preset's name becomes { "like": NAME, ... }, an object keeps all it
    says. @param changes  pointers inside the guitar ("/parts/volume/pot") and what stands there from now on */
JobEdit guitarEdit (const std::string& jobText, const std::vector<std::pair<std::string, JobTree>>& changes,
                    const std::string& name);

/** Another pickup preset in that place. Its slant is the guitar's and stays, as do the colours of the leads. */
JobEdit pickupChoice (const JobEditor&, const std::string& part, const std::string& preset);

/** The values of a pickup changed, whatever it is like. @param values  "known", "coils" and the like, merged in */
JobEdit pickupEdit (const JobEditor&, const std::string& part, const JobTree& values, const std::string& name);

/** What the pickup of that place is before anything was typed or measured: its preset, read; the present one where it
    has none. */
Pickup genericPickup (const JobEditor&, const std::string& part);

/** The pickup is now one described by a file's text (a preset that a fit wrote, comments and all). */
JobEdit pickupFromText (const JobEditor&, const std::string& part, const std::string& presetText, const std::string& file);
}
