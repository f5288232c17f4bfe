// Putting another part in a part's place: what was soldered to it stays on the points of the same or the mapped name.

#include "guitar/Harness.h"

#include <algorithm>

namespace coldiron
{
namespace
{
bool has (const std::vector<std::string>& points, const std::string& point)
{
    return std::find (points.begin(), points.end(), point) != points.end();
}

std::string listOf (const std::vector<std::string>& names)
{
    std::string text;
    for (const auto& name : names)
        text += (text.empty() ? "" : ", ") + name;
    return text;
}

void checkMap (const Part& old, const Part& fresh, const std::map<std::string, std::string>& pointMap)
{
    for (const auto& [from, to] : pointMap)
    {
        if (! has (old.points(), from))
            throw HarnessError (old.name + "." + from + ": the old part has " + listOf (old.points()));
        if (! has (fresh.points(), to))
            throw HarnessError (old.name + "." + to + ": the new part has " + listOf (fresh.points()));
    }
}
}

void Harness::replacePart (const std::string& name, Part fresh, const std::map<std::string, std::string>& pointMap)
{
    const auto* found = find (name);
    if (found == nullptr)
        throw HarnessError ("there is no part \"" + name + "\" to replace");
    const Part old = *found;
    checkMap (old, fresh, pointMap);

    const auto full = [&name] (const std::string& terminal) { return SolderPoint (name, terminal); };
    const auto target = [&] (const std::string& terminal)
    {
        const auto entry = pointMap.find (terminal);
        const auto wanted = entry == pointMap.end() ? terminal : entry->second;
        return has (fresh.points(), wanted) ? wanted : std::string();
    };
    // A joint among the old part's own leads goes with it where the new part has no such leads.
    const auto isOwnJoint = [&] (const SolderPoint& lead)
    {
        const auto partners = leadsInJoint (landingOf.at (lead).joint);
        return ! partners.empty()
               && std::all_of (partners.begin(), partners.end(), [&] (const auto& p) { return p.isOf (name); });
    };

    std::vector<std::pair<SolderPoint, Landing>> landings; // of leads, by their new names
    std::vector<Wire> joins;
    for (const auto& terminal : old.points())
    {
        const auto point = full (terminal);
        const auto to = target (terminal);
        const bool lead = old.isLead (terminal);
        const bool busy = lead ? ! landingOf.at (point).isFree() : ! leadsOn (point).empty() || ! lugsWiredTo (point).empty();
        if (! busy || (lead && to.empty() && isOwnJoint (point)))
            continue;
        if (to.empty())
            throw HarnessError (point.text()
                                + " is in use, and the new part has no point of that name; say in \"points\" where it goes");
        if (lead != fresh.isLead (to))
            throw HarnessError (point.text() + ": a lead takes the place of a lead, a lug that of a lug");
        if (lead)
            landings.push_back ({ full (to), landingOf.at (point) });
        for (const auto& other : leadsOn (point))
            if (! other.isOf (name)) // its own lead on its own shield is told of where the lead's turn comes
                landings.push_back ({ other, { full (to), -1 } });
        for (const auto& other : lugsWiredTo (point))
            joins.push_back ({ full (to), other.isOf (name) ? full (target (other.terminal())) : other });
    }

    for (const auto& terminal : old.points())
    {
        for (const auto& lead : leadsOn (full (terminal)))
            landingOf[lead] = {};
        for (const auto& other : lugsWiredTo (full (terminal)))
            removeWire (full (terminal), other);
        landingOf.erase (full (terminal));
    }

    // The wire at a point goes with what is soldered there; where both parts have the point its run stays as it is.
    const auto runsBefore = runs();
    for (const auto& run : runsBefore)
        for (const auto& [from, to] : pointMap)
            if (run.at == full (from) && to != from && ! has (fresh.points(), from)
                && std::none_of (runList.begin(), runList.end(), [&, to = to] (const WireRun& r) { return r.at == full (to); }))
                runList.push_back ({ full (to), run.farads });

    fresh.name = name;
    if (fresh.serves.empty())
        fresh.serves = old.serves;
    if (auto* lever = fresh.as<SwitchPart>(); lever != nullptr && old.as<SwitchPart>() != nullptr && lever->on.empty())
        lever->on = old.as<SwitchPart>()->on;
    if (auto* pickup = fresh.as<PickupPart>(); pickup != nullptr && old.as<PickupPart>() != nullptr && pickup->bridgeMm <= 0.0)
        pickup->bridgeMm = old.as<PickupPart>()->bridgeMm;
    for (const auto& terminal : fresh.points())
        if (fresh.isLead (terminal))
            landingOf[full (terminal)] = {};
    const auto* pickup = fresh.as<PickupPart>();
    const auto inside = pickup != nullptr ? pickup->pickup.inside : std::vector<std::array<std::string, 2>> {};
    *std::find_if (partList.begin(), partList.end(), [&] (const Part& p) { return p.name == name; }) = fresh;

    for (const auto& [lead, landing] : landings)
        landingOf[lead] = landing;
    for (const auto& [a, b] : joins)
        addWire (a, b);
    tidyJoints();
    for (const auto& joint : inside)
    {
        if (const bool first = joint[0] == "shield"; first || joint[1] == "shield")
        {
            // What was the cold lead is the braid now: the braid goes where the lead was.
            const auto lead = full (joint[first ? 1 : 0]), shield = full ("shield");
            if (const auto lug = landingOf.at (lead).lug; ! lug.empty() && lug != shield)
            {
                addWire (shield, lug);
                landingOf[lead] = { shield, -1 };
            }
            else if (landingOf.at (lead).isFree())
                landingOf[lead] = { shield, -1 };
            continue;
        }
        const auto& a = landingOf.at (full (joint[0]));
        if (a.isFree() || a.joint < 0 || a.joint != landingOf.at (full (joint[1])).joint)
            solder ({ full (joint[0]), full (joint[1]) });
    }
}
}
