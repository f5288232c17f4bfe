#pragma once

#include "plugin/session/JobTree.h"

#include <array>
#include <map>

namespace coldiron
{
/** A job is the same years later and on another machine only if the presets it names travel with it.
    Key "guitars/NAME", value the file's text; presets that presets name are in it too. */
std::map<std::string, std::string> presetsNamedBy (const JobTree& job, const PresetFolders&);

/** Writes them as a preset folder of its own under the system's temporary folder.
    @return the folder; empty when a name is no plain name or nothing could be written */
std::filesystem::path unpackPresets (const std::map<std::string, std::string>&);
}
