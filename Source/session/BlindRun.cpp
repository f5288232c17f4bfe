#include "session/BlindRun.h"

#include <algorithm>
#include <set>
#include <stdexcept>

namespace coldiron
{
namespace
{
std::string versionOf (OptionId id) { return id == asRecorded ? "recorded" : letterOf (id); }
std::string shownAs (OptionId id) { return id == asRecorded ? "Now" : letterOf (id); }
}

BlindRun::BlindRun (std::vector<OptionId> versions, SeededRandom& random)
{
    if (std::set<OptionId> (versions.begin(), versions.end()).size() != versions.size())
        throw std::invalid_argument ("a version is there twice");
    std::sort (versions.begin(), versions.end());
    for (int place : shuffled (static_cast<int> (versions.size()), random))
        behind.push_back (versions[static_cast<size_t> (place)]);
}

BlindRun BlindRun::ofRanking (std::vector<OptionId> versions, uint64_t seed)
{
    const int count = static_cast<int> (versions.size());
    SeededRandom random (seed);
    BlindRun run (std::move (versions), random);
    run.ranking.emplace (count);
    return run;
}

BlindRun BlindRun::ofAbx (OptionId a, OptionId b, int count, uint64_t seed)
{
    SeededRandom random (seed);
    BlindRun run ({ a, b }, random);
    run.trials.emplace (count, random.next());
    return run;
}

bool BlindRun::involves (OptionId id) const { return std::find (behind.begin(), behind.end(), id) != behind.end(); }
bool BlindRun::isComplete() const { return ranking ? ranking->isComplete() : trials->isFinished(); }

BlindView BlindRun::view() const
{
    BlindView view;
    view.isRunning = true;
    view.heard = heard;
    view.canTurnOver = isComplete();
    if (ranking)
    {
        view.versions = ranking->versions();
        for (int version = 0; version < view.versions; ++version)
        {
            view.places.push_back (ranking->placeOf (version));
            view.tied.push_back (ranking->isTied (version));
        }
        return view;
    }
    view.kind = BlindView::Kind::abx;
    view.versions = 3;
    view.trials = trials->trials();
    view.answered = trials->done();
    view.canAnswer = xHeard && ! trials->isFinished();
    view.about = shownAs (std::min (behind[0], behind[1])) + " and " + shownAs (std::max (behind[0], behind[1]));
    return view;
}

OptionId BlindRun::playing() const
{
    const int place = trials && heard == 3 ? trials->x() : heard - 1;
    return behind[static_cast<size_t> (place)];
}

void BlindRun::hear (int number)
{
    if (number >= 1 && number <= static_cast<int> (behind.size()) + (trials ? 1 : 0))
        heard = number;
    xHeard = xHeard || (trials && heard == 3);
}

void BlindRun::rank (int number, RankMove move)
{
    if (! ranking)
        return;
    switch (move)
    {
    case RankMove::up: ranking->up (number - 1); break;
    case RankMove::down: ranking->down (number - 1); break;
    case RankMove::tie: ranking->tie (number - 1); break;
    }
}

void BlindRun::answer (int number)
{
    if (! trials || ! xHeard || trials->isFinished() || number < 1 || number > 2)
        return;
    trials->answer (number - 1);
    if (! trials->isFinished())
        heard = 3; // the next X: heard from the start
}

BlindOutcome BlindRun::outcome (const Job& job, int take, const std::string& date) const
{
    BlindOutcome outcome;
    auto& result = outcome.result;
    outcome.behind = behind;
    result.date = date;
    if (take >= 0)
        result.take = take + 1;
    for (OptionId id : behind)
        if (const Option* option = job.find (letterOf (id)); option != nullptr && ! option->name.empty())
            result.names[option->letter] = option->name;
    if (ranking)
    {
        for (const auto& group : ranking->places())
        {
            std::vector<std::string> place;
            for (int version : group)
                place.push_back (versionOf (behind[static_cast<size_t> (version)]));
            std::sort (place.begin(), place.end());
            result.ranking.push_back (std::move (place));
        }
        return outcome;
    }
    result.kind = BlindResult::Kind::abx;
    result.pair = { versionOf (std::min (behind[0], behind[1])), versionOf (std::max (behind[0], behind[1])) };
    result.trials = trials->trials();
    result.right = trials->right();
    return outcome;
}
}
