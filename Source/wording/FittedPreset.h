#pragma once

#include "job/Readings.h"

#include <string>

namespace coldiron::wording
{
/** The fitted pickup as a preset file: what differs from the generic one, which it is "like", and how it was found, as
    comments. Numbers with five digits. readPickupText() is the way back. */
std::string pickupPresetText (const ReadingsFile&, const CoilFit&);
}
