#pragma once

#include "guitar/Harness.h"

#include <map>
#include <string>
#include <vector>

namespace coldiron
{
/** Where each knob (0 to 10) and lever stands. What is left out stands at its rest: a knob at 10
    unless its pot says another (a blend's detent), a switch at its rest or first position. */
struct Setting
{
    std::map<std::string, double> knobs;
    std::map<std::string, std::string> levers;

    double knob (const std::string& name, double rest = 10.0) const; ///< @param rest  the control's own
    const SwitchType::Position& position (const Part& switchPart) const;

    bool operator== (const Setting&) const = default;
};

/** One control as the player sees it. */
struct Control
{
    std::string name;                   ///< the name used in settings
    std::vector<std::string> positions; ///< empty for a knob
    std::string standard;               ///< a switch's default position
    double rest = 10.0;                 ///< where a knob stands when nothing is said
};

/** Knobs and levers in the order of the parts, shared shafts once. */
std::vector<Control> controls (const Harness&);
}
