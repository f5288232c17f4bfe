#pragma once

#include "concurrency/Worker.h"
#include "render/FileRenderer.h"

#include <atomic>
#include <mutex>
#include <string>
#include <vector>

namespace coldiron
{
/** Renders a plan into a folder, on a thread of its own, as `coldiron render` does; its end ends that within some
    milliseconds, and what was not finished is gone. */
class TakeExport
{
public:
    TakeExport (RenderPlan, std::filesystem::path folder);

    bool isDone() const { return done.load(); }
    double progress() const { return share.load(); } ///< 0 to 1
    std::vector<std::string> written() const;        ///< names of the files; none until all are there
    std::string fault() const;                       ///< why it ended early; empty: all was written

private:
    std::atomic<bool> done { false };
    std::atomic<double> share { 0.0 };
    mutable std::mutex mutex;
    std::vector<std::string> names;
    std::string why;
    Worker worker; ///< last

    void run (RenderPlan, const std::filesystem::path& folder, const Cancellation&);
    void fail (const std::string& words);
};
}
