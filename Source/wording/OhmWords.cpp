#include "wording/OhmWords.h"

#include "files/Quantity.h"
#include "wording/Say.h"

#include <algorithm>
#include <cmath>

namespace coldiron::wording
{
namespace
{
/** As a meter would show it: the floor of 1 ohm in every pot is not what a person asks about. */
double threeFigures (double ohms)
{
    const double step = std::pow (10.0, std::floor (std::log10 (std::max (ohms, 1e-3))) - 2.0);
    return std::round (ohms / step) * step;
}
}

std::string noOhms (const OhmReading& reading)
{
    switch (reading.kind)
    {
    case OhmReading::Kind::ohms: break;
    case OhmReading::Kind::open: return say ("open");
    case OhmReading::Kind::shorted: return say ("short");
    case OhmReading::Kind::buffered: return say ("a buffer, no reading");
    }
    return {};
}

std::string jackRefusal (const LeadsReading& reading, const std::string& pickup)
{
    switch (reading.refusal)
    {
    case LeadsReading::Refusal::none: break;
    case LeadsReading::Refusal::noSuchPickup: return say ("the guitar has no pickup {pickup}", pickup);
    case LeadsReading::Refusal::buffered: return say ("A buffer drives the jack: read the pickup at its own leads.");
    case LeadsReading::Refusal::abovePots:
        return say ("The pots alone read {ohms} there: more cannot be. Are all knobs at 10?",
                    quantityText (threeFigures (reading.potsOhms)));
    case LeadsReading::Refusal::tooLittle: return say ("Too little for this pickup: a short, or another pickup beside it?");
    }
    return {};
}
}
