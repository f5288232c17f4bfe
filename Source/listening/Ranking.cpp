#include "listening/Ranking.h"

#include <algorithm>
#include <stdexcept>

namespace coldiron
{
Ranking::Ranking (int versions) : count (versions)
{
    if (versions < fewest || versions > most)
        throw std::invalid_argument ("2 to 9 versions to rank");
}

std::optional<size_t> Ranking::groupOf (int version) const
{
    for (size_t g = 0; g < groups.size(); ++g)
        if (std::find (groups[g].begin(), groups[g].end(), version) != groups[g].end())
            return g;
    return std::nullopt;
}

std::optional<int> Ranking::placeOf (int version) const
{
    int above = 0;
    for (const auto& group : groups)
    {
        if (std::find (group.begin(), group.end(), version) != group.end())
            return above;
        above += static_cast<int> (group.size());
    }
    return std::nullopt;
}

bool Ranking::isTied (int version) const
{
    const auto group = groupOf (version);
    return group && groups[*group].size() > 1;
}

bool Ranking::isComplete() const
{
    size_t ranked = 0;
    for (const auto& group : groups)
        ranked += group.size();
    return ranked == static_cast<size_t> (count);
}

/** @returns true where nothing is left to do: it has just come in, or there is no such version */
bool Ranking::enters (int version, bool atTop)
{
    if (version < 0 || version >= count)
        return true;
    if (groupOf (version))
        return false;
    groups.insert (atTop ? groups.begin() : groups.end(), { version });
    return true;
}

void Ranking::up (int version)
{
    if (enters (version, true))
        return;
    const size_t at = *groupOf (version);
    if (groups[at].size() > 1)
    {
        std::erase (groups[at], version);
        groups.insert (groups.begin() + static_cast<std::ptrdiff_t> (at), { version });
    }
    else if (at > 0)
        std::swap (groups[at], groups[at - 1]);
}

void Ranking::down (int version)
{
    if (enters (version, false))
        return;
    const size_t at = *groupOf (version);
    if (groups[at].size() > 1)
    {
        std::erase (groups[at], version);
        groups.insert (groups.begin() + static_cast<std::ptrdiff_t> (at) + 1, { version });
    }
    else if (at + 1 < groups.size())
        std::swap (groups[at], groups[at + 1]);
}

void Ranking::tie (int version)
{
    if (enters (version, false))
        return;
    const size_t at = *groupOf (version);
    if (groups[at].size() > 1)
        return down (version);
    if (at == 0)
        return;
    groups[at - 1].push_back (version);
    groups.erase (groups.begin() + static_cast<std::ptrdiff_t> (at));
}
}
