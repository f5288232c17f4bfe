#pragma once

#include "concurrency/Worker.h"
#include "session/SharedState.h"

#include <optional>

namespace coldiron
{
/** The thread that turns the heard option into a filter and hands it to the engine, whenever what it depends on has changed;
    the newest setting wins. A design that has begun is heard, so that a knob that never rests is heard moving. */
class Designer
{
public:
    explicit Designer (SharedState&);

    void wake() { shared.changes.raise(); } ///< [any thread] after a change; SharedState's own calls do so themselves

    /** Waits until the engine has been given the design of what stands now, or for the time given. Never on the audio
        thread while it plays in real time. @return whether it has */
    bool waitUntilIdle (double seconds);

    /** [any thread, wait-free] While held it designs for nobody but those who wait in waitUntilIdle(): a render faster than real
        time says when, so that what is heard is the same however fast the machine is. */
    void hold (bool h)
    {
        if (held.exchange (h) && ! h)
            wake();
    }

    double lastSeconds() const { return lastTook.load(); } ///< knob to coefficients, of the last design

private:
    /** What a design depends on; the same key, the same design. */
    struct Key
    {
        uint32_t snapshot = 0, setting = 0, prepared = 0;
        OptionId option = asRecorded;
        bool matched = false, exactMatch = false, hisses = false;
        double mainsHz = 0.0, facingDegrees = 0.0, buzz = 0.0, rate = 0.0;
        bool operator== (const Key&) const = default;
    };

    SharedState& shared;
    std::atomic<int> waiting { 0 }; ///< in waitUntilIdle()
    std::atomic<bool> held { false };
    std::mutex mutex;
    std::optional<Key> done; ///< guarded
    std::atomic<double> lastTook { 0.0 };

    // Only the thread touches these.
    std::optional<GuitarResponse> recorded;
    uint32_t recordedFrom = 0;
    int recordedTake = -1;

    /** What a chain after the jack depends on. */
    struct OutputChainKey
    {
        OutputChainChoice choice;
        double rate = 0.0, lufs = 0.0;
        uint32_t prepared = 0, again = 0;
        bool operator== (const OutputChainKey&) const = default;
    };
    std::optional<OutputChainKey> afterKey;
    OutputCurve afterCurve;

    Worker worker; ///< last

    Key wanted() const;
    bool isDone (const Key&);
    bool turn (const Cancellation& stop);
    void followAfter (const Key&, const Snapshot&, const Cancellation& stop);
    EngineDesign design (const Key&, const Snapshot&, const Cancellation& stop);
};
}
