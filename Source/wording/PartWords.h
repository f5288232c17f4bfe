#pragma once

#include "guitar/Harness.h"

#include <string>

namespace coldiron::wording
{
/** A part's name as a person reads it: "neck-volume" is "Neck volume", the pickup "neck" "Neck pickup". */
std::string partTitle (const Part&);
std::string pickupTitle (const std::string& name);
std::string title (std::string name); ///< of any other part

/** The value under the name: "500 kΩ log", "22 nF", "8.2 kΩ"; empty where there is none. */
std::string partValue (const Part&);

/** A quantity with an SI prefix, three figures: (22e-9, "F") is "22 nF". */
std::string quantity (double value, const std::string& unit);

/** "Bridge volume, lug 2", "Neck pickup, north start", "Selector, out": a point as a person says it. */
std::string point (const Harness&, const std::string& point);
}
