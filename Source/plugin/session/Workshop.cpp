#include "plugin/session/Workshop.h"

namespace coldiron
{
Side sideOf (const Snapshot& snapshot, const LiveSettings& live, Tag tag)
{
    const Option* option = snapshot.option (tag);
    Side side = option ? snapshot.job->optionSide (*option) : snapshot.recordedSide();
    if (option)
    {
        // The strings played are those of the take that is loaded, whichever the option was planned for.
        const Side recorded = snapshot.recordedSide();
        if (recorded.strings.strings.size() == side.strings.strings.size())
            side.strings.played = recorded.strings.played;
        side.setting = live.setting (tag, side.setting, side.harness, snapshot.map);
    }
    return side;
}

std::shared_ptr<const Snapshot> Workshop::snapshot() const
{
    const std::scoped_lock lock (mutex);
    return current;
}

void Workshop::put (Snapshot next)
{
    const std::scoped_lock lock (mutex);
    next.revision = current->revision + 1;
    current = std::make_shared<const Snapshot> (std::move (next));
    for (Tag tag = 1; tag <= maxTag; ++tag)
        if (current->option (tag) == nullptr)
            reports[static_cast<size_t> (tag)] = nullptr;
}

Workshop::Origin Workshop::origin (Tag tag) const
{
    const std::scoped_lock lock (mutex);
    return { current->revision, tag == asRecorded ? 0 : live.generation (tag) };
}

std::shared_ptr<const Report> Workshop::report (Tag tag) const
{
    const std::scoped_lock lock (mutex);
    return tag >= 0 && tag <= maxTag ? reports[static_cast<size_t> (tag)] : nullptr;
}

std::shared_ptr<const Report> Workshop::freshReport (Tag tag) const
{
    const Origin now = origin (tag);
    const std::scoped_lock lock (mutex);
    return origins[static_cast<size_t> (tag)] == now ? reports[static_cast<size_t> (tag)] : nullptr;
}

void Workshop::put (std::shared_ptr<const Report> report, Origin from)
{
    {
        const std::scoped_lock lock (mutex);
        if (current->revision != from.snapshot)
            return;
        const auto place = static_cast<size_t> (report->tag);
        origins[place] = from;
        reports[place] = std::move (report);
    }
    reportsRevision.fetch_add (1);
}
}
