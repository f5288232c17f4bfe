#pragma once

#include "job/Job.h"

#include <atomic>
#include <mutex>
#include <string>
#include <thread>
#include <vector>

namespace coldiron
{
/** Renders as recorded and every option of a job into a folder, on a thread of its own: the same filter, take and names
    as `coldiron render` writes. */
class TakeExport
{
public:
    /** @param matched  as loud as the take, each by one gain over the whole piece */
    TakeExport (std::shared_ptr<const Job>, std::filesystem::path folder, bool matched);
    ~TakeExport();                                ///< stops after the piece at hand

    bool isDone() const { return done.load(); }
    double progress() const { return share.load(); } ///< 0 to 1
    std::vector<std::string> written() const;     ///< names of the files there are
    std::string fault() const;                    ///< why it ended early; empty: all was written

private:
    const std::shared_ptr<const Job> job;
    const std::filesystem::path folder;
    const bool matched;
    std::atomic<bool> done { false }, stops { false };
    std::atomic<double> share { 0.0 };
    mutable std::mutex mutex;
    std::vector<std::string> names;
    std::string why;
    std::thread thread;

    void run();
};
}
