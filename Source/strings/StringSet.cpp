#include "strings/StringSet.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>

namespace coldiron
{
bool StringSet::isBass() const
{
    const auto lowest =
        std::min_element (strings.begin(), strings.end(), [] (const auto& a, const auto& b) { return a.hz < b.hz; });
    return lowest != strings.end() && lowest->hz < 60.0;
}

double noteHz (const std::string& name)
{
    static constexpr int semitones[] = { 9, 11, 0, 2, 4, 5, 7 }; // A to G above C
    if (name.size() < 2 || name[0] < 'A' || name[0] > 'G')
        return 0.0;
    int semitone = semitones[name[0] - 'A'];
    size_t next = 1;
    if (name[next] == '#' || name[next] == 'b')
        semitone += name[next++] == '#' ? 1 : -1;
    if (next + 1 != name.size() || name[next] < '0' || name[next] > '9')
        return 0.0;
    const int octave = name[next] - '0';
    const int fromA4 = semitone - 9 + 12 * (octave - 4);
    return 440.0 * std::pow (2.0, fromA4 / 12.0);
}

CoilPosition coilPositionAt (const StringSet& set, double bridgeMm, double slantMm, const std::vector<std::string>& hears)
{
    CoilPosition position;
    const auto count = set.strings.size();
    for (size_t s = 0; s < count; ++s)
    {
        const double across = count > 1 ? 0.5 - static_cast<double> (s) / static_cast<double> (count - 1) : 0.0;
        position.distanceMm.push_back (bridgeMm + slantMm * across);
        position.hears.push_back (hears.empty() || std::find (hears.begin(), hears.end(), set.strings[s].name) != hears.end());
    }
    return position;
}
}
