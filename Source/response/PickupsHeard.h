#pragma once

#include "response/CircuitConfig.h"

#include <set>
#include <string>

namespace coldiron
{
/** Pickups of which a coil comes through at 500 Hz within 30 dB of the strongest; empty where all is silent. */
std::set<std::string> pickupsHeard (const CircuitConfig&);
}
