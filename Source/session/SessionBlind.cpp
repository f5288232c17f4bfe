// Judging: blind tests, what was heard at true level, the agreement.
#include "session/Session.h"

#include <algorithm>
#include <chrono>
#include <random>

namespace coldiron
{
namespace
{
JobTree asTree (const BlindResult& result)
{
    JobTree tree = JobTree::object();
    if (result.kind == BlindResult::Kind::ranking)
    {
        tree["ranking"] = JobTree::array();
        for (const auto& place : result.ranking)
            tree["ranking"].push_back (place.size() == 1 ? JobTree (place.front()) : JobTree (place));
    }
    else
    {
        tree["abx"] = result.pair;
        tree["trials"] = result.trials;
        tree["right"] = result.right;
    }
    for (const auto& [letter, name] : result.names)
        tree["names"][letter] = name;
    if (result.take)
        tree["take"] = *result.take;
    if (! result.date.empty())
        tree["date"] = result.date;
    return tree;
}

uint64_t freshSeed()
{
    std::random_device device;
    return (static_cast<uint64_t> (device()) << 32) ^ device()
           ^ static_cast<uint64_t> (std::chrono::steady_clock::now().time_since_epoch().count());
}
}

std::string Session::whyNoBlind (const std::vector<OptionId>& versions) const
{
    if (versions.size() < 2)
        return "It takes two versions to compare.";
    const auto snapshot = shared.snapshot();
    for (OptionId id : versions)
    {
        const std::string name = id == asRecorded ? "As recorded" : letterOf (id);
        if (id != asRecorded && snapshot->option (id) == nullptr)
            return "There is no option " + name + ".";
        const auto report = shared.freshReport (id);
        if (report == nullptr || ! report->complete)
            return "Levels are still being measured. A moment.";
        if (! report->fault.empty())
            return name + " could not be computed.";
        if (report->silent)
            return name + " is silent at its setting.";
        if (snapshot->takeFor (id) != snapshot->takeFor (versions.front()))
            return "These come from different takes, and takes differ by themselves. Select one take first.";
    }
    return {};
}

/** All that is behind the numbers is still there, and from one take. */
bool Session::blindStillHolds() const
{
    const auto snapshot = shared.snapshot();
    std::optional<int> take;
    for (const OptionId id : versionIds)
        if (blindRun->involves (id))
        {
            if ((id != asRecorded && snapshot->option (id) == nullptr) || (take && *take != snapshot->takeFor (id)))
                return false;
            take = snapshot->takeFor (id);
        }
    return true;
}

/** Starts a run that has been made, or says why it cannot be. */
bool Session::startBlind (const std::vector<OptionId>& versions, const std::function<BlindRun()>& make)
{
    const std::scoped_lock lock (mutex);
    const auto why = whyNoBlind (versions);
    try
    {
        if (! why.empty())
            throw std::invalid_argument (why);
        blindRun = make();
    }
    catch (const std::invalid_argument& refusal)
    {
        document.refuse (refusal.what());
        announce();
        return false;
    }
    if (bypass.load())
        setBypassed (false);
    blindMoved();
    return true;
}

bool Session::startRanking (const std::vector<OptionId>& versions, std::optional<uint64_t> seed)
{
    return startBlind (versions, [&] { return BlindRun::ofRanking (versions, seed ? *seed : freshSeed()); });
}

bool Session::startAbx (OptionId a, OptionId b, int trials, std::optional<uint64_t> seed)
{
    return startBlind ({ a, b }, [&] { return BlindRun::ofAbx (a, b, trials, seed ? *seed : freshSeed()); });
}

/** What plays follows the run; the window looks again. */
void Session::blindMoved()
{
    shared.blindOption = blindRun ? blindRun->playing() : notBlind;
    followHeard();
    shared.heardRevision.fetch_add (1);
    designer.wake();
}

BlindView Session::blind() const
{
    const std::scoped_lock lock (mutex);
    return blindRun ? blindRun->view() : BlindView {};
}

void Session::hearBlind (int number)
{
    const std::scoped_lock lock (mutex);
    if (! blindRun)
        return;
    blindRun->hear (number);
    blindMoved();
}

void Session::rankBlind (int number, RankMove move)
{
    const std::scoped_lock lock (mutex);
    if (! blindRun)
        return;
    blindRun->rank (number, move);
    shared.heardRevision.fetch_add (1);
}

void Session::answerBlind (int number)
{
    const std::scoped_lock lock (mutex);
    if (! blindRun)
        return;
    blindRun->answer (number);
    blindMoved();
}

std::optional<BlindOutcome> Session::reveal (const std::string& date)
{
    const std::scoped_lock lock (mutex);
    if (! blindRun || ! blindRun->isComplete())
        return std::nullopt;
    const auto outcome = blindRun->outcome (*document.job(), takeIndex, date);
    blindRun.reset();
    blindMoved();
    editTree ("Blind test",
              [&] (JobTree& tree)
              {
                  if (! tree.contains ("blind") || ! tree["blind"].is_array())
                      tree["blind"] = JobTree::array();
                  tree["blind"].push_back (asTree (outcome.result));
                  return std::string();
              });
    return outcome;
}

void Session::stopBlind()
{
    const std::scoped_lock lock (mutex);
    blindRun.reset();
    blindMoved();
}

bool Session::heardAtTrueLevel (OptionId id) const { return id != asRecorded && shared.heardSeconds[indexOf (id)].load() >= 1.0; }

/** @param before  the options as they were: one that is wired otherwise now has not been heard yet */
void Session::forgetRewired (const Job& before)
{
    for (const OptionId id : optionIds)
    {
        const Option *was = before.find (letterOf (id)), *is = document.job()->find (letterOf (id));
        if (was == nullptr || is == nullptr || ! was->harness.sameAs (is->harness))
            shared.heardSeconds[indexOf (id)] = 0.0;
    }
}

/** Of a job just opened: those it says were heard. */
void Session::rememberHeard()
{
    for (const OptionId id : optionIds)
    {
        const auto& heard = document.job()->heard;
        shared.heardSeconds[indexOf (id)] = std::find (heard.begin(), heard.end(), letterOf (id)) == heard.end() ? 0.0 : 1.0;
    }
}

void Session::hearAtTrueLevel (OptionId id)
{
    if (shared.matched.load())
        setLevelMatched (false);
    if (bypassed())
        setBypassed (false);
    hear (id);
    if (! isPlaying() && takePicture() != nullptr && takePicture()->fault.empty())
        play();
}

bool Session::agree (OptionId id)
{
    const std::scoped_lock lock (mutex);
    if (! heardAtTrueLevel (id))
    {
        document.refuse ("Hear " + letterOf (id) + " at true level first");
        announce();
        return false;
    }
    return editTree ("Agree on " + letterOf (id),
                     [&] (JobTree& tree)
                     {
                         tree["agreed"] = letterOf (id);
                         JobTree letters = JobTree::array();
                         for (const OptionId each : optionIds)
                             if (heardAtTrueLevel (each) && document.job()->find (letterOf (each)) != nullptr)
                                 letters.push_back (letterOf (each));
                         tree["heard"] = letters;
                         return std::string();
                     });
}

bool Session::takeAgreementBack() { return edit ("/agreed", {}, "Take the agreement back"); }

void Session::setOnlyString (int string)
{
    const std::scoped_lock lock (mutex);
    const int count = static_cast<int> (document.job()->guitar.strings.size());
    only = string >= 0 && string < count ? string : -1;
    documentChanged (false);
}
}
