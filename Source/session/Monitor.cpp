#include "session/Monitor.h"

#include "session/KeptState.h"
#include "session/Takes.h"

namespace coldiron
{
Monitor::Monitor (SharedState& s, JobEditor& e, Automation& a, Takes& t) : shared (s), editor (e), automation (a), takes (t) {}

void Monitor::hear (OptionId id)
{
    if (shared.isBlind())
        return; // numbers alone are heard then
    automation.move (ParameterKind::option, 0, numberOf (id));
    takes.followHeard();
}

void Monitor::setBypassed (bool b) { automation.move (ParameterKind::bypass, 0, b ? 1.0 : 0.0); }

void Monitor::setLevelMatched (bool m)
{
    if (! shared.isBlind())
        automation.move (ParameterKind::matched, 0, m ? 1.0 : 0.0);
}

int Monitor::onlyString() const { return shared.snapshot()->only; }

int Monitor::onlyStringOf (const Job& job) const
{
    const int wanted = only.load();
    return wanted < static_cast<int> (job.guitar.strings.size()) ? wanted : -1;
}

void Monitor::setOnlyString (int string)
{
    const int count = static_cast<int> (editor.job()->guitar.strings.size());
    only = string >= 0 && string < count ? string : -1;
    editor.republish();
}

void Monitor::keep (JobTree& state) const
{
    state["heard"] = numberOf (shared.heard.load());
    state["bypassed"] = shared.bypassed.load();
    state["matched"] = shared.matched.load();
    state["only_string"] = only.load();
}

void Monitor::restore (const JobTree& state)
{
    shared.heard = optionAt (static_cast<int> (kept::numberIn (state, "heard", 0.0, lastOption, 0.0)));
    shared.bypassed = kept::flagIn (state, "bypassed");
    shared.matched = kept::flagIn (state, "matched");
    only = static_cast<int> (kept::numberIn (state, "only_string", -1.0, 100.0, -1.0));
}
}
