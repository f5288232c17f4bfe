#include "analysis/Fault.h"

#include "guitar/Nets.h"

#include <algorithm>
#include <cmath>
#include <set>

namespace coldiron
{
namespace
{
using FaultKind = Fault::Kind;
using Pair = std::pair<std::string, std::string>;

/** Those a shop has in the drawer (common practice of the trade, no source) [ohm]. */
constexpr double standardPots[] = { 25e3, 50e3, 100e3, 250e3, 500e3, 1e6 };

/** Neighbours on the part itself, full names: what a blob of solder or a strand may join. A coil's own two leads are left to the
    shorted coil. */
std::vector<Pair> neighbours (const Part& part)
{
    std::vector<Pair> pairs;
    const auto points = part.points();
    const auto add = [&] (const std::string& a, const std::string& b)
    { pairs.emplace_back (part.name + "." + a, part.name + "." + b); };
    if (part.as<PickupPart>() != nullptr)
    {
        for (const auto& point : points)
            if (part.as<PickupPart>()->pickup.shield && point != "shield")
                add (point, "shield");
        return pairs;
    }
    const bool isPot = part.as<PotPart>() != nullptr;
    for (size_t i = 1; i < points.size(); ++i)
        if (! isPot || points[i] != "case")
            add (points[i - 1], points[i]);
    if (isPot) // a lug bent down touches the case
        for (const char* lug : { "1", "2", "3" })
            add (lug, "case");
    return pairs;
}

/** What is soldered to a lug: leads, then the lugs that wires lead to. */
std::vector<std::string> attached (const Harness& harness, const std::string& lug)
{
    auto all = textsOf (harness.leadsOn (lug));
    const auto lugs = textsOf (harness.lugsWiredTo (lug));
    all.insert (all.end(), lugs.begin(), lugs.end());
    return all;
}

/** Joints inside pickups, as sorted pairs of full names. */
std::set<Pair> joinedInside (const Harness& harness)
{
    std::set<Pair> inside;
    for (const auto& part : harness.parts())
        if (const auto* pickup = part.as<PickupPart>())
            for (const auto& [a, b] : pickup->pickup.inside)
                inside.insert (std::minmax (part.name + "." + a, part.name + "." + b));
    return inside;
}

/** Leads that only the inside of the pickup touches: nobody can open or exchange them. */
bool isInside (const std::set<Pair>& inside, const std::string& lead)
{
    return std::any_of (inside.begin(), inside.end(),
                        [&] (const Pair& pair) { return pair.first == lead || pair.second == lead; });
}

class FaultList
{
public:
    explicit FaultList (const Harness& h) : harness (h), nets (h), inside (joinedInside (h)) {}

    std::vector<Fault> all()
    {
        openJoints();
        bridges();
        exchanges();
        for (const auto& part : harness.parts())
        {
            if (const auto* pickup = part.as<PickupPart>())
                for (const auto& coil : pickup->pickup.coils)
                    for (const auto kind : { FaultKind::deadCoil, FaultKind::shortedCoil })
                        add (kind, part.name + "." + coil.name + ".start", part.name + "." + coil.name + ".finish");
            if (const auto* pot = part.as<PotPart>())
                for (const double ohms : standardPots)
                    if (std::abs (std::log (ohms / pot->ohms)) > 0.3)
                        faults.push_back ({ FaultKind::wrongPot, { part.name + ".2" }, ohms });
        }
        return std::move (faults);
    }

private:
    const Harness& harness;
    const Nets nets; ///< by solder alone
    const std::set<Pair> inside;
    std::vector<Fault> faults;

    void add (FaultKind kind, const std::string& a, const std::string& b) { faults.push_back ({ kind, { a, b } }); }

    void openJoints()
    {
        std::set<int> jointsSeen;
        for (const auto& [lead, landing] : harness.landings())
        {
            if (! landing.lug.empty() && inside.count (std::minmax (lead, landing.lug)) == 0)
                add (FaultKind::openLead, lead, landing.lug);
            if (landing.joint < 0 || isInside (inside, lead))
                continue;
            auto leads = harness.leadsInJoint (landing.joint);
            if (leads.size() == 2 && ! jointsSeen.insert (landing.joint).second)
                continue; // off at the one is off at the other
            std::stable_partition (leads.begin(), leads.end(), [&l = lead] (const auto& other) { return other == l; });
            faults.push_back ({ FaultKind::openJoint, textsOf (leads) });
        }
        for (const auto& [a, b] : harness.wires())
            if (inside.count (std::minmax (a, b)) == 0)
                add (FaultKind::openWire, a, b);
        for (const auto& point : harness.allPoints())
        {
            const auto terminal = splitPoint (point).second;
            const bool carriesNothing = terminal == "case" || terminal == "shield" || point == "strings";
            if (! carriesNothing && ! harness.isLead (point) && attached (harness, point).size() > 1)
                faults.push_back ({ FaultKind::dryLug, { point } });
        }
    }

