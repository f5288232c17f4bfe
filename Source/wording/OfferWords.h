#pragma once

#include "offer/OfferWish.h"

#include <string>

namespace coldiron::wording
{
/** Why it is not offered, said of the guitar in one line, without a full stop. */
std::string offerRefusal (const OfferRefusal&);

/** A candidate's name on no guitar in particular: "The pickup, coils in parallel". */
std::string candidateName (const StarterCandidate&);
}
