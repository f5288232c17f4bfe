#include "guitar/Grounds.h"

#include "guitar/Nets.h"

namespace coldiron
{
std::vector<std::string> floatingGrounds (const Harness& harness)
{
    const Nets nets (harness);
    const auto groundPoint = harness.point ("ground");
    std::vector<std::string> floating;
    for (const auto& point : harness.allPoints())
    {
        const auto* part = harness.find (splitPoint (point).first);
        const auto terminal = splitPoint (point).second;
        const bool belongs = point == "strings"
                             || (part != nullptr
                                 && ((part->as<PickupPart>() != nullptr && terminal == "shield")
                                     || (part->as<PotPart>() != nullptr && terminal == "case")));
        if (belongs && ! nets.joined (point, groundPoint))
            floating.push_back (point);
    }
    return floating;
}

std::string floatingInWords (const std::string& point)
{
    if (point == "strings")
        return "the string ground (\"strings\") goes to no ground: touching the strings does not ground them, and it hums more "
               "when they are touched; wire \"strings\" to the back of a pot";
    const auto [part, terminal] = splitPoint (point);
    return point
           + " is on no ground: " + (terminal == "shield" ? "a live cover buzzes" : "a live case buzzes when its knob is touched")
           + "; wire it to the back of a pot that is on ground";
}
}