    void bridges()
    {
        for (const auto& part : harness.parts())
            for (const auto& [a, b] : neighbours (part))
                if (! nets.joined (a, b))
                    add (FaultKind::bridged, a, b);
    }

    void exchanges()
    {
        std::vector<std::string> leads;
        for (const auto& part : harness.parts())
            if (part.as<PickupPart>() != nullptr)
                for (const auto& terminal : part.points())
                    if (const auto lead = part.name + "." + terminal; part.isLead (terminal) && ! isInside (inside, lead))
                        leads.push_back (lead);
        for (size_t i = 0; i < leads.size(); ++i)
            for (size_t j = i + 1; j < leads.size(); ++j)
                if (! nets.joined (leads[i], leads[j]))
                    add (FaultKind::swappedLeads, leads[i], leads[j]);

        for (const auto& part : harness.parts())
        {
            auto lugs = part.points();
            std::erase_if (lugs, [&] (const auto& terminal)
                           { return part.isLead (terminal) || terminal == "case" || terminal == "shield"; });
            const bool isSmall = lugs.size() <= 3; // three lugs: the outer two may be exchanged as well
            for (size_t i = 0; i < lugs.size(); ++i)
                for (size_t j = i + 1; j < lugs.size() && (isSmall || j == i + 1); ++j)
                {
                    const auto a = part.name + "." + lugs[i], b = part.name + "." + lugs[j];
                    const bool bare = attached (harness, a).empty() && attached (harness, b).empty();
                    if (! bare && ! nets.joined (a, b))
                        add (FaultKind::swappedLugs, a, b);
                }
        }
    }
};

void dryOut (Harness& harness, const std::string& lug)
{
    const auto leads = harness.leadsOn (lug);
    const auto lugs = harness.lugsWiredTo (lug);
    for (const auto& other : lugs)
        harness.removeWire (lug, other);
    for (const auto& lead : leads)
        harness.lift (lead);
    auto together = lugs;
    together.insert (together.end(), leads.begin(), leads.end());
    if (together.size() > 1)
        harness.solder (together);
}

void breakCoil (Harness& harness, const std::string& lead)
{
    Part part = harness.partOf (lead);
    for (auto& coil : part.as<PickupPart>()->pickup.coils)
        if (splitPoint (lead).second == coil.name + ".start")
            coil.dcrOhms = 1e12;
    harness.replacePart (part.name, part, {});
}
}

std::vector<Fault> singleFaults (const Harness& harness) { return FaultList (harness).all(); }

Harness withFault (const Harness& sound, const Fault& fault)
{
    Harness harness = sound;
    const auto& points = fault.points;
    switch (fault.kind)
    {
    case FaultKind::none: break;
    case FaultKind::openLead:
    case FaultKind::openJoint: harness.lift (points[0]); break;
    case FaultKind::openWire: harness.removeWire (points[0], points[1]); break;
    case FaultKind::dryLug: dryOut (harness, points[0]); break;
    case FaultKind::bridged:
    case FaultKind::shortedCoil: harness.solder ({ points.begin(), points.end() }); break;
    case FaultKind::swappedLeads: harness.swapLeads (points[0], points[1]); break;
    case FaultKind::swappedLugs: harness.swapLugs (points[0], points[1]); break;
    case FaultKind::deadCoil: breakCoil (harness, points[0]); break;
    case FaultKind::wrongPot:
    {
        Part part = harness.partOf (points[0]);
        part.as<PotPart>()->ohms = fault.ohms;
        harness.replacePart (part.name, part, {});
        break;
    }
    }
    return harness;
}

std::vector<std::string> placesOf (const Fault& fault, const Harness& harness)
{
    if (fault.kind == FaultKind::openLead)
        return { fault.points[1], fault.points[0] };
    if (fault.kind != FaultKind::deadCoil && fault.kind != FaultKind::shortedCoil)
        return fault.points;
    std::vector<std::string> places;
    for (const auto& lead : fault.points) // measured where the lead is soldered
    {
        const auto& lug = harness.landings().at (lead).lug.text();
        places.push_back (lug.empty() ? lead : lug);
    }
    return places;
}
}
