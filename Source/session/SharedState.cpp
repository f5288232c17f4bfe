#include "session/SharedState.h"

namespace coldiron
{
const TakeMaterial& Snapshot::materialFor (Tag tag) const
{
    static const TakeMaterial none;
    const auto found = material.find (takeFor (tag));
    return found == material.end() ? none : found->second;
}

CircuitConfig Snapshot::recordedConfig (Tag tag) const
{
    CircuitConfig config = job->recordedConfig (takeFor (tag));
    config.strings.only = only;
    return config;
}

CircuitConfig configOf (const Snapshot& snapshot, const LiveSettings& live, Tag tag)
{
    const Option* option = snapshot.option (tag);
    CircuitConfig config = option ? snapshot.job->optionConfig (*option) : snapshot.recordedConfig (tag);
    if (option)
    {
        // The strings played are those of the take it is derived from, whichever the option was planned for.
        const CircuitConfig recorded = snapshot.recordedConfig (tag);
        if (recorded.strings.strings.size() == config.strings.strings.size())
            config.strings.played = recorded.strings.played;
        config.strings.only = snapshot.only < static_cast<int> (config.strings.strings.size()) ? snapshot.only : -1;
        config.setting = live.setting (tag, config.setting, config.harness, snapshot.map);
    }
    return config;
}

std::shared_ptr<const Snapshot> SharedState::snapshot() const
{
    const std::scoped_lock lock (mutex);
    return current;
}

std::shared_ptr<const OutputChainInUse> SharedState::after() const
{
    const std::scoped_lock lock (mutex);
    return afterNow;
}

void SharedState::put (OutputChainInUse next)
{
    {
        const std::scoped_lock lock (mutex);
        afterNow = std::make_shared<const OutputChainInUse> (std::move (next));
        ++afterRevision;
    }
    heardRevision.fetch_add (1);
}

void SharedState::put (Snapshot next)
{
    const std::scoped_lock lock (mutex);
    next.revision = current->revision + 1;
    current = std::make_shared<const Snapshot> (std::move (next));
    for (Tag tag = 1; tag <= maxTag; ++tag)
        if (current->option (tag) == nullptr)
            reports[static_cast<size_t> (tag)] = nullptr;
}

SharedState::Origin SharedState::origin (Tag tag) const
{
    const std::scoped_lock lock (mutex);
    return { current->revision, tag == asRecorded ? 0 : live.generation (tag), afterRevision };
}

std::shared_ptr<const Report> SharedState::report (Tag tag) const
{
    const std::scoped_lock lock (mutex);
    return tag >= 0 && tag <= maxTag ? reports[static_cast<size_t> (tag)] : nullptr;
}

std::shared_ptr<const Report> SharedState::freshReport (Tag tag) const
{
    const Origin now = origin (tag);
    const std::scoped_lock lock (mutex);
    return origins[static_cast<size_t> (tag)] == now ? reports[static_cast<size_t> (tag)] : nullptr;
}

void SharedState::put (std::shared_ptr<const Report> report, Origin from)
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
