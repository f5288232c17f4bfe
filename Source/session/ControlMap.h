#pragma once

#include "job/Job.h"
#include "session/PanelControl.h"

namespace coldiron
{
inline constexpr int numKnobs = 12; ///< parameters there are, for ever
inline constexpr int numLevers = 8;

/** Which control of a job stands at which parameter. The guitar's own controls come first, then those that rewires fit,
    in the order of the options, so that automation keeps its lanes while options are switched. */
class ControlMap
{
public:
    ControlMap() = default;
    explicit ControlMap (const Job&);

    const std::vector<PanelControl>& knobs() const { return knobList; }
    const std::vector<PanelControl>& levers() const { return leverList; }
    const PanelControl* find (const std::string& name) const;
    const PanelControl* knobAt (int place) const;
    const PanelControl* leverAt (int place) const;

private:
    std::vector<PanelControl> knobList, leverList;

    void add (const Harness&);
};
}
