#include "session/BlindTest.h"

#include "session/Monitor.h"
#include "session/Takes.h"

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

BlindTest::BlindTest (SharedState& s, JobEditor& e, Monitor& m, Takes& t) : shared (s), editor (e), monitor (m), takes (t) {}

std::string BlindTest::whyNot (const std::vector<OptionId>& versions) const
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
bool BlindTest::stillHolds() const
{
    const auto snapshot = shared.snapshot();
    std::optional<int> take;
    for (const OptionId id : versionIds)
        if (run->involves (id))
        {
            if ((id != asRecorded && snapshot->option (id) == nullptr) || (take && *take != snapshot->takeFor (id)))
                return false;
            take = snapshot->takeFor (id);
        }
    return true;
}

/** Starts a run that is made, or says why it cannot be. */
bool BlindTest::start (const std::vector<OptionId>& versions, const std::function<BlindRun()>& make)
{
    std::string refusal = whyNot (versions);
    if (refusal.empty())
        try
        {
            const std::scoped_lock lock (mutex);
            run = make();
        }
        catch (const std::invalid_argument& fault)
        {
            refusal = fault.what();
        }
    if (! refusal.empty())
    {
        editor.refuse (refusal);
        return false;
    }
    if (monitor.bypassed())
        monitor.setBypassed (false);
    const std::scoped_lock lock (mutex);
    moved();
    return true;
}

bool BlindTest::startRanking (const std::vector<OptionId>& versions, std::optional<uint64_t> seed)
{
    return start (versions, [&] { return BlindRun::ofRanking (versions, seed ? *seed : freshSeed()); });
}

bool BlindTest::startAbx (OptionId a, OptionId b, int trials, std::optional<uint64_t> seed)
{
    return start ({ a, b }, [&] { return BlindRun::ofAbx (a, b, trials, seed ? *seed : freshSeed()); });
}

/** Locked: what plays follows the run; the window looks again. */
void BlindTest::moved()
{
    shared.blindOption = run ? run->playing() : notBlind;
    takes.followHeard();
    shared.announceHeard();
}

void BlindTest::end()
{
    const std::scoped_lock lock (mutex);
    run.reset();
    shared.blindOption = notBlind;
}

void BlindTest::jobChanged()
{
    const std::scoped_lock lock (mutex);
    if (run && ! stillHolds())
        run.reset();
    shared.blindOption = run ? run->playing() : notBlind;
}

BlindView BlindTest::view() const
{
    const std::scoped_lock lock (mutex);
    return run ? run->view() : BlindView {};
}

void BlindTest::hear (int number)
{
    const std::scoped_lock lock (mutex);
    if (! run)
        return;
    run->hear (number);
    moved();
}

void BlindTest::rank (int number, RankMove move)
{
    const std::scoped_lock lock (mutex);
    if (! run)
        return;
    run->rank (number, move);
    shared.heardRevision.fetch_add (1);
}

void BlindTest::answer (int number)
{
    const std::scoped_lock lock (mutex);
    if (! run)
        return;
    run->answer (number);
    moved();
}

std::optional<BlindOutcome> BlindTest::reveal (const std::string& date)
{
    const auto job = editor.job();
    const int take = takes.selected();
    std::optional<BlindOutcome> outcome;
    {
        const std::scoped_lock lock (mutex);
        if (! run || ! run->isComplete())
            return std::nullopt;
        outcome = run->outcome (*job, take, date);
        run.reset();
        moved();
    }
    editor.edit ("Blind test",
                 [&] (JobTree& tree)
                 {
                     if (! tree.contains ("blind") || ! tree["blind"].is_array())
                         tree["blind"] = JobTree::array();
                     tree["blind"].push_back (asTree (outcome->result));
                     return std::string();
                 });
    return outcome;
}

void BlindTest::stop()
{
    const std::scoped_lock lock (mutex);
    run.reset();
    moved();
}
}
