#pragma once

#include "analysis/HandCheck.h"

#include <string>

namespace coldiron::wording
{
/** Why a move by hand cannot be done. @param harness  the wiring before it */
std::string handRefusal (const HandRefusal&, const Harness&);

/** What a move by hand comes to: one line, plain, without a full stop. @param harness  the wiring before it */
std::string handVerdict (const HandVerdict&, const Harness&);
}
