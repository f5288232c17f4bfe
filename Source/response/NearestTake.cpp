#include "response/NearestTake.h"

#include "response/SourceResponses.h"
#include "response/TransferFunction.h"

#include <algorithm>
#include <cmath>
#include <tuple>

namespace coldiron
{
namespace
{
constexpr double loudShare = 0.15; ///< of the loudest pickup: 16 dB below it

/** How loud each pickup is heard at a middle frequency, in the order of the harness. */
std::vector<std::pair<std::string, double>> sharesOf (const GuitarResponse& response)
{
    std::vector<std::pair<std::string, double>> shares;
    if (response.isSilent())
        return shares;
    const Eigen::VectorXcd h = sourceResponses (response, 500.0);
    for (Eigen::Index k = 0; k < h.size(); ++k)
    {
        const auto& name = response.guitar().coils[static_cast<size_t> (k)].pickup;
        auto found = std::find_if (shares.begin(), shares.end(), [&] (const auto& s) { return s.first == name; });
        if (found == shares.end())
            found = shares.insert (shares.end(), { name, 0.0 });
        found->second = std::max (found->second, std::abs (h[k]));
    }
    double most = 0.0;
    for (const auto& [name, share] : shares)
        most = std::max (most, share);
    std::erase_if (shares, [&] (const auto& s) { return s.second <= loudShare * most; });
    return shares;
}

/** The largest boost of treble re 500 Hz, rounded to whole dB so that smaller differences decide nothing. */
int lift (const GuitarResponse& recorded, const GuitarResponse& option)
{
    const TransferFunction transfer (recorded, option);
    const auto gains = transfer.gains ({ 500.0, 2000.0, 3150.0, 5000.0, 8000.0 });
    double most = 0.0;
    for (size_t i = 1; i < gains.size(); ++i)
        if (gains[0] > 0.0 && gains[i] > 0.0)
            most = std::max (most, 20.0 * std::log10 (gains[i] / gains[0]));
    return static_cast<int> (std::lround (most));
}

}

std::vector<std::string> loudPickups (const GuitarResponse& response)
{
    std::vector<std::string> names;
    for (const auto& [name, share] : sharesOf (response))
        names.push_back (name);
    return names;
}

TakeChoice nearestTake (const std::vector<CircuitConfig>& takes, const CircuitConfig& option, std::optional<int> own,
                        const Cancellation& isUnwanted)
{
    TakeChoice choice;
    if (takes.empty())
        return choice;

    const GuitarResponse heard = option.response();
    std::vector<GuitarResponse> recorded;
    for (const auto& take : takes)
    {
        isUnwanted.check();
        recorded.push_back (take.response());
    }

    using Rank = std::tuple<int, bool, bool, int, int>; // the smallest is the nearest
    std::optional<Rank> best, ownRank;
    int nearest = 0;
    std::vector<Confidence> sure;
    for (int t = 0; t < static_cast<int> (takes.size()); ++t)
    {
        isUnwanted.check();
        const auto& response = recorded[static_cast<size_t> (t)];
        sure.push_back (assessConfidence (response, heard));
        const bool silent = response.isSilent();
        const bool morePickups = sure.back().playing == Similarity::rough && sharesOf (response).size() > 1;
        const Rank rank { silent ? 99 : static_cast<int> (sure.back().playing), sure.back().betweenOneAndBothOutOfPhase,
                          morePickups, lift (response, heard), t };
        if (! best || rank < *best)
        {
            best = rank;
            nearest = t;
        }
        if (own == t)
            ownRank = rank;
    }

    choice.isOwn = ownRank.has_value();
    choice.take = choice.isOwn ? *own : nearest;
    const auto& from = recorded[static_cast<size_t> (choice.take)];
    choice.confidence = sure[static_cast<size_t> (choice.take)];
    choice.pickups = loudPickups (from);
    const auto& surest = sure[static_cast<size_t> (nearest)];
    if (choice.isOwn && surest.playing < choice.confidence.playing)
        choice.surer = { SurerTake::Kind::otherTake, nearest, loudPickups (recorded[static_cast<size_t> (nearest)]),
                         surest.playing };
    else if (choice.confidence.playing >= Similarity::fair && ! heard.isSilent())
    {
        const auto names = loudPickups (heard);
        // A take of each is there already: no recording makes coils that oppose each other sure.
        const bool haveAll =
            std::all_of (names.begin(), names.end(),
                         [&] (const std::string& name)
                         {
                             return std::any_of (recorded.begin(), recorded.end(),
                                                 [&] (const GuitarResponse& response)
                                                 { return loudPickups (response) == std::vector<std::string> { name }; });
                         });
        if (! haveAll)
            choice.surer = { SurerTake::Kind::recordAnother, -1, names, {} };
    }
    return choice;
}
}
