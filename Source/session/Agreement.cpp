#include "session/Agreement.h"

#include "session/Monitor.h"
#include "session/Takes.h"
#include "session/Transport.h"

#include <algorithm>

namespace coldiron
{
Agreement::Agreement (SharedState& s, JobEditor& e, Monitor& m, Transport& t, Takes& takesOfJob)
    : shared (s), editor (e), monitor (m), transport (t), takes (takesOfJob)
{
}

bool Agreement::heardAtTrueLevel (OptionId id) const
{
    return id != asRecorded && shared.heardSeconds[indexOf (id)].load() >= 1.0;
}

void Agreement::forgetRewired (const Job& before, const Job& now)
{
    for (const OptionId id : optionIds)
    {
        const Option *was = before.find (letterOf (id)), *is = now.find (letterOf (id));
        if (was == nullptr || is == nullptr || ! was->harness.sameAs (is->harness))
            shared.heardSeconds[indexOf (id)] = 0.0;
    }
}

void Agreement::begin (const Job& job)
{
    for (const OptionId id : optionIds)
        shared.heardSeconds[indexOf (id)] =
            std::find (job.heard.begin(), job.heard.end(), letterOf (id)) == job.heard.end() ? 0.0 : 1.0;
}

void Agreement::hearAtTrueLevel (OptionId id)
{
    if (shared.matched.load())
        monitor.setLevelMatched (false);
    if (monitor.bypassed())
        monitor.setBypassed (false);
    monitor.hear (id);
    if (const auto picture = takes.picture(); ! transport.isPlaying() && picture != nullptr && picture->fault.empty())
        transport.play();
}

bool Agreement::agree (OptionId id)
{
    if (! heardAtTrueLevel (id))
    {
        editor.refuse ("Hear " + letterOf (id) + " at true level first");
        return false;
    }
    return editor.edit ("Agree on " + letterOf (id),
                        [&] (JobTree& tree)
                        {
                            tree["agreed"] = letterOf (id);
                            JobTree letters = JobTree::array();
                            for (const OptionId each : optionIds)
                                if (heardAtTrueLevel (each) && tree.contains ("options")
                                    && tree["options"].contains (letterOf (each)))
                                    letters.push_back (letterOf (each));
                            tree["heard"] = letters;
                            return std::string();
                        });
}

bool Agreement::takeBack() { return editor.edit ("/agreed", {}, "Take the agreement back"); }

void Agreement::keep (JobTree& state) const
{
    state["heard_true"] = JobTree::array();
    for (const OptionId id : optionIds)
        if (heardAtTrueLevel (id))
            state["heard_true"].push_back (numberOf (id));
}

void Agreement::restore (const JobTree& state)
{
    if (const auto heard = state.find ("heard_true"); heard != state.end() && heard->is_array())
        for (const auto& number : *heard)
            if (number.is_number_integer() && number.get<int64_t>() >= 1 && number.get<int64_t>() <= lastOption)
                shared.heardSeconds[indexOf (optionAt (number.get<int>()))] = 1.0;
}
}
