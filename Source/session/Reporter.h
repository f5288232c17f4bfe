#pragma once

#include "session/SharedState.h"

#include <condition_variable>
#include <functional>
#include <optional>
#include <thread>

namespace coldiron
{
/** The thread that computes what is drawn and told: first every curve, then bands and figures, the heard option first;
    a sweep before all. It also reads takes, since that may take a while. */
class Reporter
{
public:
    explicit Reporter (SharedState&);
    ~Reporter();

    void wake();
    void wantSweep (OptionId, const std::string& knob);
    std::vector<SweepCurve> sweep() const;
    bool isWorking (OptionId) const;

    /** Waits until everything is told, and the headroom kept for it. @return whether it is */
    bool waitUntilIdle (double seconds);

    /** Waits until all of one version is told. @return whether it is */
    bool waitUntilIdle (OptionId, double seconds);

    static std::vector<double> curveHz();

private:
    struct Wanted
    {
        OptionId option = asRecorded;
        std::string knob;
        uint32_t number = 0;
    };

    SharedState& shared;
    mutable std::mutex mutex;
    std::condition_variable signal;
    bool quit = false, woken = false;
    std::atomic<uint32_t> rests { 0 }; ///< how often there was nothing left to do
    Wanted wanted;
    uint32_t sweptNumber = 0;
    uint32_t sweptSetting = 0;
    std::vector<SweepCurve> swept;

    // Only the thread touches these.
    RenderSpec heardSpec; ///< the take as recorded, with what follows the jack
    std::shared_ptr<const OutputChainInUse> chainOf;
    std::shared_ptr<const TakeAudio> chainTake;
    OutputCurve heardCurve;
    double heardTakeLufs = -20.0;
    std::pair<uint32_t, bool> headroomFor { 0, false };

    std::thread thread;

    bool waitFor (double seconds, const std::function<bool()>&);
    void run();
    bool doNext();
    bool doSweep();
    std::shared_ptr<Report> compute (const Snapshot&, OptionId, bool complete);
    void followAfter (const Snapshot&, const TakeMaterial&);
    void keepHeadroom();
};
}
