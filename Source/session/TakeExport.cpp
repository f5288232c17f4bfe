#include "session/TakeExport.h"

#include "files/Log.h"

namespace coldiron
{
TakeExport::TakeExport (RenderPlan plan, std::filesystem::path folder)
    : worker (
        "coldiron-export",
        [this, plan = std::move (plan), to = std::move (folder)] (const Cancellation& stop)
        {
            if (! done)
                run (plan, to, stop);
            return false;
        },
        [this] (const std::string& words) { fail (words); })
{
}

std::vector<std::string> TakeExport::written() const
{
    const std::scoped_lock lock (mutex);
    return names;
}

std::string TakeExport::fault() const
{
    const std::scoped_lock lock (mutex);
    return why;
}

void TakeExport::fail (const std::string& words)
{
    logFault ("the sounds cannot be written: " + words);
    {
        const std::scoped_lock lock (mutex);
        why = words;
    }
    done = true;
}

void TakeExport::run (RenderPlan plan, const std::filesystem::path& folder, const Cancellation& stop)
{
    std::filesystem::create_directories (folder);
    if (plan.pieces.empty())
        throw TakeError ("the job has no take to render");
    const auto files = FileRenderer (
                           std::move (plan), [this] (double part) { share = part; }, stop)
                           .write (folder);
    {
        const std::scoped_lock lock (mutex);
        for (const auto& file : files)
            names.push_back (file.fileName);
    }
    share = 1.0;
    done = true;
}
}
