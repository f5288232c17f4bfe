#pragma once

#include "job/Job.h"

#include <string>

namespace coldiron
{
/** The whole job for the bench, to print on A4 or Letter: parts, ohms as found, the wiring before and after, the steps in the order
    of a good hand, ohms, taps and kicks as they must be after, cautions, a line to sign. HTML that needs nothing from outside
    and runs no script. Prices and minutes are left to be written in by hand.
    @param date  as it shall stand there; may be empty */
std::string workOrderHtml (const Job&, const Option&, const std::string& date = {});
}
