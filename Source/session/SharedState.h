#pragma once

#include "concurrency/ChangeSignal.h"
#include "engine/SwitchEngine.h"
#include "metering/NoiseFloor.h"
#include "session/LiveSettings.h"
#include "session/Report.h"
#include "session/Revisions.h"
#include "takes/ImpulseFile.h"

#include <array>
#include <atomic>
#include <map>
#include <mutex>

namespace coldiron
{
/** A take in memory with what is measured of it. */
struct TakeMaterial
{
    std::shared_ptr<const TakeAudio> audio; ///< null: not read yet, or it cannot be
    Spectrum spectrum;                      ///< empty without a take
    NoiseFloor noise;
    double lufs = -20.0; ///< a usual level for a line where nothing is known
};

/** Everything the background threads compute from, as it was when it was put together. Immutable. */
struct Snapshot
{
    uint32_t revision = 0;
    std::shared_ptr<const Job> job = std::make_shared<const Job>();
    ControlMap map;
    int take = -1;                               ///< the one selected, as recorded plays it
    bool follows = false;                        ///< each option is derived from its own or nearest take
    int only = -1;                               ///< >= 0: changes for this string alone
    std::array<int, numVersions> derivedFrom {}; ///< index of a take by version; -1: there is none
    std::map<int, TakeMaterial> material;        ///< by index of the take; those that are needed
    OutputChainChoice after;                     ///< as the job says, or as is usual

    int takeFor (OptionId id) const { return option (id) == nullptr ? take : derivedFrom[indexOf (id)]; }
    const TakeMaterial& materialFor (OptionId) const;
    CircuitConfig recordedConfig (OptionId) const; ///< how the take of that version was recorded
    const Option* option (OptionId id) const { return job->find (letterOf (id)); }
};

/** A version as it stands now: the snapshot's option with the live setting. As recorded: the take's own. */
CircuitConfig configOf (const Snapshot&, const LiveSettings&, OptionId);

std::string nameOf (OptionId); ///< "option A", "the take as recorded"

/** What plays in a blind test where there is none. */
inline constexpr auto notBlind = static_cast<OptionId> (-1);
/** What is heard after the jack: the choice, unless its file could not be used. Immutable. */
struct OutputChainInUse
{
    OutputChainChoice choice;
    std::shared_ptr<const ImpulseResponse> impulse; ///< where the sound is a file's
    std::string fault;                              ///< not empty: why the sound chosen is not heard
};

/** What the threads of a session share. The audio thread touches the engine and the atomics alone. */
struct SharedState
{
    LiveSettings live;
    SwitchEngine engine;

    /** Raised after every change of what a design or a report depends on; the threads that compute them sleep until then. */
    ChangeSignal changes;

    std::atomic<OptionId> heard { asRecorded };
    std::atomic<OptionId> blindOption { notBlind };               ///< what plays in a blind test, whatever `heard` says
    std::array<std::atomic<double>, numVersions> heardSeconds {}; ///< played at true level; written by the audio thread
    std::atomic<bool> matched { false }, bypassed { false };
    std::atomic<bool> fromTake { false }; ///< the take's file is heard, not the host's track or the live input
    std::atomic<double> mainsHz { 50.0 }, facingDegrees { 0.0 }, buzz { 0.0 }, hissGainDb { -1.0 };
    std::atomic<double> humDb { -80.0 }, trimDb { 0.0 };
    std::atomic<bool> headroomKept { false };
    std::atomic<double> headroomDb { 0.0 }; ///< the reporter's
    std::atomic<double> sampleRate { 0.0 };
    std::atomic<uint32_t> prepared { 0 }; ///< counts prepare(): the engine has forgotten its design

    std::atomic<uint32_t> jobRevision { 0 }, heardRevision { 0 }, settingsRevision { 0 }, reportsRevision { 0 },
        transportRevision { 0 };

    Revisions revisions() const
    {
        return { jobRevision.load(), heardRevision.load(), settingsRevision.load(), reportsRevision.load(),
                 transportRevision.load() };
    }

    void announceJob() ///< there is something new to read of the document
    {
        jobRevision.fetch_add (1);
        changes.raise();
    }
    void announceHeard() ///< or of what is heard
    {
        heardRevision.fetch_add (1);
        changes.raise();
    }

    bool isBlind() const { return blindOption.load() != notBlind; }
    OptionId playing() const { return isBlind() ? blindOption.load() : heard.load(); }
    std::shared_ptr<const OutputChainInUse> after() const;
    void put (OutputChainInUse);

    std::shared_ptr<const Snapshot> snapshot() const;
    void put (Snapshot); ///< numbers it and drops the reports of options that are gone

    /** What a report was computed from; the same origin, the same report. */
    struct Origin
    {
        uint32_t snapshot = 0, setting = 0, after = 0;
        bool operator== (const Origin&) const = default;
    };
    Origin origin (OptionId) const; ///< as things stand now

    std::shared_ptr<const Report> report (OptionId) const;      ///< the last one, maybe of the setting before
    std::shared_ptr<const Report> freshReport (OptionId) const; ///< nullptr unless it tells of what stands now
    /** Refused when the job has changed since: the report would tell of another one. */
    void put (std::shared_ptr<const Report>, Origin);

    /** Reports that failed are computed anew. */
    void tryAgain();

    /** What failed in the background: listed until it is well again, and logged. Not for the audio thread.
        @param what     the same each time the same thing is tried, "sound"
        @param message  for people; empty: it is well */
    void tellFault (const std::string& what, const std::string& message);
    Diagnostics faults() const; ///< those told and not well again, and those of the reports that stand

private:
    mutable std::mutex mutex;
    std::shared_ptr<const Snapshot> current = std::make_shared<const Snapshot>();
    std::shared_ptr<const OutputChainInUse> afterNow = std::make_shared<const OutputChainInUse>();
    uint32_t afterRevision = 0;
    std::array<std::shared_ptr<const Report>, numVersions> reports;
    std::array<Origin, numVersions> origins;
    std::map<std::string, std::string> told; ///< faults by what failed
};
}
