#pragma once

#include "audition/SwitchEngine.h"
#include "job/TakeFile.h"
#include "plugin/session/LiveSettings.h"

#include <array>
#include <atomic>
#include <mutex>

namespace coldiron
{
/** Everything the background threads compute from, as it was when it was put together. Immutable. */
struct Snapshot
{
    uint32_t revision = 0;
    std::shared_ptr<const Job> job = std::make_shared<const Job>();
    ControlMap map;
    int take = -1;                              ///< the one loaded or being loaded
    std::shared_ptr<const TakeAudio> audio;     ///< null: none, or not read yet
    Spectrum spectrum;                          ///< empty without a take
    double takeLufs = -20.0;                    ///< a usual level for a line where nothing is known

    Side recordedSide() const { return job->recordedSide (take); }
    const Option* option (Tag tag) const { return job->find (letterOf (tag)); }
};

/** A version as it stands on the bench: the snapshot's option with the live setting. As recorded: the take's own. */
Side sideOf (const Snapshot&, const LiveSettings&, Tag);

/** What the threads of a session share. The audio thread touches the engine and the atomics alone. */
struct Workshop
{
    LiveSettings live;
    SwitchEngine engine;

    std::atomic<Tag> heard { asRecorded };
    std::atomic<bool> matched { false };
    std::atomic<double> mainsHz { 50.0 }, facingDegrees { 0.0 }, buzz { 0.0 }, hissGainDb { -1.0 };
    std::atomic<double> sampleRate { 0.0 };
    std::atomic<uint32_t> prepared { 0 };       ///< counts prepare(): the engine has forgotten its design

    std::atomic<uint32_t> jobRevision { 0 }, heardRevision { 0 }, settingsRevision { 0 }, reportsRevision { 0 },
        transportRevision { 0 };

    std::shared_ptr<const Snapshot> snapshot() const;
    void put (Snapshot);                        ///< numbers it and drops the reports of options that are gone

    /** What a report was computed from; the same origin, the same report. */
    struct Origin
    {
        uint32_t snapshot = 0, setting = 0;
        bool operator== (const Origin&) const = default;
    };
    Origin origin (Tag) const;                  ///< as things stand now

    std::shared_ptr<const Report> report (Tag) const;       ///< the last one, maybe of the setting before
    std::shared_ptr<const Report> freshReport (Tag) const;  ///< nullptr unless it tells of what stands now
    /** Refused when the job has changed since: the report would tell of another one. */
    void put (std::shared_ptr<const Report>, Origin);

private:
    mutable std::mutex mutex;
    std::shared_ptr<const Snapshot> current = std::make_shared<const Snapshot>();
    std::array<std::shared_ptr<const Report>, maxTag + 1> reports;
    std::array<Origin, maxTag + 1> origins;
};
}
