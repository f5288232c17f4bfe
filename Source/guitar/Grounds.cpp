#include "guitar/Grounds.h"

#include "guitar/Nets.h"

namespace coldiron
{
std::vector<SolderPoint> floatingGrounds (const Harness& harness)
{
    const Nets nets (harness);
    const auto groundPoint = harness.point (SolderPoint::ground());
    std::vector<SolderPoint> floating;
    for (const auto& point : harness.allPoints())
    {
        const auto* part = harness.find (point.part());
        const auto terminal = point.terminal();
        const bool belongs = point == SolderPoint::strings()
                             || (part != nullptr
                                 && ((part->as<PickupPart>() != nullptr && terminal == "shield")
                                     || (part->as<PotPart>() != nullptr && terminal == "case")));
        if (belongs && ! nets.joined (point, groundPoint))
            floating.push_back (point);
    }
    return floating;
}

std::string floatingInWords (const SolderPoint& point)
{
    if (point == SolderPoint::strings())
        return "the string ground (\"strings\") goes to no ground: touching the strings does not ground them, and it hums more "
               "when they are touched; wire \"strings\" to the back of a pot";
    return point.text() + " is on no ground: "
           + (point.terminal() == "shield" ? "a live cover buzzes" : "a live case buzzes when its knob is touched")
           + "; wire it to the back of a pot that is on ground";
}
}
