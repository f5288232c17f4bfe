#pragma once

#include "coilfit/CoilFit.h"

#include <string>

namespace coldiron::wording
{
std::string fittedValue (CoilFit::Value); ///< "winding capacitance"
std::string unitOf (CoilFit::Value);      ///< "F"

/** The word that a row of the file of readings begins with: "lcr". */
std::string rowOf (FittedReading::Quantity);
std::string unitOf (FittedReading::Quantity); ///< "ohm", "deg"

/** What was found, what was expected, what to do. Without a full stop. */
std::string fitRefusal (const FitRefusal&);
std::string fitNote (const FitNote&);
}
