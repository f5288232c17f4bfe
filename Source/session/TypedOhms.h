#pragma once

#include "session/JobEdit.h"

#include <filesystem>
#include <string>

namespace coldiron
{
class JobEditor;

/** The pickup's DC resistance is known, at about 20 C: the rest is scaled from its generic pickup and it is marked `from ohms`
    (coilfit/CoilFit); beyond 20 % from it the generic pickup nearest to these ohms is taken (job/NearestGeneric), and where that
    is farther than 20 % too the mark stays `assumed`. A measurement it had is given up. @param ohms  across its two leads, all its coils in series */
JobEdit ohmsEdit (const JobEditor&, const std::string& part, double ohms);

/** The pickup from a file: bench readings (CSV, presets/FITTING.md), fitted; or a pickup preset, as `coldiron fit` writes. */
JobEdit pickupFileEdit (const JobEditor&, const std::string& part, const std::filesystem::path&);

/** Whether a file is one of those, by its ending and first key. */
bool isPickupFile (const std::filesystem::path&);
}
