#include "session/SharedState.h"

#include "files/Log.h"

namespace coldiron
{
const TakeMaterial& Snapshot::materialFor (OptionId id) const
{
    static const TakeMaterial none;
    const auto found = material.find (takeFor (id));
    return found == material.end() ? none : found->second;
}

CircuitConfig Snapshot::recordedConfig (OptionId id) const
{
    CircuitConfig config = job->recordedConfig (takeFor (id));
    config.strings.only = only;
    return config;
}

CircuitConfig configOf (const Snapshot& snapshot, const LiveSettings& live, OptionId id)
{
    const Option* option = snapshot.option (id);
    CircuitConfig config = option ? snapshot.job->optionConfig (*option) : snapshot.recordedConfig (id);
    if (option)
    {
        // The strings played are those of the take it is derived from, whichever the option was planned for.
        const CircuitConfig recorded = snapshot.recordedConfig (id);
        if (recorded.strings.strings.size() == config.strings.strings.size())
            config.strings.played = recorded.strings.played;
        config.strings.only = snapshot.only < static_cast<int> (config.strings.strings.size()) ? snapshot.only : -1;
        config.setting = live.setting (id, config.setting, config.harness, snapshot.map);
    }
    return config;
}

std::string nameOf (OptionId id) { return id == asRecorded ? "the take as recorded" : "option " + letterOf (id); }

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
    changes.raise();
}

void SharedState::put (Snapshot next)
{
    {
        const std::scoped_lock lock (mutex);
        next.revision = current->revision + 1;
        current = std::make_shared<const Snapshot> (std::move (next));
        for (const OptionId id : optionIds)
            if (current->option (id) == nullptr)
                reports[indexOf (id)] = nullptr;
    }
    changes.raise();
}

SharedState::Origin SharedState::origin (OptionId id) const
{
    const std::scoped_lock lock (mutex);
    return { current->revision, id == asRecorded ? 0 : live.generation (id), afterRevision };
}

std::shared_ptr<const Report> SharedState::report (OptionId id) const
{
    const std::scoped_lock lock (mutex);
    return reports[indexOf (id)];
}

std::shared_ptr<const Report> SharedState::freshReport (OptionId id) const
{
    const Origin now = origin (id);
    const std::scoped_lock lock (mutex);
    return origins[indexOf (id)] == now ? reports[indexOf (id)] : nullptr;
}

void SharedState::put (std::shared_ptr<const Report> report, Origin from)
{
    bool isFaultNew = false;
    {
        const std::scoped_lock lock (mutex);
        if (current->revision != from.snapshot)
            return;
        const auto place = indexOf (report->option);
        isFaultNew = report->fault != (reports[place] != nullptr ? reports[place]->fault : "");
        origins[place] = from;
        reports[place] = std::move (report);
    }
    reportsRevision.fetch_add (1);
    if (isFaultNew)
        jobRevision.fetch_add (1);
    changes.raise();
}

void SharedState::tryAgain()
{
    bool any = false;
    {
        const std::scoped_lock lock (mutex);
        for (auto& report : reports)
            if (report != nullptr && ! report->fault.empty())
            {
                report = nullptr;
                any = true;
            }
    }
    if (any)
        jobRevision.fetch_add (1);
    changes.raise();
}

void SharedState::tellFault (const std::string& what, const std::string& message)
{
    {
        const std::scoped_lock lock (mutex);
        std::string& before = told[what];
        if (before == message)
            return;
        before = message;
    }
    if (! message.empty())
        logFault (message);
    jobRevision.fetch_add (1);
    changes.raise();
}

Diagnostics SharedState::faults() const
{
    Diagnostics faults;
    const std::scoped_lock lock (mutex);
    for (const auto& [what, message] : told)
        if (! message.empty())
            faults.push_back ({ {}, 0, message });
    for (const auto& report : reports)
        if (report != nullptr && ! report->fault.empty())
            faults.push_back ({ {}, 0, report->fault });
    return faults;
}
}
