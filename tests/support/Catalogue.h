#pragma once

#include "support/JobFixture.h"

#include <map>
#include <set>
#include <string>
#include <vector>

namespace coldiron::support
{
using Arguments = std::map<std::string, std::string>;

/** Ways to fill a rewire in on a guitar: every combination of names of the right kind, up to a limit; values by default. */
inline std::vector<Arguments> waysToFill (const RewireInfo& info, const Harness& harness, size_t limit)
{
    std::vector<Arguments> ways { {} };
    for (const auto& ask : info.asks)
    {
        if (ask.hasStandard)
            continue;
        std::vector<Arguments> more;
        for (const auto& way : ways)
            for (const auto& name : candidates (ask.kind, harness))
            {
                bool taken = false;
                for (const auto& [other, value] : way)
                    taken = taken || value == name;
                if (! taken && more.size() < limit * 40)
                {
                    more.push_back (way);
                    more.back()[ask.name] = name;
                }
            }
        ways = std::move (more);
    }
    return ways;
}

inline std::vector<Guitar> allGuitars (const std::vector<std::string>& names)
{
    std::vector<Guitar> guitars;
    for (const auto& name : names)
    {
        Diagnostics diagnostics;
        auto guitar = readGuitar (name, shipped(), diagnostics);
        for (const auto& fault : diagnostics)
            UNSCOPED_INFO (fault.text());
        REQUIRE (guitar.has_value());
        guitars.push_back (std::move (*guitar));
    }
    return guitars;
}
}
