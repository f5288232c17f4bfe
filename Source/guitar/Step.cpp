#include "guitar/Step.h"

#include "guitar/Nets.h"
#include "guitar/Roles.h"

#include <algorithm>

namespace coldiron
{
namespace
{
/** Moves one connection's outer end: a lead's landing, or the far end of a wire. */
void redirect (Harness& harness, const Connection& connection, const SolderPoint& to)
{
    if (connection.isLead)
    {
        harness.lift (connection.inner);
        harness.solder ({ connection.inner, to });
    }
    else if (harness.isLead (connection.outer))
    {
        harness.lift (connection.outer); // another part's lead on a lug of this side
        if (connection.inner != to)
            harness.solder ({ connection.inner, to });
    }
    else
    {
        harness.removeWire (connection.inner, connection.outer);
        harness.solder ({ connection.inner, to });
    }
}

/** Leads of one joint that all leave must be lifted before the first is landed, or the rest would come along. */
void redirectAll (Harness& harness, const std::vector<Connection>& connections, const SolderPoint& to)
{
    std::vector<Connection> rest;
    for (const auto& connection : connections)
        redirect (harness, connection, to);
}

/** One net's end: error if the ends are on several. */
SolderPoint oneEnd (const Harness& harness, const PointName& side) { return resolvePoint (harness, PointName::landingOf (side)); }

/** The cold lead of a braided pickup is its braid: it cannot go elsewhere. */
void checkMayLeave (const Harness& harness, const std::vector<Connection>& connections)
{
    for (const auto& connection : connections)
    {
        const auto* part = harness.find (connection.inner.part());
        const auto* pickup = part != nullptr ? part->as<PickupPart>() : nullptr;
        if (pickup != nullptr && pickup->pickup.isOnShieldInside (connection.inner.terminal()))
            throw HarnessError (connection.inner.text() + " and the braid of " + part->name
                                + " are one: that end cannot leave ground, or the braid and cover would be live;"
                                  " it needs a pickup with four leads, or this one opened");
    }
}

void move (Harness& harness, const Step& step)
{
    const auto& what = step.points.at (0);
    if (const auto side = sideNamed (harness, what))
    {
        if (! step.from.empty())
            throw HarnessError (what.text() + ": a whole side is moved from where it is; leave \"from\" away");
        const auto connections = sideConnections (harness, *side);
        checkMayLeave (harness, connections);
        const auto place = oneEnd (harness, what);
        const auto to = resolvePoint (harness, step.to);
        const auto leaving = step.leaving.empty() ? SolderPoint() : resolvePoint (harness, step.leaving);
        redirectAll (harness, connections, to);
        if (! leaving.empty())
            harness.solder ({ leaving, place });
        return;
    }

    const auto a = resolvePoint (harness, what);
    const auto to = resolvePoint (harness, step.to);
    const auto leaving = step.leaving.empty() ? SolderPoint() : resolvePoint (harness, step.leaving);
    SolderPoint place;
    if (harness.isLead (a) && harness.landings().at (a).isFree() && step.from.empty() && step.leaving.empty())
    {
        harness.solder ({ a, to });
        return;
    }
    if (harness.isLead (a))
    {
        place = resolvePoint (harness, PointName::landingOf (a));
        if (! step.from.empty() && resolvePoint (harness, step.from) != place)
            throw HarnessError (a.text() + " is not on " + resolvePoint (harness, step.from).text() + "; it is on "
                                + place.text());
        harness.lift (a);
        harness.solder ({ a, to });
    }
    else
    {
        const auto wired = harness.lugsWiredTo (a);
        if (wired.empty())
            throw HarnessError (a.text() + ": no wire on it to move");
        if (step.from.empty() && wired.size() > 1)
            throw HarnessError (a.text() + " has several wires; say which with \"from\": \"" + wired[0].text() + "\" or \""
                                + wired[1].text() + "\"");
        place = step.from.empty() ? wired.front() : resolvePoint (harness, step.from);
        if (! harness.hasWire (a, place))
            throw HarnessError ("there is no wire between " + a.text() + " and " + place.text());
        harness.removeWire (a, place);
        if (a == to)
            throw HarnessError (a.text() + " cannot be wired to itself");
        harness.solder ({ a, to });
    }
    if (! leaving.empty())
        harness.solder ({ leaving, place });
}

void swap (Harness& harness, const Step& step)
{
    const auto &first = step.points.at (0), &second = step.points.at (1);
    const auto sideA = sideNamed (harness, first), sideB = sideNamed (harness, second);
    if (sideA.has_value() != sideB.has_value())
        throw HarnessError (first.text() + " and " + second.text() + ": a whole side changes places only with a whole side");
    if (sideA)
    {
        const auto a = sideConnections (harness, *sideA), b = sideConnections (harness, *sideB);
        checkMayLeave (harness, a);
        checkMayLeave (harness, b);
        const auto placeA = oneEnd (harness, first), placeB = oneEnd (harness, second);
        // An anchor that is itself a lead of a moving connection would be lost in between.
        redirectAll (harness, a, placeB);
        redirectAll (harness, b, placeA);
        return;
    }
    const auto a = resolvePoint (harness, first), b = resolvePoint (harness, second);
    if (a == b && first != second)
        return; // a role that has its place already: the pickup is on the wiper
    if (a == b)
        throw HarnessError (a.text() + " cannot change places with itself");
    if (harness.isLead (a) && harness.isLead (b))
        harness.swapLeads (a, b);
    else
        harness.swapLugs (a, b);
}
}

namespace
{
template <typename... Kinds>
void keepTolerance (Part& fresh, const Part& old)
{
    const auto keep = [&] (auto* now, const auto* before)
    {
        if (now != nullptr && before != nullptr)
            now->tolerance = before->tolerance;
    };
    (keep (fresh.as<Kinds>(), old.as<Kinds>()), ...);
}

/** A pot in a pot's place: what the step does not say stays as it was. */
Part keepingWhatIsNotSaid (const Harness& harness, const Step& step)
{
    Part fresh = step.as.value();
    const auto* found = harness.find (step.part);
    const auto kept = [&step] (const char* key)
    { return std::find (step.leftOut.begin(), step.leftOut.end(), key) != step.leftOut.end(); };
    if (found != nullptr && kept ("tolerance"))
        keepTolerance<PotPart, CapacitorPart, ResistorPart, InductorPart> (fresh, *found);
    auto* pot = fresh.as<PotPart>();
    const auto* old = found != nullptr ? found->as<PotPart>() : nullptr;
    if (pot == nullptr || old == nullptr)
        return fresh;
    if (kept ("taper"))
        pot->taper = old->taper;
    if (kept ("shaft"))
        pot->shaft = old->shaft;
    if (kept ("no_load"))
        pot->noLoad = old->noLoad;
    if (kept ("turned_over"))
        pot->turnedOver = old->turnedOver;
    if (kept ("rest"))
        pot->rest = old->rest;
    return fresh;
}
}

Harness applyStep (const Harness& before, const Step& step)
{
    Harness harness = before;
    const auto point = [&harness] (const PointName& name) { return resolvePoint (harness, name); };
    switch (step.kind)
    {
    case Step::Kind::unsolder: harness.unsolder (point (step.points.at (0)), point (step.points.at (1))); break;
    case Step::Kind::solder:
    {
        std::vector<SolderPoint> chain;
        for (const auto& name : step.points)
        {
            if (sideNamed (harness, name))
                throw HarnessError (name.text() + " is a whole side; move or swap it, or solder to "
                                    + PointName::landingOf (name).text());
            chain.push_back (point (name));
        }
        harness.solder (chain);
        break;
    }
    case Step::Kind::move: move (harness, step); break;
    case Step::Kind::swap: swap (harness, step); break;
    case Step::Kind::fit:
    {
        Part part = step.as.value();
        part.name = step.part;
        if (! part.serves.empty()
            && (harness.find (part.serves) == nullptr || harness.find (part.serves)->as<PickupPart>() == nullptr))
            throw HarnessError (part.name + ": it cannot serve \"" + part.serves + "\", which is no pickup of this guitar");
        if (const auto* lever = part.as<SwitchPart>(); lever != nullptr && ! lever->on.empty())
        {
            const auto* pot = harness.find (lever->on);
            if (pot == nullptr || pot->as<PotPart>() == nullptr)
                throw HarnessError (part.name + ": it cannot sit on \"" + lever->on + "\", which is no pot of this guitar");
            for (const auto& other : harness.parts())
                if (other.as<SwitchPart>() != nullptr && other.as<SwitchPart>()->on == lever->on)
                    throw HarnessError (lever->on + " already has a push-pull (" + other.name + "): choose another");
        }
        harness.addPart (std::move (part));
        break;
    }
    case Step::Kind::replace: harness.replacePart (step.part, keepingWhatIsNotSaid (harness, step), step.pointMap); break;
    case Step::Kind::remove: harness.removePart (step.part); break;
    }
    return harness;
}

std::string inWords (const Step& step)
{
    const auto joined = [&step] (const char* between)
    {
        std::string text;
        for (const auto& p : step.points)
            text += (text.empty() ? "" : between) + p.text();
        return text;
    };
    switch (step.kind)
    {
    case Step::Kind::unsolder: return "unsolder " + joined (" from ");
    case Step::Kind::solder: return "solder " + joined (" to ");
    case Step::Kind::move:
        return "move " + joined ("") + (step.from.empty() ? "" : " from " + step.from.text()) + " to " + step.to.text()
               + (step.leaving.empty() ? "" : ", leaving " + step.leaving.text() + " in its place");
    case Step::Kind::swap: return "swap " + joined (" and ");
    case Step::Kind::fit: return "fit " + step.part;
    case Step::Kind::replace: return "replace " + step.part;
    case Step::Kind::remove: return "remove " + step.part;
    }
    return {};
}
}
