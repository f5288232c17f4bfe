#pragma once

#include "session/SharedState.h"

#include <condition_variable>
#include <optional>
#include <thread>

namespace coldiron
{
/** The thread that turns the heard option into a filter and hands it to the engine. It looks every 4 ms, since the
    audio thread may move a knob and must not wake anyone; the newest setting wins. */
class Designer
{
public:
    explicit Designer (SharedState&);
    ~Designer();

    /** Wakes it at once. Not for the audio thread. */
    void wake();

    /** Waits until the engine has been given what the bench shows now, or for the time given. Never on the audio
        thread while it plays in real time. @return whether it has */
    bool waitUntilIdle (double seconds);

    /** [any thread, wait-free] While held it designs for nobody but those who wait in waitUntilIdle(): a render faster than real
        time says when, so that what is heard is the same however fast the machine is. */
    void hold (bool h) { held.store (h); }

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
    std::mutex mutex;
    std::condition_variable signal, settled;
    bool quit = false, woken = false;
    int waiting = 0; ///< in waitUntilIdle()
    std::atomic<bool> held { false };
    std::optional<Key> done;
    std::atomic<double> lastTook { 0.0 };

    // Only the thread touches these.
    std::optional<GuitarResponse> recorded;
    uint32_t recordedFrom = 0;
    int recordedTake = -1;
    std::thread thread;

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

    Key wanted() const;
    void followAfter (const Key&, const Snapshot&);
    void run();
    EngineDesign design (const Key&, const Snapshot&);
};
}
