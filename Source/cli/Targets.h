#pragma once

#include "job/KeptFiles.h"

namespace coldiron::cli
{
/** Asked before anything is written. "-" is standard output and always fine.
    @param replaces  whether a regular file that is there already may be written over
    @returns one line without the target's name; empty: it may be written */
std::string whyNotWritten (const std::string& target, const std::vector<KeptFile>&, bool replaces);

/** @throws JobDiagnostic in one line where whyNotWritten() says anything */
void checkTarget (const std::string& target, const std::vector<KeptFile>&, bool replaces);

/** The same for files of sound in a folder, which take the place of an earlier rendering. @throws JobDiagnostic */
void checkTakeTargets (const std::filesystem::path& folder, const std::vector<std::string>& names, const std::vector<KeptFile>&);
}
