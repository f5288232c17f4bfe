#include "guitar/Coil.h"

#include <algorithm>

namespace coldiron
{
int Coil::humSign() const { return wound == Wound::clockwise ? 1 : -1; }

int Coil::stringSign() const
{
    if (magnet == Magnet::none)
        return 0;
    return humSign() * (magnet == Magnet::north ? 1 : -1);
}

bool Pickup::isOnShieldInside (const std::string& lead) const
{
    return std::any_of (inside.begin(), inside.end(),
                        [&] (const auto& joint)
                        { return (joint[0] == lead && joint[1] == "shield") || (joint[1] == lead && joint[0] == "shield"); });
}
}
