#include "plugin/session/Workshop.h"

namespace coldiron
{
const TakeMaterial& Snapshot::materialFor (Tag tag) const
{
    static const TakeMaterial none;
    const auto found = material.find (takeFor (tag));
    return found == material.end() ? none : found->second;
}

Side Snapshot::recordedSide (Tag tag) const
{
    Side side = job->recordedSide (takeFor (tag));
    side.strings.only = only;
    return side;
}

Side sideOf (const Snapshot& snapshot, const LiveSettings& live, Tag tag)
{
    const Option* option = snapshot.option (tag);
    Side side = option ? snapshot.job->optionSide (*option) : snapshot.recordedSide (tag);
    if (option)
    {
        // The strings played are those of the take it is derived from, whichever the option was planned for.
        const Side recorded = snapshot.recordedSide (tag);
        if (recorded.strings.strings.size() == side.strings.strings.size())
            side.strings.played = recorded.strings.played;
        side.strings.only = snapshot.only < static_cast<int> (side.strings.strings.size()) ? snapshot.only : -1;
        side.setting = live.setting (tag, side.setting, side.harness, snapshot.map);
    }
    return side;
}

std::shared_ptr<const Snapshot> Workshop::snapshot() const
{
    const std::scoped_lock lock (mutex);
    return current;
}

std::shared_ptr<const AfterInUse> Workshop::after() const
{
    const std::scoped_lock lock (mutex);
    return afterNow;
}

void Workshop::put (AfterInUse next)
{
    {
        const std::scoped_lock lock (mutex);
        afterNow = std::make_shared<const AfterInUse> (std::move (next));
        ++afterRevision;
    }
    heardRevision.fetch_add (1);
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
    return { current->revision, tag == asRecorded ? 0 : live.generation (tag), afterRevision };
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
