#pragma once

#include "session/Automation.h"
#include "session/JobEditor.h"

namespace coldiron
{
class Takes;

/** Which version is heard, and how it is compared. */
class Monitor
{
public:
    Monitor (SharedState&, JobEditor&, Automation&, Takes&);

    /** [any thread] While a blind test runs it is as recorded, whatever plays. */
    OptionId heard() const { return shared.isBlind() ? asRecorded : shared.heard.load(); }
    void hear (OptionId); ///< one that does not exist plays as recorded; nothing while a blind test runs

    bool bypassed() const { return shared.bypassed.load(); }
    void setBypassed (bool);
    bool levelMatched() const { return shared.matched.load() || shared.isBlind(); }
    void setLevelMatched (bool);

    int onlyString() const; ///< index of the string alone that changes are asked for; -1 all
    void setOnlyString (int);
    int onlyStringOf (const Job& job) const; ///< likewise, on a guitar with so many strings

    void keep (JobTree& state) const;
    void restore (const JobTree& state);

private:
    SharedState& shared;
    JobEditor& editor;
    Automation& automation;
    Takes& takes;
    std::atomic<int> only { -1 }; ///< string asked for
};
}
