#include "guitar/Roles.h"

#include "guitar/Nets.h"

#include <algorithm>
#include <deque>
#include <limits>
#include <optional>

namespace coldiron
{
namespace
{
bool isOnSide (const Harness& harness, const SolderPoint& point, const std::string& pickup)
{
    const auto* part = harness.find (point.part());
    return part != nullptr && (part->name == pickup || part->serves == pickup);
}

/** The ground net with switches at rest, but not through the side itself: what would be ground without the pickup. */
bool isCold (const Nets& nets, const Harness& harness, const SolderPoint& outer)
{
    return nets.joined (outer, harness.point (SolderPoint::ground()));
}

/** Every way of setting the switches that have no rest. */
std::vector<Setting> anyPositions (const Harness& harness)
{
    std::vector<Setting> all { Setting {} };
    for (const auto& part : harness.parts())
    {
        const auto* lever = part.as<SwitchPart>();
        if (lever == nullptr || ! lever->type.rest.empty())
            continue;
        std::vector<Setting> more;
        for (const auto& before : all)
            for (const auto& position : lever->type.positions)
            {
                if (before.levers.count (part.leverName()) > 0 && before.levers.at (part.leverName()) != position.name)
                    continue;
                auto next = before;
                next.levers[part.leverName()] = position.name;
                more.push_back (std::move (next));
            }
        all = std::move (more);
        if (all.size() > 4096)
            throw HarnessError ("too many switch positions to tell a pot's input from its output");
    }
    return all;
}

/** Fewest other pots crossed, lug 2 to 3, from the tip to each net; -1 where there is no way. */
std::vector<int> potsCrossed (const Harness& harness, const Nets& nets, const std::string& ownPot)
{
    std::vector<int> crossed (static_cast<size_t> (nets.count()), -1);
    const int groundNet = nets.net (harness.point (SolderPoint::ground()));
    std::deque<int> queue { nets.net ({ harness.jack().name, "tip" }) };
    if (queue.front() == groundNet)
        return crossed;
    crossed[static_cast<size_t> (queue.front())] = 0;
    while (! queue.empty())
    {
        const int here = queue.front();
        queue.pop_front();
        for (const auto& part : harness.parts())
        {
            if (part.as<PotPart>() == nullptr || part.name == ownPot)
                continue;
            const int two = nets.net ({ part.name, "2" }), three = nets.net ({ part.name, "3" });
            if (two != here && three != here)
                continue;
            const int there = two == here ? three : two;
            if (there == groundNet || crossed[static_cast<size_t> (there)] >= 0)
                continue;
            crossed[static_cast<size_t> (there)] = crossed[static_cast<size_t> (here)] + 1;
            queue.push_back (there);
        }
    }
    return crossed;
}

SolderPoint lugOf (const Harness& harness, const PotLug& wanted)
{
    constexpr int never = std::numeric_limits<int>::max();
    int best[2] = { never, never };
    for (const auto& setting : anyPositions (harness))
    {
        const Nets nets (harness, setting);
        const auto crossed = potsCrossed (harness, nets, wanted.pot);
        for (int i = 0; i < 2; ++i)
        {
            const int distance = crossed[static_cast<size_t> (nets.net ({ wanted.pot, i == 0 ? "2" : "3" }))];
            if (distance >= 0)
                best[i] = std::min (best[i], distance);
        }
    }
    if (best[0] == best[1])
        throw HarnessError (wanted.pot + (wanted.output ? ".out" : ".in")
                            + (best[0] == never ? ": neither lug 2 nor lug 3 leads to the jack, so neither is its output"
                                                : ": lugs 2 and 3 are equally far from the jack, so neither is its output"));
    const bool twoIsOut = best[0] < best[1];
    return { wanted.pot, twoIsOut == wanted.output ? "2" : "3" };
}

SolderPoint landingPlace (const Harness& harness, const SolderPoint& lead)
{
    const auto& landing = harness.landings().at (lead);
    if (! landing.lug.empty())
        return landing.lug;
    for (const auto& partner : harness.leadsInJoint (landing.joint))
        if (partner != lead)
            return partner;
    throw HarnessError (lead.text() + " is free: it lands nowhere");
}
}

std::optional<PickupSide> sideNamed (const Harness& harness, const PointName& name)
{
    const auto role = name.role();
    const auto* side = std::get_if<PickupSide> (&role);
    const auto* part = side != nullptr && name.landings() == 0 ? harness.find (side->pickup) : nullptr;
    if (part == nullptr || part->as<PickupPart>() == nullptr)
        return std::nullopt;
    return *side;
}

std::vector<Connection> sideConnections (const Harness& harness, const PickupSide& side)
{
    const auto& pickup = side.pickup;
    const SolderPoint shield (pickup, "shield");
    std::vector<Connection> all;
    const Nets nets (harness, Setting {});

    for (const auto& point : harness.allPoints()) // leads first, in the order of parts, so that answers do not depend on names
    {
        if (point == SolderPoint::strings() || ! isOnSide (harness, point, pickup))
            continue;
        if (harness.isLead (point))
        {
            const auto& landing = harness.landings().at (point);
            if (! landing.lug.empty() && (! isOnSide (harness, landing.lug, pickup) || landing.lug == shield))
                all.push_back ({ point, landing.lug, true });
            else if (landing.joint >= 0)
            {
                const auto partners = harness.leadsInJoint (landing.joint);
                const auto foreign = std::find_if (partners.begin(), partners.end(),
                                                   [&] (const auto& p) { return ! isOnSide (harness, p, pickup); });
                if (foreign != partners.end())
                    all.push_back ({ point, *foreign, true });
            }
            continue;
        }
        for (const auto& other : harness.lugsWiredTo (point))
            if (! isOnSide (harness, other, pickup))
                all.push_back ({ point, other, false });
        for (const auto& lead : harness.leadsOn (point))
            if (! isOnSide (harness, lead, pickup))
                all.push_back ({ point, lead, false }); // somebody else's lead on a lug of this side
    }

    std::vector<Connection> result;
    for (auto& connection : all)
    {
        // The cover or braid is not part of the coil's circuit: it stays on ground when the coils are turned round.
        if (connection.inner == shield)
            continue;
        if (isCold (nets, harness, connection.outer) == side.cold)
            result.push_back (std::move (connection));
    }
    if (result.empty())
        throw HarnessError (pickup
                            + (side.cold ? ".cold: nothing of that pickup goes to ground with the switches at rest"
                                         : ".hot: nothing of that pickup goes anywhere but to ground with the switches at rest"));
    return result;
}

namespace
{
/** Where a lead or a whole side lands. */
SolderPoint landingOf (const Harness& harness, const PointName& name)
{
    const auto inner = name.withoutLanding();
    if (const auto side = sideNamed (harness, inner))
    {
        const auto connections = sideConnections (harness, *side);
        const Nets nets (harness, Setting {});
        const auto& place = connections.front().outer;
        for (const auto& connection : connections)
            if (! nets.joined (connection.outer, place))
                throw HarnessError (name.text() + ": its ends are on several nets (" + place.text() + ", "
                                    + connection.outer.text() + "), so it has no one place");
        return place;
    }
    const auto lead = resolvePoint (harness, inner);
    if (! harness.isLead (lead))
        throw HarnessError (name.text() + ": @ asks where a lead lands, and " + lead.text() + " is a lug");
    return landingPlace (harness, lead);
}
}

SolderPoint resolvePoint (const Harness& harness, const PointName& name)
{
    if (name.landings() > 0)
        return landingOf (harness, name);
    const auto role = name.role();
    const auto* lug = std::get_if<PotLug> (&role);
    const auto* part = lug != nullptr ? harness.find (lug->pot) : nullptr;
    return part != nullptr && part->as<PotPart>() != nullptr ? lugOf (harness, *lug) : harness.point (name.literally());
}
}
