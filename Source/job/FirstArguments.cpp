#include "job/FirstArguments.h"

#include <algorithm>

namespace coldiron
{
namespace
{
struct Rank
{
    const RewireInfo& info;
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
        if (ask.kind == "pot" && ask.name == "pot" && info.preset.rfind ("tone-", 0) == 0
            && name.find ("tone") != std::string::npos)
            score += 3; // what is done to a tone is not done to a volume
        if (ask.kind == "pot" && ask.name != "tone" && name.find ("volume") != std::string::npos)
            score += 2;
        if (ask.kind == "pickup" && heard.count (name) > 0)
            score += 2;
        if (pickup.empty()
            && std::any_of (heard.begin(), heard.end(), [&] (const auto& on) { return name.rfind (on + "-", 0) == 0; }))
            score += 1;
        if (ask.kind == "pickup" && name == "bridge")
            score += 1;
        return score;
    }
};
}

std::map<std::string, std::string> firstArguments (const RewireInfo& info, const Harness& harness,
                                                   const std::set<std::string>& heard, const std::string& wantedPickup)
{
    std::map<std::string, std::string> filled;
    std::string pickup;
    for (const auto& ask : info.asks)
    {
        auto names = candidates (ask.kind, harness);
        const Rank rank { info, ask, heard, pickup };
        std::stable_sort (names.begin(), names.end(), [&] (const auto& a, const auto& b) { return rank (a) > rank (b); });
        std::string value = ask.standard;
        for (const auto& name : names)
            if (value.empty() && ! ask.hasStandard
                && std::none_of (filled.begin(), filled.end(), [&] (const auto& used) { return used.second == name; }))
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

FirstFit firstFit (const RewireInfo& info, const Harness& harness, const std::set<std::string>& heard,
                   const std::function<bool (const std::map<std::string, std::string>&)>& canBeDone)
{
    std::vector<std::map<std::string, std::string>> tried;
    const auto asksFor = [&] (const std::string& kind)
    { return std::find_if (info.asks.begin(), info.asks.end(), [&] (const auto& ask) { return ask.kind == kind; }); };
    const auto first = firstArguments (info, harness, heard);
    const auto fits = [&] (const std::map<std::string, std::string>& arguments)
    {
        if (std::find (tried.begin(), tried.end(), arguments) != tried.end())
            return false;
        tried.push_back (arguments);
        return canBeDone (arguments);
    };
    if (fits (first))
        return { first, true };
    if (asksFor ("pickup") != info.asks.end())
        for (const auto& pickup : candidates ("pickup", harness))
            if (const auto arguments = firstArguments (info, harness, heard, pickup); fits (arguments))
                return { arguments, true };
    if (const auto pot = asksFor ("pot"); pot != info.asks.end())
        for (const auto& start : std::vector (tried))
            for (const auto& name : candidates ("pot", harness))
            {
                auto arguments = start;
                arguments[pot->name] = name;
                if (fits (arguments))
                    return { arguments, true };
            }
    return { first, false };
}

std::string optionName (const RewireInfo& info, const std::map<std::string, std::string>& arguments)
{
    for (const auto& ask : info.asks)
        if (const auto found = arguments.find (ask.name);
            ask.kind == "pickup" && info.asks.size() <= 3 && found != arguments.end() && ! info.name.empty())
        {
            auto name = found->second + ": " + info.name;
            std::replace (name.begin(), name.begin() + static_cast<std::ptrdiff_t> (found->second.size()), '-', ' ');
            name[0] = static_cast<char> (std::toupper (static_cast<unsigned char> (name[0])));
            auto& initial = name[found->second.size() + 2];
            initial = static_cast<char> (std::tolower (static_cast<unsigned char> (initial)));
            return name;
        }
    return info.name;
}
}
