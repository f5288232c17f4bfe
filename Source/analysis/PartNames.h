#pragma once

#include "guitar/Harness.h"

#include <string>

namespace coldiron
{
/** "neck-volume" as a person reads it: "Neck volume". */
std::string titleOf (const Part&);
/** The value under the name: "500 kΩ log", "22 nF", "8.2 kΩ"; empty where there is none. */
std::string valueOf (const Part&);
/** A quantity with an SI prefix, three figures: (22e-9, "F") is "22 nF". */
std::string quantityText (double value, const std::string& unit);
}
