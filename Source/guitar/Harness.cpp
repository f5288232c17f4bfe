#include "guitar/Harness.h"

#include <algorithm>

namespace coldiron
{
namespace
{
Harness::Wire ordered (const SolderPoint& a, const SolderPoint& b)
{
    return a < b ? Harness::Wire { a, b } : Harness::Wire { b, a };
}

std::string listed (const std::vector<std::string>& names)
{
    std::string text;
    for (const auto& name : names)
        text += (text.empty() ? "" : ", ") + name;
    return text;
}
}

const Part* Harness::find (const std::string& part) const
{
    const auto found = std::find_if (partList.begin(), partList.end(), [&] (const Part& p) { return p.name == part; });
    return found == partList.end() ? nullptr : &*found;
}

const Part& Harness::jack() const
{
    for (const auto& part : partList)
        if (part.as<JackPart>() != nullptr)
            return part;
    throw HarnessError ("the harness has no jack; add a part like \"jack\": { \"jack\": \"mono\" }");
}

SolderPoint Harness::point (const SolderPoint& wanted) const
{
    if (wanted == SolderPoint::ground())
        return { jack().name, "sleeve" };
    if (wanted == SolderPoint::strings())
        return wanted; // the bridge's ground wire: a lug of no part

    const auto partName = wanted.part();
    const auto* part = find (partName);
    if (part == nullptr)
    {
        std::vector<std::string> names;
        for (const auto& p : partList)
            names.push_back (p.name);
        throw HarnessError (wanted.text() + ": there is no part \"" + partName + "\"; the parts are " + listed (names));
    }
    const auto points = part->points();
    if (std::find (points.begin(), points.end(), wanted.terminal()) == points.end())
        throw HarnessError (wanted.text() + ": a " + part->kindName() + " has " + listed (points));
    return wanted;
}

bool Harness::isLead (const SolderPoint& at) const { return at != SolderPoint::strings() && partOf (at).isLead (at.terminal()); }

const Part& Harness::partOf (const SolderPoint& at) const
{
    const auto* part = find (at.part());
    if (part == nullptr)
        throw HarnessError (at.text() + ": there is no such part");
    return *part;
}

std::vector<SolderPoint> Harness::allPoints() const
{
    std::vector<SolderPoint> result;
    for (const auto& part : partList)
        for (const auto& terminal : part.points())
            result.emplace_back (part.name, terminal);
    result.push_back (SolderPoint::strings());
    return result;
}

void Harness::addPart (Part part)
{
    if (part.name.empty() || part.name.find ('.') != std::string::npos || part.name == "ground" || part.name == "strings")
        throw HarnessError ("\"" + part.name
                            + "\" cannot name a part: a name has no dot, is not empty, \"ground\" or \"strings\"");
    if (find (part.name) != nullptr)
        throw HarnessError ("there is a part \"" + part.name + "\" already");
    for (const auto& terminal : part.points())
        if (part.isLead (terminal))
            landingOf[{ part.name, terminal }] = {};
    const auto* pickup = part.as<PickupPart>();
    const auto joints = pickup != nullptr ? pickup->pickup.inside : std::vector<std::array<std::string, 2>> {};
    const auto name = part.name;
    partList.push_back (std::move (part));
    for (const auto& joint : joints)
        solder ({ { name, joint[0] }, { name, joint[1] } });
}

void Harness::removePart (const std::string& name)
{
    const auto* part = find (name);
    if (part == nullptr)
        throw HarnessError ("there is no part \"" + name + "\" to remove");
    for (const auto& terminal : part->points())
    {
        const SolderPoint full (name, terminal);
        landingOf.erase (full);
        for (const auto& lead : leadsOn (full))
            landingOf[lead] = {};
        for (const auto& other : lugsWiredTo (full))
            removeWire (full, other);
    }
    partList.erase (partList.begin() + (part - partList.data()));
    tidyJoints();
}

std::vector<SolderPoint> Harness::leadsOn (const SolderPoint& lug) const
{
    std::vector<SolderPoint> result;
    for (const auto& [lead, landing] : landingOf)
        if (landing.lug == lug)
            result.push_back (lead);
    return result;
}

std::vector<SolderPoint> Harness::leadsInJoint (int joint) const
{
    std::vector<SolderPoint> result;
    for (const auto& [lead, landing] : landingOf)
        if (joint >= 0 && landing.joint == joint)
            result.push_back (lead);
    return result;
}

std::vector<SolderPoint> Harness::lugsWiredTo (const SolderPoint& lug) const
{
    std::vector<SolderPoint> result;
    for (const auto& [a, b] : wireSet)
    {
        if (a == lug)
            result.push_back (b);
        else if (b == lug)
            result.push_back (a);
    }
    return result;
}

bool Harness::hasWire (const SolderPoint& a, const SolderPoint& b) const { return wireSet.count (ordered (a, b)) > 0; }

void Harness::addWire (const SolderPoint& a, const SolderPoint& b)
{
    if (a != b)
        wireSet.insert (ordered (a, b));
}

void Harness::removeWire (const SolderPoint& a, const SolderPoint& b) { wireSet.erase (ordered (a, b)); }

void Harness::addRun (const SolderPoint& at, double farads) { runList.push_back ({ point (at), farads }); }

bool Harness::hasPoint (const SolderPoint& at) const
{
    const auto* part = find (at.part());
    const auto points = part != nullptr ? part->points() : std::vector<std::string> {};
    return std::find (points.begin(), points.end(), at.terminal()) != points.end();
}

std::vector<WireRun> Harness::runs() const
{
    std::vector<WireRun> result;
    std::copy_if (runList.begin(), runList.end(), std::back_inserter (result),
                  [this] (const WireRun& run) { return hasPoint (run.at); });
    return result;
}

void Harness::lift (const SolderPoint& lead)
{
    landingOf.at (lead) = {};
    tidyJoints();
}

void Harness::land (const SolderPoint& lead, const Landing& landing)
{
    landingOf.at (lead) = landing;
    tidyJoints();
}

/** A joint of one lead is a free lead. */
void Harness::tidyJoints()
{
    std::map<int, int> sizes;
    for (const auto& [lead, landing] : landingOf)
        ++sizes[landing.joint];
    for (auto& [lead, landing] : landingOf)
        if (landing.joint >= 0 && sizes[landing.joint] < 2)
            landing.joint = -1;
}
}
