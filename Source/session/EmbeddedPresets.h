#pragma once

#include "session/JobTree.h"

#include <map>

namespace coldiron
{
/** A job is the same years later and on another machine only if the presets it names travel with it.
    Key "guitars/NAME", value the file's text; presets that presets name are in it too. */
std::map<std::string, std::string> presetsNamedBy (const JobTree& job, const PresetFolders&);

/** The presets kept in a state, for PresetFolders::carried; what is none is left out. */
std::map<std::string, std::string> presetsKeptIn (const JobTree& state);
}
