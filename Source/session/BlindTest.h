#pragma once

#include "session/BlindRun.h"
#include "session/JobEditor.h"

#include <functional>
#include <mutex>
#include <optional>

namespace coldiron
{
class Monitor;
class Takes;

/** Versions judged by ear alone. While a test runs Monitor::heard() is as recorded, whatever plays, and levels are matched:
    nothing a window reads tells what is behind a number. A job that is opened, or loses one of the versions, ends it. */
class BlindTest
{
public:
    BlindTest (SharedState&, JobEditor&, Monitor&, Takes&);

    std::string whyNot (const std::vector<OptionId>&) const;                             ///< empty: these can be judged now
    bool startRanking (const std::vector<OptionId>&, std::optional<uint64_t> seed = {}); ///< two to nine versions
    bool startAbx (OptionId, OptionId, int trials, std::optional<uint64_t> seed = {});   ///< 5 to 100 trials
    BlindView view() const;
    void hear (int number); ///< from 1
    void rank (int number, RankMove);
    void answer (int number); ///< abx: X is 1 or 2; on to the next trial

    /** Ends the test and puts what it found into the job: one step of undo. None while it is not complete.
        @param date  "2026-11-25", or empty */
    std::optional<BlindOutcome> reveal (const std::string& date = {});
    void stop(); ///< ends it without a result

    /** @name For the session */
    ///@{
    void end();        ///< with the job; nothing plays from it any more
    void jobChanged(); ///< ends it where what is behind the numbers is gone
    ///@}

private:
    SharedState& shared;
    JobEditor& editor;
    Monitor& monitor;
    Takes& takes;
    mutable std::mutex mutex;
    std::optional<BlindRun> run;

    bool start (const std::vector<OptionId>&, const std::function<BlindRun()>&);
    bool stillHolds() const;
    void moved();
};
}
