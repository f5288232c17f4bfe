#pragma once

#include "analysis/JackReading.h"
#include "analysis/OhmTable.h"

#include <string>

namespace coldiron::wording
{
/** "open", "short", "a buffer, no reading"; empty where a meter shows ohms. */
std::string noOhms (const OhmReading&);

/** Why a reading at the jack cannot be a pickup's; empty where it can. */
std::string jackRefusal (const LeadsReading&, const std::string& pickup);
}
