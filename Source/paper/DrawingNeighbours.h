#pragma once

#include "guitar/Nets.h"

#include <deque>
#include <map>
#include <set>
#include <string>
#include <vector>

namespace coldiron
{
/** Which parts are near which, over nets other than ground. */
class Neighbours
{
public:
    explicit Neighbours (const Harness& harnessToRead) : harness (harnessToRead), nets (harness)
    {
        groundNet = nets.net (harness.point ("ground"));
        for (const auto& point : harness.allPoints())
            pointsOn[nets.net (point)].push_back (point);
    }

    /** Parts crossed from the pickup's leads to the part; large where there is no way. */
    int distance (const std::string& pickup, const std::string& wanted) const
    {
        std::map<std::string, int> steps { { pickup, 0 } };
        std::deque<std::string> queue { pickup };
        while (! queue.empty())
        {
            const auto name = queue.front();
            queue.pop_front();
            if (name == wanted)
                return steps[name];
            const auto* part = harness.find (name);
            if (name != pickup && (part->as<PickupPart>() != nullptr || part->as<JackPart>() != nullptr))
                continue;
            for (const auto& terminal : part->points())
            {
                const int net = nets.net (name + "." + terminal);
                if (net == groundNet)
                    continue;
                for (const auto& other : pointsOn.at (net))
                {
                    const auto next = splitPoint (other).first;
                    if (steps.emplace (next, steps[name] + 1).second)
                        queue.push_back (next);
                }
            }
        }
        return 1000;
    }

    /** A volume uses all three lugs on three nets; what uses fewer is a tone. */
    bool isVolume (const std::string& pot) const
    {
        std::set<int> used;
        for (const char* lug : { ".1", ".2", ".3" })
        {
            const int net = nets.net (pot + lug);
            if (pointsOn.at (net).size() > 1)
                used.insert (net);
        }
        return used.size() == 3;
    }

    bool onGround (const std::string& point) const { return nets.net (point) == groundNet; }
    const Harness& wiring() const { return harness; }

private:
    const Harness& harness;
    Nets nets;
    int groundNet = -1;
    std::map<int, std::vector<std::string>> pointsOn;
};
}
