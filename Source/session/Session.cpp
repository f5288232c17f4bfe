#include "session/Session.h"

#include "session/KeptState.h"

#include <chrono>

namespace coldiron
{
namespace
{
constexpr const char* stateKind = "state 1";
constexpr size_t largestState = 64u << 20;
}

Session::Session (PresetFolders folders)
    : designer (shared), reports (shared),
      audio (shared, designer, [this] (double seconds) { return await (Awaited::sound, seconds); }),
      jobEditor (shared, std::move (folders), [this] (const auto& job, JobEditor::Change change) { publish (job, change); }),
      automation (shared), transport (shared, jobEditor, audio.takePlayer()), monitor (shared, jobEditor, automation, takes),
      noise (shared, automation), output (shared, jobEditor, automation), controls (shared, jobEditor, automation),
      options (jobEditor, controls), blindTest (shared, jobEditor, monitor, takes),
      agreement (shared, jobEditor, monitor, transport, takes), exports (shared, jobEditor, takes),
      takes (shared, jobEditor, audio.takePlayer())
{
    publishSnapshot (jobEditor.job(), true);
}

/** With the document locked: what follows from a change of the job. */
void Session::publish (const std::shared_ptr<const Job>& job, JobEditor::Change change)
{
    const bool opened = change == JobEditor::Change::opened;
    if (opened)
    {
        takes.begin();
        blindTest.end();
    }
    publishSnapshot (job, change != JobEditor::Change::takesOnly);
    if (opened)
        agreement.begin (*job);
}

/** Puts together what the threads compute from. @param settingsToo  the controls go where the job says */
void Session::publishSnapshot (const std::shared_ptr<const Job>& job, bool settingsToo)
{
    Snapshot next;
    next.job = job;
    next.map = ControlMap (*job);
    next.only = monitor.onlyStringOf (*job);
    next.after = job->outputChain.value_or (output.usualChain());
    takes.gather (next);
    if (const auto before = shared.snapshot()->job; before != job)
        agreement.forgetRewired (*before, *job);
    if (settingsToo)
    {
        shared.live.load (*job, next.map);
        shared.settingsRevision.fetch_add (1);
    }
    shared.put (std::move (next));
    blindTest.jobChanged();
    takes.followHeard();
    shared.announceJob();
}

Diagnostics Session::diagnostics() const
{
    Diagnostics diagnostics = jobEditor.diagnostics();
    if (audio.isLate())
        diagnostics.push_back (
            { {}, 0, "a render went on before the take and its levels were ready, and is not to be trusted; render it again" });
    for (const Diagnostic& fault : shared.faults())
        diagnostics.push_back (fault);
    return diagnostics;
}

/** Until nothing that is heard now, or told, is still on its way. Not for the audio thread while it plays in real time.
    @returns whether it is so */
bool Session::await (Awaited what, double seconds)
{
    using Clock = std::chrono::steady_clock;
    const auto until = Clock::now() + std::chrono::duration<double> (seconds);
    const auto left = [&] { return std::max (0.0, std::chrono::duration<double> (until - Clock::now()).count()); };

    bool all = takes.waitUntilRead (left());
    takes.followHeard();
    all = audio.takePlayer().waitUntilLoaded (left()) && all;
    all = designer.waitUntilIdle (left()) && all; // with it the chain after the jack, which levels are measured behind
    const bool headroom = shared.fromTake.load() && shared.headroomKept.load();
    const bool matched = (shared.matched.load() || shared.isBlind()) && shared.playing() != asRecorded;
    if (what == Awaited::everything || headroom)
        all = reports.waitUntilIdle (left()) && all;
    else if (matched)
        all = reports.waitUntilIdle (shared.playing(), left()) && all;
    else
        return all;
    return designer.waitUntilIdle (left()) && all; // the level exactly
}

std::string Session::state() const
{
    JobTree state;
    state["coldiron"] = stateKind;
    jobEditor.keep (state,
                    [&]
                    {
                        monitor.keep (state);
                        noise.keep (state);
                        output.keep (state);
                        transport.keep (state);
                        takes.keep (state);
                        agreement.keep (state);
                        controls.keep (state);
                    });
    return state.dump (-1, ' ', false, JobTree::error_handler_t::replace);
}

bool Session::restore (const std::string& text)
{
    const auto refuse = [&] (const std::string& why)
    {
        jobEditor.refuse ("the state kept by the host cannot be used: " + why);
        return false;
    };
    if (text.size() > largestState || isTooDeep (text))
        return refuse ("too large or too deep");
    const JobTree state = JobTree::parse (text, nullptr, false);
    if (! state.is_object() || kept::textIn (state, "coldiron") != stateKind || kept::textIn (state, "job").empty())
        return refuse (std::string ("no \"") + stateKind + "\"");

    return jobEditor.restore (state,
                              [&] (const auto& job, JobEditor::Change)
                              {
                                  monitor.restore (state);
                                  noise.restore (state);
                                  output.restore (state);
                                  transport.restore (state);
                                  takes.restore (state);
                                  blindTest.end();
                                  publishSnapshot (job, true);
                                  agreement.begin (*job);
                                  agreement.restore (state);
                                  transport.restoreLoop (state);
                                  controls.restore (state);
                                  shared.heardRevision.fetch_add (1);
                                  shared.announceJob();
                              });
}
}
