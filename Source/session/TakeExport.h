#pragma once

#include "render/FileRenderer.h"

#include <atomic>
#include <mutex>
#include <string>
#include <thread>
#include <vector>

namespace coldiron
{
/** Renders a plan into a folder, on a thread of its own, as `coldiron render` does. */
class TakeExport
{
public:
    TakeExport (RenderPlan, std::filesystem::path folder);
    ~TakeExport(); ///< stops within a block

    bool isDone() const { return done.load(); }
    double progress() const { return share.load(); } ///< 0 to 1
    std::vector<std::string> written() const;        ///< names of the files; none until all are there
    std::string fault() const;                       ///< why it ended early; empty: all was written

private:
    std::atomic<bool> done { false }, stops { false };
    std::atomic<double> share { 0.0 };
    mutable std::mutex mutex;
    std::vector<std::string> names;
    std::string why;
    std::thread thread;

    void run (RenderPlan, const std::filesystem::path& folder);
};
}
