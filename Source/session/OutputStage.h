#pragma once

#include "session/Automation.h"
#include "session/JobEditor.h"

namespace coldiron
{
/** What is heard behind the jack, the same for every option and for as recorded: the chain, which is kept in the job, the
    headroom and the trim. */
class OutputStage
{
public:
    OutputStage (SharedState&, JobEditor&, Automation&);

    /** An application of its own and no plugin: an amplifier is usual there, and headroom kept. */
    void setStandsAlone();

    OutputChainChoice chain() const { return shared.snapshot()->after; } ///< as chosen
    bool setChain (const OutputChainChoice&);                            ///< one step of undo; a file is kept relative to the job
    std::string chainFault() const { return shared.after()->fault; } ///< why it is not heard and the one before is; empty: it is
    OutputChainChoice usualChain() const;                            ///< where the job says nothing
    double tailSeconds() const;                                      ///< of what sounds on after the input has stopped

    /** One gain for all versions, from their true peaks on the take with hum and hiss. */
    bool headroomKept() const { return shared.headroomKept.load(); }
    void setHeadroomKept (bool);
    double headroomDb() const { return shared.headroomDb.load(); } ///< at most 0: what it is, or would be; on the take alone

    double trimDb() const { return shared.trimDb.load(); }
    void setTrimDb (double); ///< -24 to 24

    void keep (JobTree& state) const;
    void restore (const JobTree& state);

private:
    SharedState& shared;
    JobEditor& editor;
    Automation& automation;
    std::atomic<bool> standsAlone { false };
};
}
