#include "response/Weights.h"

#include <list>
#include <mutex>

namespace coldiron
{
bool areSameStrings (const StringSet& a, const StringSet& b)
{
    if (a.played != b.played || a.only != b.only || a.strings.size() != b.strings.size())
        return false;
    for (size_t s = 0; s < a.strings.size(); ++s)
        if (a.strings[s].hz != b.strings[s].hz || a.strings[s].scaleMm != b.strings[s].scaleMm)
            return false;
    return true;
}

bool areSamePositions (const std::vector<CoilPosition>& a, const std::vector<CoilPosition>& b)
{
    if (a.size() != b.size())
        return false;
    for (size_t k = 0; k < a.size(); ++k)
        if (a[k].distanceMm != b[k].distanceMm || a[k].hears != b[k].hears)
            return false;
    return true;
}

Weights::Weights (const StringSet& strings, const std::vector<CoilPosition>& coilPositions, const std::vector<double>& hz)
{
    table.reserve (hz.size());
    for (const double f : hz)
        table.push_back (stringWeights (strings, coilPositions, f));
}

std::shared_ptr<const Weights> Weights::shared (const StringSet& strings, const std::vector<CoilPosition>& coilPositions,
                                                const std::vector<double>& hz)
{
    struct Entry
    {
        StringSet strings;
        std::vector<CoilPosition> coilPositions;
        std::vector<double> hz;
        std::shared_ptr<const Weights> weights;
    };
    constexpr size_t kept = 16;
    static std::mutex mutex;
    static std::list<Entry> entries;

    const std::scoped_lock lock (mutex);
    for (auto entry = entries.begin(); entry != entries.end(); ++entry)
        if (entry->hz == hz && areSameStrings (entry->strings, strings) && areSamePositions (entry->coilPositions, coilPositions))
        {
            entries.splice (entries.begin(), entries, entry);
            return entries.front().weights;
        }
    entries.push_front ({ strings, coilPositions, hz, std::make_shared<const Weights> (strings, coilPositions, hz) });
    if (entries.size() > kept)
        entries.pop_back();
    return entries.front().weights;
}
}
