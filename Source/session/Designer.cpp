#include "session/Designer.h"

#include "session/Matching.h"

#include <chrono>
#include <cmath>

namespace coldiron
{
using Clock = std::chrono::steady_clock;

Designer::Designer (SharedState& workshop) : shared (workshop), thread ([this] { run(); }) {}

Designer::~Designer()
{
    {
        const std::scoped_lock lock (mutex);
        quit = true;
    }
    signal.notify_all();
    thread.join();
}

void Designer::wake()
{
    {
        const std::scoped_lock lock (mutex);
        woken = true;
    }
    signal.notify_all();
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

bool Designer::waitUntilIdle (double seconds)
{
    const auto until = Clock::now() + std::chrono::duration_cast<Clock::duration> (std::chrono::duration<double> (seconds));
    wake();
    std::unique_lock lock (mutex);
    ++waiting;
    for (;;)
    {
        lock.unlock();
        const Key now = wanted();
        lock.lock();
        const bool isDone = done == now || now.rate <= 0.0;
        if (isDone || (settled.wait_until (lock, until) == std::cv_status::timeout && Clock::now() >= until))
        {
            --waiting;
            return isDone;
        }
    }
}

EngineDesign Designer::design (const Key& key, const Snapshot& snapshot)
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

    const MainsField field { key.mainsHz, facingOf (key.facingDegrees), key.buzz };
    const double lufs = snapshot.materialFor (key.option).lufs;
    if (key.option == asRecorded)
        result = EngineDesign::of (nullptr, *recorded, field, lufs, key.rate, key.hisses);
    else
    {
        const GuitarResponse option = configOf (snapshot, shared.live, key.option).response();
        const TransferFunction transfer (*recorded, option);
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
void Designer::followAfter (const Key& key, const Snapshot& snapshot)
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
        auto chain = std::make_unique<OutputChain> (now.choice, now.impulse ? now.impulse->at (key.rate) : std::vector<float>(),
                                                    key.rate, snapshot.materialFor (asRecorded).lufs);
        afterCurve = chain->curve();
        shared.engine.publish (std::move (chain));
    }
    if (now.choice != before->choice || now.impulse != before->impulse || now.fault != before->fault)
        shared.put (std::move (now));
    afterKey = wants;
}

void Designer::run()
{
    for (;;)
    {
        const Key key = wanted(); // before anything is read, so that what changes meanwhile is seen as new
        bool fresh = false;
        {
            std::unique_lock lock (mutex);
            if (quit)
                return;
            fresh = key.rate > 0.0 && done != key && (waiting > 0 || ! held.load());
            if (! fresh)
            {
                signal.wait_for (lock, std::chrono::milliseconds (4), [this] { return quit || woken; });
                woken = false;
                continue;
            }
        }

        const auto began = Clock::now();
        const auto snapshot = shared.snapshot();
        EngineDesign next;
        try
        {
            followAfter (key, *snapshot);
            next = design (key, *snapshot);
            shared.engine.publish (next);
        }
        catch (const std::exception&)
        {
            next.filter = ModalFilter::silence (key.rate); // a circuit without a solution gives no sound
            next.probe();
            shared.engine.publish (next);
        }
        lastTook = std::chrono::duration<double> (Clock::now() - began).count();
        {
            const std::scoped_lock lock (mutex);
            done = key;
        }
        settled.notify_all();
    }
}
}
