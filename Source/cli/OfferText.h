#pragma once

#include "offer/OfferWish.h"

#include <string>
#include <vector>

namespace coldiron::cli
{
/** What was put into the job for a wish. */
struct Added
{
    std::vector<std::string> letters, names; ///< of the new options
    std::vector<std::string> alreadyThere;   ///< "Bridge split (as B)"
    size_t left = 0;                         ///< for which no letter was free
};

/** For people: what fits, what does not and why, one line each. */
std::string offerText (const WishOffer&);

/** What was added, or why nothing was: one line or more. */
std::string addedText (const Added&, const std::string& job);

/** For programs: one JSON object for a wish. @param added  nothing: it was not asked for */
std::string offerJson (const WishOffer&, const Added* added);
}
