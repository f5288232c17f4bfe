#include "analysis/Changes.h"

#include <algorithm>
#include <map>

namespace coldiron
{
namespace
{
SolderPair inOrder (const std::string& a, const std::string& b) { return a < b ? SolderPair { a, b } : SolderPair { b, a }; }

/** The pickup to whose side a point belongs, as a place in the list of parts; past the end where there is none. */
size_t configOf (const Harness& harness, const std::string& point)
{
    const auto& parts = harness.parts();
    const auto* part = harness.find (splitPoint (point).first);
    if (part == nullptr)
        return parts.size();
    const auto& wanted = part->as<PickupPart>() != nullptr ? part->name : part->serves;
    for (size_t i = 0; i < parts.size(); ++i)
        if (! wanted.empty() && parts[i].name == wanted)
            return i;
    return parts.size();
}

bool touches (const SolderPair& pair, const std::string& point) { return pair.first == point || pair.second == point; }

/** A wire that was opened and made again to another lug has moved: the end left behind, empty where none did. The
    likeliest new wire is one to another lug of the same part. `resting` learns the end that stays. */
std::string endLeftBehind (const SolderPair& opened, const std::vector<SolderPair>& made, const Harness& after,
                           std::map<SolderPair, std::string>& resting)
{
    const SolderPair* best = nullptr;
    std::string left, stays;
    int bestScore = 0;
    for (const auto& pair : made)
    {
        if (after.isLead (pair.first) || after.isLead (pair.second) || resting.count (pair) > 0)
            continue;
        for (const auto& shared : { opened.first, opened.second })
        {
            if (! touches (pair, shared))
                continue;
            const auto& oldEnd = shared == opened.first ? opened.second : opened.first;
            const auto& newEnd = shared == pair.first ? pair.second : pair.first;
            const int score = splitPoint (oldEnd).first == splitPoint (newEnd).first ? 2 : 1;
            if (score > bestScore)
            {
                bestScore = score;
                best = &pair;
                left = oldEnd;
                stays = shared;
            }
        }
    }
    if (best != nullptr)
        resting[*best] = stays;
    return left;
}

/** Where two points are soldered together: the lug, or for leads in the air the first of their joint. */
std::string jointOf (const Harness& harness, const SolderPair& pair)
{
    for (const auto& point : { pair.first, pair.second })
        if (harness.find (splitPoint (point).first) != nullptr && ! harness.isLead (point))
            return point;
    return pair.first;
}

/** Joints touched by these pairs: a wire ends in two, a lead in one. */
std::set<std::string> jointsTouched (const Harness& harness, const std::vector<SolderPair>& pairs)
{
    std::set<std::string> joints;
    for (const auto& pair : pairs)
    {
        const bool bothLugs = ! harness.isLead (pair.first) && ! harness.isLead (pair.second);
        joints.insert (bothLugs ? pair.first : jointOf (harness, pair));
        if (bothLugs)
            joints.insert (pair.second);
    }
    return joints;
}
}

std::vector<SolderPair> solderPairs (const Harness& harness)
{
    std::set<SolderPair> pairs;
    for (const auto& [a, b] : harness.wires())
        pairs.insert (inOrder (a, b));
    std::map<int, std::string> lastIn;
    for (const auto& point : harness.allPoints())
    {
        const auto landing = harness.landings().find (point);
        if (landing == harness.landings().end())
            continue;
        if (! landing->second.lug.empty())
            pairs.insert (inOrder (point, landing->second.lug));
        else if (landing->second.joint >= 0)
        {
            auto& last = lastIn[landing->second.joint];
            if (! last.empty())
                pairs.insert (inOrder (last, point));
            last = point;
        }
    }
    return { pairs.begin(), pairs.end() };
}

Changes changesBetween (const Harness& before, const Harness& after)
{
    Changes changes;
    const auto old = solderPairs (before), now = solderPairs (after);
    std::vector<SolderPair> madePairs, openedPairs;
    std::set_intersection (old.begin(), old.end(), now.begin(), now.end(), std::back_inserter (changes.stays));
    std::set_difference (now.begin(), now.end(), old.begin(), old.end(), std::back_inserter (madePairs));
    std::set_difference (old.begin(), old.end(), now.begin(), now.end(), std::back_inserter (openedPairs));

    for (const auto& part : after.parts())
    {
        const auto* twin = before.find (part.name);
        if (twin == nullptr)
            changes.fitted.insert (part.name);
        else if (! (*twin == part))
            changes.replaced.insert (part.name);
        // A push-pull comes in place of the pot it sits on.
        const auto* lever = part.as<SwitchPart>();
        if (twin == nullptr && lever != nullptr && ! lever->on.empty() && before.find (lever->on) != nullptr)
            changes.replaced.insert (lever->on);
    }
    for (const auto& part : before.parts())
        if (after.find (part.name) == nullptr)
            changes.removed.insert (part.name);

    const auto points = after.allPoints();
    const auto place = [&points] (const std::string& p) { return std::find (points.begin(), points.end(), p) - points.begin(); };
    const auto key = [&] (const SolderPair& p)
    {
        return std::make_pair (std::min (configOf (after, p.first), configOf (after, p.second)),
                               std::min (place (p.first), place (p.second)));
    };
    std::stable_sort (madePairs.begin(), madePairs.end(), [&] (const auto& a, const auto& b) { return key (a) < key (b); });

    std::map<SolderPair, std::string> resting;
    for (const auto& pair : openedPairs)
    {
        // A lead that lands elsewhere, or a wire one of whose ends does, has moved: its old end is a stub.
        Changes::Opened opened { pair, "" };
        const bool firstLead = before.isLead (pair.first), secondLead = before.isLead (pair.second);
        const auto moved = [&] (const std::string& end) {
            return std::any_of (madePairs.begin(), madePairs.end(), [&] (const SolderPair& made) { return touches (made, end); });
        };
        if (firstLead && moved (pair.first))
            opened.stubAt = pair.second;
        else if (secondLead && moved (pair.second))
            opened.stubAt = pair.first;
        else if (! firstLead && ! secondLead)
            opened.stubAt = endLeftBehind (pair, madePairs, after, resting);
        if (changes.removed.count (splitPoint (opened.stubAt).first) > 0)
            opened.stubAt.clear();
        changes.opened.push_back (opened);
    }

    int number = 0;
    for (const auto& pair : madePairs)
    {
        Changes::Made made { pair, ++number, "" };
        if (const auto found = resting.find (pair); found != resting.end())
            made.resting = found->second;
        changes.made.push_back (made);
    }
    return changes;
}

int Changes::jointsToMake (const Harness& after) const
{
    std::vector<SolderPair> pairs;
    for (const auto& one : made)
        pairs.push_back (one.pair);
    for (const auto& pair : stays) // whatever hangs on a new part is soldered anew
        if (replaced.count (splitPoint (pair.first).first) > 0 || replaced.count (splitPoint (pair.second).first) > 0)
            pairs.push_back (pair);
    return static_cast<int> (jointsTouched (after, pairs).size());
}

int Changes::jointsToOpen (const Harness& before) const
{
    std::vector<SolderPair> pairs;
    for (const auto& one : opened)
        pairs.push_back (one.pair);
    for (const auto& pair : stays)
        if (replaced.count (splitPoint (pair.first).first) > 0 || replaced.count (splitPoint (pair.second).first) > 0)
            pairs.push_back (pair);
    return static_cast<int> (jointsTouched (before, pairs).size());
}
}
