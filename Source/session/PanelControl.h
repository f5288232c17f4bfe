#pragma once

#include <string>
#include <vector>

namespace coldiron
{
/** A knob or lever that a parameter of the plugin stands for. The places are the same for all options of a job: the
    guitar's own controls first, then those that rewires fit, in the order of the options. */
struct PanelControl
{
    std::string name;
    std::vector<std::string> positions; ///< empty for a knob
    int place = 0;                      ///< from 0, among the knobs or among the levers; -1: more than there are parameters
    bool isKnob() const { return positions.empty(); }
};
}
