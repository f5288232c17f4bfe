#include "job/FirstArguments.h"

#include <algorithm>

namespace coldiron
{
namespace
{
struct Rank
{
    const RewireInfo::Ask& ask;
    const std::set<std::string>& heard;
    const std::string& pickup; ///< what the first ask for one was filled with

    int operator() (const std::string& name) const
    {
        int score = 0;
        if (! pickup.empty() && name.rfind (pickup + "-", 0) == 0)
            score += 4;
        if (name.find (ask.name) != std::string::npos)
            score += 3;
        if (ask.kind == "pot" && ask.name != "tone" && name.find ("volume") != std::string::npos)
            score += 2;
        if (ask.kind == "pickup" && heard.count (name) > 0)
            score += 2;
        if (ask.kind == "pickup" && name == "bridge")
            score += 1;
        return score;
    }
};
}

std::map<std::string, std::string> firstArguments (const RewireInfo& info, const Harness& harness, const std::set<std::string>& heard,
                                                   const std::string& wantedPickup)
{
    std::map<std::string, std::string> filled;
    std::string pickup;
    for (const auto& ask : info.asks)
    {
        auto names = candidates (ask.kind, harness);
        const Rank rank { ask, heard, pickup };
        std::stable_sort (names.begin(), names.end(), [&] (const auto& a, const auto& b) { return rank (a) > rank (b); });
        std::string value = ask.standard;
        for (const auto& name : names)
            if (value.empty() && ! ask.hasStandard && std::none_of (filled.begin(), filled.end(), [&] (const auto& used) { return used.second == name; }))
                value = name;
        if (ask.kind == "pickup" && pickup.empty())
            pickup = value = wantedPickup.empty() ? value : wantedPickup;
        filled[ask.name] = value;
    }
    for (const auto& ask : info.asks)
        if (! ask.standardOf.empty())
            filled[ask.name] = standardValue (ask, filled, harness);
    return filled;
}
}
