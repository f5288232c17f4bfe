#pragma once

#include "concurrency/Worker.h"
#include "session/SharedState.h"

#include <optional>

namespace coldiron
{
/** The thread that computes what is drawn and told: first every curve, then bands and figures, the heard option first;
    a sweep before all. Bands, figures and levels take their time: they are given up, within some milliseconds, as soon as
    anything more urgent is to be told or what they tell of has changed. */
class Reporter
{
public:
    explicit Reporter (SharedState&);

    void wake() { shared.changes.raise(); } ///< [any thread] after a change; SharedState's own calls do so themselves
    void wantSweep (OptionId, const std::string& knob);
    std::vector<SweepCurve> sweep() const;
    std::shared_ptr<const Report> report (OptionId id) const
    {
        return shared.report (id);
    }                                ///< null until first computed; maybe of the setting before
    bool isWorking (OptionId) const; ///< a newer report is on its way

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

    /** One report to compute. */
    struct Piece
    {
        OptionId option = asRecorded;
        bool complete = false; ///< or the curve alone
        SharedState::Origin origin;
        bool operator== (const Piece&) const = default;
    };

    SharedState& shared;
    mutable std::mutex mutex;
    Wanted wanted;
    uint32_t sweptNumber = 0;
    uint32_t sweptSetting = 0;
    std::vector<SweepCurve> swept;

    // Only the thread touches these.
    RenderSpec heardSpec; ///< the take as recorded, with what follows the jack
    std::shared_ptr<const OutputChainInUse> chainOf;
    std::shared_ptr<const TakeAudio> chainTake;
    OutputCurve heardCurve;
    std::optional<double> heardTakeLufs; ///< of that take behind that chain; none: not measured yet
    std::pair<uint32_t, bool> headroomFor { 0, false };

    Worker worker; ///< last

    bool turn (const Cancellation& stop);
    bool doSweep (const Cancellation& stop);
    static std::shared_ptr<Report> silentReport (OptionId);
    bool doNext (const Cancellation& stop);
    uint32_t sweepSetting (const Wanted&, const Snapshot&) const;
    bool isSweepWanted (const Snapshot&) const;
    std::optional<Piece> nextPiece (const Snapshot&) const;
    std::vector<SweepCurve> computeSweep (const Wanted&, const Snapshot&, const Cancellation&);
    std::shared_ptr<Report> compute (const Snapshot&, OptionId, bool complete, const Cancellation&);
    void completeReport (Report&, const Snapshot&, const CircuitConfig& option, const TransferFunction&, const Cancellation&);
    void followAfter (const Snapshot&, const TakeMaterial&, const Cancellation&);
    double takeLufsBehindChain (const TakeMaterial&, const Cancellation&);
    void keepHeadroom();
};
}
