#pragma once

#include "coilfit/CoilFit.h"
#include "job/Job.h"

#include <optional>
#include <string>

namespace coldiron
{
/** A file of bench readings of one pickup (presets/FITTING.md). */
struct ReadingsFile
{
    std::string preset; ///< the generic pickup it starts from
    Pickup generic;     ///< that pickup
    std::string name;   ///< the fitted one's, to people; empty: none given
    PickupReadings readings;
};

/** Reads the file and the pickup preset it names. Every fault of both is added; empty when there are any. */
std::optional<ReadingsFile> readReadings (const std::filesystem::path&, const PresetFolders&, Diagnostics&);
std::optional<ReadingsFile> readReadingsText (const std::string& text, const std::string& file, const PresetFolders&,
                                              Diagnostics&);

/** The pickup that a preset's text describes. Faults name `file`. */
std::optional<Pickup> readPickupText (const std::string& text, const std::string& file, const PresetFolders&, Diagnostics&);
}
