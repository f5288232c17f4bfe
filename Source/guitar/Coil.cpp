#include "guitar/Coil.h"

namespace coldiron
{
int Coil::humSign() const
{
    return wound == Wound::clockwise ? 1 : -1;
}

int Coil::stringSign() const
{
    if (magnet == Magnet::none)
        return 0;
    return humSign() * (magnet == Magnet::north ? 1 : -1);
}
}
