#include "offer/OfferWish.h"

#include <algorithm>
#include <set>

namespace coldiron
{
namespace
{
struct Answer
{
    std::string preset;
    WordScore score;
};

std::vector<Answer> answers (const std::string& kind, const std::string& wish, const PresetFolders& presets, bool toldIsName,
                             Diagnostics& diagnostics)
{
    std::vector<Answer> all;
    for (const auto& names : presetNames (kind, presets, diagnostics))
    {
        auto called = names.all();
        if (toldIsName)
            called.push_back (names.told);
        all.push_back (
            { names.preset, wish.empty() ? WordScore { WordMatch::named, 0 } : matchWords (wish, called, names.told) });
    }
    return all;
}

WordScore best (const std::vector<Answer>& all)
{
    WordScore score;
    for (const auto& answer : all)
        score = std::max (score, answer.score);
    return score;
}
}

std::vector<StarterOption> WishOffer::options (size_t most) const
{
    for (const auto& set : sets)
        if (! set.offer.options.empty())
            return set.offer.options;
    std::vector<StarterOption> found;
    for (const auto& rewire : rewires)
        if (rewire.option && found.size() < most)
            found.push_back (*rewire.option);
    return found;
}

WishOffer offerForWish (const std::string& wish, const Guitar& guitar, const Setting& from, const Load& load,
                        const PresetFolders& presets, Diagnostics& diagnostics)
{
    WishOffer result;
    result.wish = wish;
    const auto sets = answers ("starters", wish, presets, true, diagnostics),
               rewires = answers ("rewires", wish, presets, false, diagnostics);
    const auto most = std::max (best (sets), best (rewires));
    result.match = most.match;
    if (result.match == WordMatch::none)
        return result;
    std::vector<std::string> wishes; // that the sets answer
    std::set<std::string> first;     // what a technician would offer first: the sets name it
    for (const auto& set : sets)
        if (auto starter = readStarter (set.preset, presets, diagnostics))
        {
            for (const auto& candidate : starter->candidates)
                for (const auto& rewire : candidate.rewires)
                    first.insert (rewire.preset);
            if (set.score != most)
                continue;
            wishes.push_back (starter->wish);
            auto offer = offerStarter (*starter, guitar, from, load, presets);
            result.sets.push_back ({ std::move (*starter), std::move (offer) });
        }
    for (const auto& rewire : rewires)
        if (const auto info = readRewireInfo (rewire.preset, presets, diagnostics))
        {
            const bool meant = rewire.score == most,
                       serves = std::find (wishes.begin(), wishes.end(), info->wish) != wishes.end();
            if (meant || serves)
                (meant ? result.rewires : result.alike).push_back (offerRewire (*info, guitar, from, load, presets));
        }
    const auto rank = [&] (const RewireOffer& offer)
    { return (offer.option ? 0 : 2) + (first.count (offer.info.preset) > 0 ? 0 : 1); };
    for (auto* list : { &result.rewires, &result.alike })
        std::stable_sort (list->begin(), list->end(), [&] (const auto& a, const auto& b) { return rank (a) < rank (b); });
    return result;
}
}
