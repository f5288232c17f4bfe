// Soldering and unsoldering: the rules of leads, lugs and air joints.

#include "guitar/Harness.h"

#include <algorithm>
#include <cstdlib>

namespace coldiron
{
void Harness::solder (const std::vector<SolderPoint>& chain)
{
    std::vector<SolderPoint> points;
    for (const auto& wanted : chain)
        points.push_back (point (wanted));
    if (points.size() < 2)
        throw HarnessError ("a joint needs two points or more");

    std::vector<int> lugAt;
    for (int i = 0; i < static_cast<int> (points.size()); ++i)
        if (! isLead (points[static_cast<size_t> (i)]))
            lugAt.push_back (i);

    if (lugAt.empty())
    {
        // Only leads. If one of them is on a lug already, all land there; else they hang in one air joint.
        SolderPoint lug;
        for (const auto& lead : points)
            if (lug.empty())
                lug = landingOf.at (lead).lug;
        if (! lug.empty())
        {
            auto again = points;
            again.insert (again.begin(), lug);
            solder (again);
            return;
        }
        const int joint = nextJoint++;
        for (const auto& lead : points)
        {
            const int before = landingOf.at (lead).joint;
            for (const auto& partner : leadsInJoint (before))
                landingOf[partner].joint = joint;
            landingOf[lead] = { {}, joint };
        }
        tidyJoints();
        return;
    }

    for (size_t i = 1; i < lugAt.size(); ++i)
        addWire (points[static_cast<size_t> (lugAt[i - 1])], points[static_cast<size_t> (lugAt[i])]);

    for (int i = 0; i < static_cast<int> (points.size()); ++i)
    {
        const auto& lead = points[static_cast<size_t> (i)];
        if (! isLead (lead))
            continue;
        const int nearest =
            *std::min_element (lugAt.begin(), lugAt.end(), [i] (int a, int b) { return std::abs (a - i) < std::abs (b - i); });
        const auto& lug = points[static_cast<size_t> (nearest)];
        const Landing before = landingOf.at (lead);
        if (! before.lug.empty())
            addWire (before.lug, lug); // it stays on its first lug, and a wire joins the two
        else if (before.joint >= 0)
            for (const auto& partner : leadsInJoint (before.joint))
                landingOf[partner] = { lug, -1 };
        else
            landingOf[lead] = { lug, -1 };
    }
}

void Harness::unsolder (const SolderPoint& first, const SolderPoint& second)
{
    auto a = point (first), b = point (second);
    const bool aLead = isLead (a), bLead = isLead (b);
    if (aLead && bLead)
    {
        const auto la = landingOf.at (a), lb = landingOf.at (b);
        if (la.joint >= 0 && la.joint == lb.joint)
        {
            lift (a);
            return;
        }
        if (! la.lug.empty() && la.lug == lb.lug)
            throw HarnessError (a.text() + " and " + b.text() + " only share " + la.lug.text()
                                + "; lift one of them from that lug by name");
        throw HarnessError (a.text() + " and " + b.text() + " are not joined");
    }
    if (aLead || bLead)
    {
        if (bLead)
            std::swap (a, b);
        const auto landing = landingOf.at (a);
        if (landing.lug != b)
            throw HarnessError (a.text() + " is not on " + b.text()
                                + (landing.isFree()      ? "; it is free"
                                   : landing.lug.empty() ? "; it hangs in an air joint"
                                                         : "; it is on " + landing.lug.text()));
        lift (a);
        return;
    }
    if (! hasWire (a, b))
        throw HarnessError ("there is no wire between " + a.text() + " and " + b.text());
    removeWire (a, b);
}

void Harness::swapLugs (const SolderPoint& first, const SolderPoint& second)
{
    const auto a = point (first), b = point (second);
    if (isLead (a) || isLead (b))
        throw HarnessError (a.text() + " and " + b.text() + ": a lead and a lug cannot change places");

    const auto onA = leadsOn (a), onB = leadsOn (b);
    const auto wiredA = lugsWiredTo (a), wiredB = lugsWiredTo (b);
    for (const auto& lead : onA)
        landingOf[lead].lug = b;
    for (const auto& lead : onB)
        landingOf[lead].lug = a;
    for (const auto& other : wiredA)
        if (other != b)
            removeWire (a, other);
    for (const auto& other : wiredB)
        if (other != a)
            removeWire (b, other);
    for (const auto& other : wiredA)
        if (other != b)
            addWire (b, other);
    for (const auto& other : wiredB)
        if (other != a)
            addWire (a, other);
}

void Harness::swapLeads (const SolderPoint& first, const SolderPoint& second)
{
    const auto a = point (first), b = point (second);
    std::swap (landingOf.at (a), landingOf.at (b));
}

bool Harness::sameAs (const Harness& other) const
{
    if (partList.size() != other.partList.size() || wireSet != other.wireSet)
        return false;
    for (const auto& part : partList)
    {
        const auto* twin = other.find (part.name);
        if (twin == nullptr || ! (*twin == part))
            return false;
    }

    // A landing as text that does not depend on joint numbers: the lug, or the sorted names in the joint. Legs of
    // one two-ended part count under one name.
    const auto plain = [] (const Harness& harness, const SolderPoint& lead)
    {
        const auto& part = harness.partOf (lead);
        return part.as<PickupPart>() != nullptr ? lead : SolderPoint (part.name, "leg");
    };
    const auto place = [&plain] (const Harness& harness, const SolderPoint& lead)
    {
        const auto& landing = harness.landings().at (lead);
        if (! landing.lug.empty())
            return "on " + landing.lug.text();
        std::vector<SolderPoint> names;
        for (const auto& partner : harness.leadsInJoint (landing.joint))
            names.push_back (plain (harness, partner));
        std::sort (names.begin(), names.end());
        std::string text = "with";
        for (const auto& name : names)
            text += " " + name.text();
        return text;
    };
    const auto all = [&] (const Harness& harness)
    {
        std::vector<std::string> result;
        for (const auto& [lead, landing] : harness.landings())
            result.push_back (plain (harness, lead).text() + " " + place (harness, lead));
        std::sort (result.begin(), result.end());
        return result;
    };
    return all (*this) == all (other);
}
}
