#pragma once

#include "job/Job.h"

#include <optional>
#include <string>

namespace coldiron::cli
{
/** Checks a file of readings against the job and prints what came of it: a row for each thing noted, and where they fail the likeliest
    single faults. @param option  letter, empty for the guitar as recorded; nothing: what the file says
    @throws JobDiagnostic when the file is wrong, all faults having been said */
void checkReadingsFile (const Job&, const std::string& file, const std::optional<std::string>& option, bool json);
}
