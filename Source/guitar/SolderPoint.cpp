#include "guitar/SolderPoint.h"

#include <algorithm>

namespace coldiron
{
SolderPoint::SolderPoint (const std::string& part, const std::string& terminal)
    : whole (part + "." + terminal), partSize (part.size())
{
}

SolderPoint SolderPoint::parse (std::string text)
{
    SolderPoint point;
    point.partSize = text == "ground" || text == "strings" ? 0 : std::min (text.find ('.'), text.size());
    point.whole = std::move (text);
    return point;
}

std::string SolderPoint::terminal() const
{
    return partSize > 0 && partSize < whole.size() ? whole.substr (partSize + 1) : std::string();
}
}
