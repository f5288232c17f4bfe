#include "session/TakeExport.h"

namespace coldiron
{
TakeExport::TakeExport (RenderPlan plan, std::filesystem::path folder)
    : thread ([this, plan = std::move (plan), to = std::move (folder)] { run (plan, to); })
{
}

TakeExport::~TakeExport()
{
    stops = true;
    thread.join();
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

void TakeExport::run (RenderPlan plan, const std::filesystem::path& folder)
{
    try
    {
        std::filesystem::create_directories (folder);
        if (plan.pieces.empty())
            throw TakeError ("the job has no take to render");
        const auto follow = [this] (double part) { return (share = part, ! stops); };
        const auto files = FileRenderer (std::move (plan), follow).write (folder);
        const std::scoped_lock lock (mutex);
        for (const auto& file : files)
            names.push_back (file.fileName);
        share = 1.0;
    }
    catch (const std::exception& fault)
    {
        const std::scoped_lock lock (mutex);
        why = fault.what();
    }
    done = true;
}
}
