#include "guitar/Nets.h"

#include <numeric>
#include <vector>

namespace coldiron
{
namespace
{
class UnionFind
{
public:
    explicit UnionFind (size_t size) : parent (size) { std::iota (parent.begin(), parent.end(), size_t { 0 }); }

    size_t root (size_t i)
    {
        while (parent[i] != i)
            i = parent[i] = parent[parent[i]];
        return i;
    }

    void join (size_t a, size_t b) { parent[root (a)] = root (b); }

private:
    std::vector<size_t> parent;
};
}

Nets::Nets (const Harness& harness) { build (harness, nullptr, false); }

Nets::Nets (const Harness& harness, const Setting& setting, bool ringOnSleeve) { build (harness, &setting, ringOnSleeve); }

void Nets::build (const Harness& harness, const Setting* setting, bool ringOnSleeve)
{
    const auto points = harness.allPoints();
    std::map<SolderPoint, size_t> index;
    for (size_t i = 0; i < points.size(); ++i)
        index[points[i]] = i;

    UnionFind sets (points.size());
    for (const auto& [a, b] : harness.wires())
        sets.join (index.at (a), index.at (b));

    std::map<int, size_t> jointFirst;
    for (const auto& [lead, landing] : harness.landings())
    {
        if (! landing.lug.empty())
            sets.join (index.at (lead), index.at (landing.lug));
        else if (landing.joint >= 0)
            sets.join (index.at (lead), jointFirst.try_emplace (landing.joint, index.at (lead)).first->second);
    }

    if (setting != nullptr)
        for (const auto& part : harness.parts())
            if (part.as<SwitchPart>() != nullptr)
                for (const auto& group : setting->position (part).contacts)
                    for (size_t i = 1; i < group.size(); ++i)
                        sets.join (index.at ({ part.name, group[0] }), index.at ({ part.name, group[i] }));

    if (ringOnSleeve)
        for (const auto& part : harness.parts())
            if (const auto* jack = part.as<JackPart>(); jack != nullptr && jack->stereo)
                sets.join (index.at ({ part.name, "ring" }), index.at ({ part.name, "sleeve" }));

    std::map<size_t, int> numbers;
    for (const auto& point : points)
    {
        const auto [entry, isNew] = numbers.try_emplace (sets.root (index.at (point)), total);
        if (isNew)
            ++total;
        netOf[point] = entry->second;
    }
}

int Nets::net (const SolderPoint& point) const
{
    const auto found = netOf.find (point);
    if (found == netOf.end())
        throw HarnessError (point.text() + ": there is no such point");
    return found->second;
}
}
