#pragma once

#include "session/JobEditor.h"

namespace coldiron
{
class Monitor;
class Takes;
class Transport;

/** What was heard at true level, and the option agreed on. */
class Agreement
{
public:
    Agreement (SharedState&, JobEditor&, Monitor&, Transport&, Takes&);

    bool heardAtTrueLevel (OptionId) const; ///< for a second at least, as it is wired now
    void hearAtTrueLevel (OptionId);        ///< level true, no bypass, and the take plays if there is one
    bool agree (OptionId);                  ///< refused unless heard at true level; the job notes what was
    bool takeBack();

    /** @name For the session */
    ///@{
    void forgetRewired (const Job& before, const Job& now); ///< one that is wired otherwise has not been heard yet
    void begin (const Job&);                                ///< of a job just opened: those it says were heard
    void keep (JobTree& state) const;
    void restore (const JobTree& state); ///< on top of what the job says
    ///@}

private:
    SharedState& shared;
    JobEditor& editor;
    Monitor& monitor;
    Transport& transport;
    Takes& takes;
};
}
