#include "session/Designer.h"

#include "session/Matching.h"

#include <chrono>
#include <cmath>

namespace coldiron
{
using Clock = std::chrono::steady_clock;

Designer::Designer (SharedState& state)
    : shared (state), worker (
                          "coldiron-design", state.changes, [this] (const Cancellation& stop) { return turn (stop); },
                          [this] (const std::string& words) { shared.tellFault ("sound", "the sound cannot follow: " + words); })
{
}

Designer::Key Designer::wanted() const
{
    Key key;
    const auto snapshot = shared.snapshot();
    key.prepared = shared.prepared.load();
    key.snapshot = snapshot->revision;
    key.option = shared.playing();
    if (snapshot->option (key.option) == nullptr)
        key.option = asRecorded;
    key.setting = key.option == asRecorded ? 0 : shared.live.generation (key.option);
    key.matched = (shared.matched.load() || shared.isBlind()) && key.option != asRecorded;
    key.mainsHz = shared.mainsHz.load();
    key.facingDegrees = shared.facingDegrees.load();
    key.buzz = shared.buzz.load();
    key.hisses = shared.hissGainDb.load() >= 0.0;
    key.rate = shared.sampleRate.load();
    if (key.matched)
        if (const auto report = shared.freshReport (key.option))
            key.exactMatch = report->complete;
    return key;
}

bool Designer::isDone (const Key& key)
{
    const std::scoped_lock lock (mutex);
    return done == key || key.rate <= 0.0;
}

bool Designer::waitUntilIdle (double seconds)
{
    ++waiting;
    if (held.load())
        wake();
    const bool isIdle = worker.waitFor (seconds, [this] { return isDone (wanted()); });
    --waiting;
    return isIdle;
}

EngineDesign Designer::design (const Key& key, const Snapshot& snapshot, const Cancellation& stop)
{
    EngineDesign result;
    if (! recorded || recordedFrom != snapshot.revision || recordedTake != snapshot.takeFor (key.option))
    {
        recorded.reset();
        const CircuitConfig config = snapshot.recordedConfig (key.option);
        recorded.emplace (config.response());
        recordedFrom = snapshot.revision;
        recordedTake = snapshot.takeFor (key.option);
    }

    stop.check();
    const MainsField field { key.mainsHz, facingOf (key.facingDegrees), key.buzz };
    const double lufs = snapshot.materialFor (key.option).lufs;
    if (key.option == asRecorded)
        result = EngineDesign::of (nullptr, *recorded, field, lufs, key.rate, key.hisses);
    else
    {
        const GuitarResponse option = configOf (snapshot, shared.live, key.option).response();
        const TransferFunction transfer (*recorded, option);
        stop.check();
        result = EngineDesign::of (&transfer, option, field, lufs, key.rate, key.hisses);
        if (key.matched)
        {
            const auto report = key.exactMatch ? shared.freshReport (key.option) : nullptr;
            const double db = report != nullptr
                                  ? report->matchDb
                                  : matchDb (transfer, afterCurve.heard (snapshot.materialFor (key.option).spectrum));
            result.gain = std::pow (10.0, db / 20.0);
        }
    }
    result.probe();
    return result;
}

/** Hands the engine another chain where another one is asked for; one that cannot be had leaves the last one sounding. */
void Designer::followAfter (const Key& key, const Snapshot& snapshot, const Cancellation& stop)
{
    const auto before = shared.after();
    const OutputChainKey wants { snapshot.after, key.rate,
                                 snapshot.after.isDriven() ? snapshot.materialFor (asRecorded).lufs : 0.0, key.prepared,
                                 before->fault.empty() ? 0 : snapshot.revision };
    if (afterKey == wants)
        return;

    OutputChainInUse now = *before;
    if (now.choice != snapshot.after || ! now.fault.empty())
        try
        {
            OutputChainInUse fresh { snapshot.after, nullptr, {} };
            if (fresh.choice.sound == OutputSound::file)
                fresh.impulse = std::make_shared<const ImpulseResponse> (readImpulse (fresh.choice.file));
            now = std::move (fresh);
        }
        catch (const std::exception& fault)
        {
            now.fault = fault.what();
        }

    const bool sounds = ! afterKey || now.choice != before->choice || now.impulse != before->impulse
                        || afterKey->rate != wants.rate || afterKey->lufs != wants.lufs || afterKey->prepared != wants.prepared;
    if (sounds)
    {
        auto chain =
            std::make_unique<OutputChain> (now.choice, now.impulse ? now.impulse->at (key.rate, stop) : std::vector<float>(),
                                           key.rate, snapshot.materialFor (asRecorded).lufs);
        afterCurve = chain->curve();
        shared.engine.publish (std::move (chain));
    }
    if (now.choice != before->choice || now.impulse != before->impulse || now.fault != before->fault)
        shared.put (std::move (now));
    afterKey = wants;
}

bool Designer::turn (const Cancellation& stop)
{
    const Key key = wanted(); // before anything is read, so that what changes meanwhile is seen as new
    if (isDone (key) || (held.load() && waiting.load() == 0))
        return false;

    const auto began = Clock::now();
    const auto snapshot = shared.snapshot();
    EngineDesign next;
    std::string fault;
    try
    {
        followAfter (key, *snapshot, stop);
        next = design (key, *snapshot, stop);
        shared.engine.publish (next);
    }
    catch (const std::exception& thrown)
    {
        fault = nameOf (key.option) + " cannot be heard: " + thrown.what();
        next = {};
        next.filter = next.hiss = ModalFilter::silence (key.rate);
        next.probe();
        shared.engine.publish (next);
    }
    shared.tellFault ("sound", fault);
    lastTook = std::chrono::duration<double> (Clock::now() - began).count();
    const std::scoped_lock lock (mutex);
    done = key;
    return true;
}
}
