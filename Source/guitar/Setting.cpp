#include "guitar/Setting.h"

#include <algorithm>

namespace coldiron
{
double Setting::knob (const std::string& name, double rest) const
{
    const auto found = knobs.find (name);
    return found == knobs.end() ? rest : found->second;
}

const SwitchType::Position& Setting::position (const Part& switchPart) const
{
    const auto& type = switchPart.as<SwitchPart>()->type;
    const auto found = levers.find (switchPart.leverName());
    if (found == levers.end())
        return type.standard();
    const auto* position = type.find (found->second);
    if (position == nullptr)
        throw HarnessError (switchPart.name + " has no position \"" + found->second + "\"");
    return *position;
}

std::vector<Control> controls (const Harness& harness)
{
    std::vector<Control> result;
    for (const auto& part : harness.parts())
    {
        Control control;
        if (const auto* pot = part.as<PotPart>())
        {
            control.name = part.knobName();
            control.rest = pot->rest;
        }
        else if (const auto* lever = part.as<SwitchPart>())
        {
            control.name = part.leverName();
            for (const auto& position : lever->type.positions)
                control.positions.push_back (position.name);
            control.standard = lever->type.standard().name;
        }
        else
            continue;
        const auto twin = std::find_if (result.begin(), result.end(), [&] (const Control& c) { return c.name == control.name; });
        if (twin == result.end())
            result.push_back (std::move (control));
    }
    return result;
}
}
