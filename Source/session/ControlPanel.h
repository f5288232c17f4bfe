#pragma once

#include "session/Automation.h"
#include "session/JobEditor.h"

#include <optional>

namespace coldiron
{
/** The knobs and levers of every version, where they stand now. */
class ControlPanel
{
public:
    ControlPanel (SharedState&, JobEditor&, Automation&);

    std::vector<PanelControl> of (OptionId) const;                  ///< those the option's harness has
    Setting setting (OptionId) const;                               ///< as it stands now, everything named
    void setKnob (OptionId, const std::string& name, double value); ///< heard within 20 ms; no undo step
    void setLever (OptionId, const std::string& name, const std::string& position);
    void beginGesture (OptionId, const std::string& name); ///< around a drag, for the host's automation
    void endGesture (OptionId, const std::string& name);   ///< writes the setting into the job: one step of undo

    ControlMap map() const { return shared.snapshot()->map; } ///< which control stands at which parameter

    void keep (JobTree& state) const;
    void restore (const JobTree& state); ///< after the job's own settings are taken over

private:
    SharedState& shared;
    JobEditor& editor;
    Automation& automation;
    std::optional<JobTree> gestureBefore; ///< message thread: the job when the drag began

    bool isAutomated (OptionId, const PanelControl*) const;
};
}
