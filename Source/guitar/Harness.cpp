#include "guitar/Harness.h"

#include <algorithm>

namespace coldiron
{
namespace
{
Harness::Wire ordered (const std::string& a, const std::string& b)
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

std::pair<std::string, std::string> splitPoint (const std::string& fullPoint)
{
    const auto dot = fullPoint.find ('.');
    if (dot == std::string::npos)
        return { fullPoint, "" };
    return { fullPoint.substr (0, dot), fullPoint.substr (dot + 1) };
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

std::string Harness::point (const std::string& name) const
{
    if (name == "ground")
        return jack().name + ".sleeve";
    if (name == "strings")
        return name; // the bridge's ground wire: a lug of no part

    const auto [partName, terminal] = splitPoint (name);
    const auto* part = find (partName);
    if (part == nullptr)
    {
        std::vector<std::string> names;
        for (const auto& p : partList)
            names.push_back (p.name);
        throw HarnessError (name + ": there is no part \"" + partName + "\"; the parts are " + listed (names));
    }
    const auto points = part->points();
    if (std::find (points.begin(), points.end(), terminal) == points.end())
        throw HarnessError (name + ": a " + part->kindName() + " has " + listed (points));
    return name;
}

bool Harness::isLead (const std::string& fullPoint) const
{
    return fullPoint != "strings" && partOf (fullPoint).isLead (splitPoint (fullPoint).second);
}

const Part& Harness::partOf (const std::string& fullPoint) const
{
    const auto* part = find (splitPoint (fullPoint).first);
    if (part == nullptr)
        throw HarnessError (fullPoint + ": there is no such part");
    return *part;
}

std::vector<std::string> Harness::allPoints() const
{
    std::vector<std::string> result;
    for (const auto& part : partList)
        for (const auto& terminal : part.points())
            result.push_back (part.name + "." + terminal);
    result.push_back ("strings");
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
            landingOf[part.name + "." + terminal] = {};
    const auto* pickup = part.as<PickupPart>();
    const auto joints = pickup != nullptr ? pickup->pickup.inside : std::vector<std::array<std::string, 2>> {};
    const auto name = part.name;
    partList.push_back (std::move (part));
    for (const auto& joint : joints)
        solder ({ name + "." + joint[0], name + "." + joint[1] });
}

void Harness::removePart (const std::string& name)
{
    const auto* part = find (name);
    if (part == nullptr)
        throw HarnessError ("there is no part \"" + name + "\" to remove");
    for (const auto& terminal : part->points())
    {
        const auto full = name + "." + terminal;
        landingOf.erase (full);
        for (const auto& lead : leadsOn (full))
            landingOf[lead] = {};
        for (const auto& other : lugsWiredTo (full))
            removeWire (full, other);
    }
    partList.erase (partList.begin() + (part - partList.data()));
    tidyJoints();
}

std::vector<std::string> Harness::leadsOn (const std::string& lug) const
{
    std::vector<std::string> result;
    for (const auto& [lead, landing] : landingOf)
        if (landing.lug == lug)
            result.push_back (lead);
    return result;
}

std::vector<std::string> Harness::leadsInJoint (int joint) const
{
    std::vector<std::string> result;
    for (const auto& [lead, landing] : landingOf)
        if (joint >= 0 && landing.joint == joint)
            result.push_back (lead);
    return result;
}

std::vector<std::string> Harness::lugsWiredTo (const std::string& lug) const
{
    std::vector<std::string> result;
    for (const auto& [a, b] : wireSet)
    {
        if (a == lug)
            result.push_back (b);
        else if (b == lug)
            result.push_back (a);
    }
    return result;
}

bool Harness::hasWire (const std::string& a, const std::string& b) const { return wireSet.count (ordered (a, b)) > 0; }

void Harness::addWire (const std::string& a, const std::string& b)
{
    if (a != b)
        wireSet.insert (ordered (a, b));
}

void Harness::removeWire (const std::string& a, const std::string& b) { wireSet.erase (ordered (a, b)); }

void Harness::addRun (const std::string& at, double farads) { runList.push_back ({ point (at), farads }); }

bool Harness::hasPoint (const std::string& fullPoint) const
{
    const auto [partName, terminal] = splitPoint (fullPoint);
    const auto* part = find (partName);
    const auto points = part != nullptr ? part->points() : std::vector<std::string> {};
    return std::find (points.begin(), points.end(), terminal) != points.end();
}

std::vector<WireRun> Harness::runs() const
{
    std::vector<WireRun> result;
    std::copy_if (runList.begin(), runList.end(), std::back_inserter (result),
                  [this] (const WireRun& run) { return hasPoint (run.at); });
    return result;
}

void Harness::lift (const std::string& lead)
{
    landingOf.at (lead) = {};
    tidyJoints();
}

void Harness::land (const std::string& lead, const Landing& landing)
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
