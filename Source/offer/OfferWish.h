#pragma once

#include "offer/OfferRewires.h"
#include "offer/PresetSearch.h"

#include <string>
#include <vector>

namespace coldiron
{
/** A starter set on a guitar. */
struct SetOffer
{
    Starter starter;
    StarterOffer offer;
};

/** What answers a wish on a guitar. */
struct WishOffer
{
    std::string wish;                  ///< as asked for; empty: everything there is
    WordMatch match = WordMatch::none; ///< how well the best answers do
    std::vector<SetOffer> sets;        ///< those that the words mean
    std::vector<RewireOffer> rewires;  ///< those that the words mean: what fits first, of those what starter sets name
    std::vector<RewireOffer> alike;    ///< others that serve the same wish as the sets

    /** What to add to a job: the options of the first set that has any, else those of the rewires. */
    std::vector<StarterOption> options (size_t most = 3) const;
};

/** @param wish  words of a client or the trade, or a preset's name; empty: every set and every rewire
    @param faults  presets that could not be read; they are left out */
WishOffer offerForWish (const std::string& wish, const Guitar&, const Setting& from, const Load&, const PresetFolders&,
                        Diagnostics&);
}
