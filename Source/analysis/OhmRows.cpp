#include "analysis/OhmRows.h"

#include "response/Volumes.h"

#include <algorithm>
#include <cmath>
#include <set>

namespace coldiron
{
namespace
{
bool isClose (double a, double b) { return a == b || std::abs (a - b) <= 1e-3 * std::max (std::abs (a), std::abs (b)); }

bool isSame (const OhmReading& a, const OhmReading& b)
{
    return a.kind == b.kind && isClose (a.volumeDownOhms, b.volumeDownOhms)
           && (! a.isNumber()
               || (isClose (a.ohms, b.ohms) && isClose (a.lowOhms, b.lowOhms) && isClose (a.highOhms, b.highOhms)));
}

bool isTwin (const OhmReading& a, const OhmReading& b, size_t but)
{
    for (size_t i = 0; i < a.levers.size(); ++i)
        if (i != but && a.levers[i].second != b.levers[i].second)
            return false;
    return isSame (a, b);
}
}

std::vector<OhmReading> rowsThatDiffer (std::vector<OhmReading> table)
{
    if (table.empty())
        return table;
    for (size_t lever = table.front().levers.size(); lever-- > 0;)
    {
        std::set<std::string> positions;
        for (const auto& row : table)
            positions.insert (row.levers[lever].second);
        std::vector<OhmReading> merged;
        std::vector<bool> gone (table.size(), false);
        for (size_t i = 0; i < table.size(); ++i)
        {
            if (gone[i])
                continue;
            std::vector<size_t> twins;
            for (size_t j = i; j < table.size(); ++j)
                if (! gone[j] && isTwin (table[i], table[j], lever))
                    twins.push_back (j);
            merged.push_back (table[i]);
            if (positions.size() < 2 || twins.size() < positions.size())
                continue;
            for (const auto j : twins)
                gone[j] = true;
            merged.back().levers[lever].second = "any";
        }
        table = std::move (merged);
    }
    return table;
}

std::vector<std::pair<std::string, OhmReading>> volumesApart (const Harness& harness)
{
    auto volumes = volumeKnobs (harness, {});
    for (const auto& control : controls (harness)) // a blend has its detent between two pickups
        if (control.positions.empty() && control.rest != 10.0)
            std::erase (volumes, control.name);
    if (volumes.size() < 2
        || std::any_of (harness.parts().begin(), harness.parts().end(),
                        [] (const Part& part) { return part.as<SwitchPart>() != nullptr && part.as<SwitchPart>()->on.empty(); }))
        return {};
    std::vector<std::pair<std::string, OhmReading>> apart;
    for (const auto& volume : volumes)
    {
        std::map<std::string, double> down;
        for (const auto& other : volumes)
            if (other != volume)
                down[other] = 0.0;
        apart.emplace_back (volume, ohmReading (harness, {}, down));
    }
    return apart;
}
}
