#include "guitar/PointName.h"

#include <algorithm>

namespace coldiron
{
PointName PointName::parse (const std::string& text)
{
    const auto start = std::min (text.find_first_not_of ('@'), text.size());
    PointName name (SolderPoint::parse (text.substr (start)));
    name.ats = static_cast<int> (start);
    return name;
}

PointName PointName::landingOf (PointName name)
{
    ++name.ats;
    return name;
}

PointName PointName::withoutLanding() const
{
    PointName name = *this;
    name.ats = std::max (0, ats - 1);
    return name;
}

PointName::Role PointName::role() const
{
    const auto terminal = point.terminal();
    if (terminal == "hot" || terminal == "cold")
        return PickupSide { point.part(), terminal == "cold" };
    if (terminal == "in" || terminal == "out")
        return PotLug { point.part(), terminal == "out" };
    return point;
}
}
