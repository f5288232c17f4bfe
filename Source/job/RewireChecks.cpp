// Whether a rewire fits a harness: what its asks name, what it needs, and what lies inside a pickup.

#include "job/Readers.h"

#include "files/Limits.h"
#include "files/Quantity.h"
#include "guitar/Nets.h"
#include "guitar/Roles.h"
#include "guitar/Setting.h"
#include "job/Substitution.h"

#include <algorithm>
#include <set>

namespace coldiron
{
namespace
{
bool isOfKind (const Part& part, const std::string& kind) { return kind == "part" || part.kindName() == kind; }

std::string article (const std::string& kind)
{
    return (std::string ("aeiou").find (kind.front()) != std::string::npos ? "an " : "a ") + kind;
}

std::string whyNotNamed (const std::string& ask, const std::string& kind, const std::string& value, const Harness& harness)
{
    if (kind == "point")
    {
        try
        {
            if (const auto name = PointName::parse (value); ! sideNamed (harness, name))
                resolvePoint (harness, name);
            return {};
        }
        catch (const HarnessError& error)
        {
            return "\"" + ask + "\" asks for a point: " + error.what();
        }
    }
    const auto names = candidates (kind, harness);
    if (std::find (names.begin(), names.end(), value) != names.end())
        return {};
    const auto near = nearest (value, names);
    return "\"" + ask + "\" asks for " + article (kind) + " and \"" + value + "\" is none of this guitar"
           + (names.empty()  ? "; it has none"
              : near.empty() ? "; it has " + listed (names)
                             : "; did you mean \"" + near + "\"? It has " + listed (names));
}
}

std::vector<std::string> candidates (const std::string& kind, const Harness& harness)
{
    if (kind == "point")
    {
        auto points = harness.allPoints();
        std::erase_if (points, [&] (const SolderPoint& p) { return leadInside (harness, p).has_value(); });
        return textsOf (points);
    }
    std::vector<std::string> names;
    for (const auto& part : harness.parts())
    {
        if (kind == "coil" && part.as<PickupPart>() != nullptr)
            for (const auto& coil : part.as<PickupPart>()->pickup.coils)
                names.push_back (part.name + "." + coil.name);
        else if (isOfKind (part, kind))
            names.push_back (part.name);
    }
    return names;
}

std::optional<SolderPoint> leadInside (const Harness& harness, const PointName& name)
{
    const auto& point = name.literally();
    const auto* part = name.landings() > 1 ? nullptr : harness.find (point.part());
    const auto lead = point.terminal();
    const auto* pickup = part != nullptr ? part->as<PickupPart>() : nullptr;
    if (pickup != nullptr && lead != "shield") // a braid is reached although a lead may be joined to it inside
        for (const auto& joint : pickup->pickup.inside)
            if (joint[0] == lead || joint[1] == lead)
                return point;
    return std::nullopt;
}

namespace
{
std::string whyInsideBroken (const Harness& harness)
{
    for (const auto& part : harness.parts())
    {
        const auto* pickup = part.as<PickupPart>();
        if (pickup == nullptr)
            continue;
        std::set<SolderPoint> inside;
        for (const auto& joint : pickup->pickup.inside)
            for (const auto& lead : joint)
                inside.emplace (part.name, lead);
        for (const auto& joint : pickup->pickup.inside)
        {
            if (joint[0] == "shield" || joint[1] == "shield")
            {
                const SolderPoint lead (part.name, joint[joint[0] == "shield" ? 1 : 0]);
                if (harness.landings().at (lead).lug != SolderPoint (part.name, "shield"))
                    return lead.text() + " and the braid of \"" + part.name
                           + "\" are one inside the pickup: they cannot be parted; it needs a pickup with four leads, or this "
                             "one opened";
                continue;
            }
            const auto& a = harness.landings().at ({ part.name, joint[0] });
            const auto& b = harness.landings().at ({ part.name, joint[1] });
            const auto others = harness.leadsInJoint (a.joint);
            if (a.joint < 0 || a.joint != b.joint
                || std::any_of (others.begin(), others.end(), [&] (const auto& lead) { return inside.count (lead) == 0; }))
                return part.name + "." + joint[0] + " and " + part.name + "." + joint[1] + " are joined inside the pickup \""
                       + part.name
                       + "\": that joint cannot be opened or reached; it needs a pickup with four leads, or this one opened";
        }
    }
    return {};
}

std::vector<std::string> positionsOf (const SwitchType& type)
{
    std::vector<std::string> names;
    for (const auto& position : type.positions)
        names.push_back (position.name);
    return names;
}

std::string whyControlsClash (const Harness& harness)
{
    std::map<std::string, double> restOf;
    for (const auto& part : harness.parts())
        if (const auto* pot = part.as<PotPart>())
            if (const auto [twin, isNew] = restOf.emplace (part.knobName(), pot->rest); ! isNew && twin->second != pot->rest)
                return "the pots on the shaft \"" + part.knobName() + "\" have different \"rest\": one shaft stands in one place";
    std::map<std::string, std::vector<std::string>> seen; // a knob has no positions
    for (const auto& part : harness.parts())
    {
        const auto* lever = part.as<SwitchPart>();
        if (lever == nullptr && part.as<PotPart>() == nullptr)
            continue;
        const auto name = lever != nullptr ? part.leverName() : part.knobName();
        const auto positions = lever != nullptr ? positionsOf (lever->type) : std::vector<std::string> {};
        const auto [twin, isNew] = seen.emplace (name, positions);
        if (! isNew && twin->second != positions)
            return "two controls are called \"" + name
                   + "\" and are not of one kind: pots of one shaft share a knob, switches thrown together have the same "
                     "positions";
    }
    return {};
}
}

std::string whyUnsound (const Harness& harness)
{
    int jacks = 0;
    if (harness.parts().size() > limits::parts)
        return "a guitar of " + std::to_string (harness.parts().size()) + " parts; expected " + std::to_string (limits::parts)
               + " at most";
    for (const auto& part : harness.parts())
    {
        jacks += part.as<JackPart>() != nullptr ? 1 : 0;
        if (const auto* lever = part.as<SwitchPart>(); lever != nullptr && lever->type.positions.empty())
            return "the switch \"" + part.name + "\" has no positions";
    }
    if (jacks != 1)
        return "a guitar has exactly one jack, and this would leave " + std::to_string (jacks);
    if (auto why = whyInsideBroken (harness); ! why.empty())
        return why;
    if (auto why = whyControlsClash (harness); ! why.empty())
        return why;
    size_t combinations = 1;
    for (const auto& control : controls (harness))
    {
        combinations *= std::max<size_t> (1, control.positions.size());
        if (combinations > limits::combinations)
            return "its switches can stand in more than " + std::to_string (limits::combinations)
                   + " ways together; expected so many at most, and no guitar has";
    }
    return {};
}

std::string whyUnheard (const Harness& harness, const std::vector<GuitarString>& strings)
{
    for (const auto& part : harness.parts())
    {
        const auto* pickup = part.as<PickupPart>();
        if (pickup == nullptr)
            continue;
        for (const auto& coil : pickup->pickup.coils)
            for (const auto& name : coil.hears)
                if (std::none_of (strings.begin(), strings.end(), [&] (const GuitarString& s) { return s.name == name; }))
                {
                    std::vector<std::string> names;
                    for (const auto& string : strings)
                        names.push_back (string.name);
                    return "the coil " + part.name + "." + coil.name + " hears the string \"" + name + "\", and the guitar has "
                           + listed (names) + "; write \"hears\" for this guitar, with \"like\"";
                }
    }
    return {};
}

namespace
{
bool isFree (const Harness& harness, const SolderPoint& point)
{
    return harness.isLead (point) ? harness.landings().at (point).isFree()
                                  : harness.leadsOn (point).empty() && harness.lugsWiredTo (point).empty();
}
}

std::string standardValue (const RewireInfo::Ask& ask, const std::map<std::string, std::string>& arguments,
                           const Harness& harness)
{
    if (ask.standardOf.empty())
        return ask.standard;
    std::vector<std::string> unknown;
    const auto* part = harness.find (filledIn (ask.standardOf, arguments, unknown));
    if (part == nullptr)
        return {};
    if (const auto* pot = part->as<PotPart>())
        return ask.kind == "taper" ? (pot->taper.name == "points" ? std::string() : pot->taper.name) : quantityText (pot->ohms);
    if (const auto* capacitor = part->as<CapacitorPart>())
        return quantityText (capacitor->farads);
    if (const auto* resistor = part->as<ResistorPart>())
        return quantityText (resistor->ohms);
    if (const auto* inductor = part->as<InductorPart>())
        return quantityText (inductor->henries);
    return {};
}

std::string whyNotFilled (const RewireUse& use, const Harness& harness)
{
    std::map<std::string, std::string> taken;
    for (const auto& [ask, kind] : use.kinds)
    {
        const auto& value = use.arguments.at (ask);
        if (const auto why = whyNotNamed (ask, kind, value, harness); ! why.empty())
            return why;
        if (const auto [other, isNew] = taken.emplace (value, ask); ! isNew)
            return "\"" + other->second + "\" and \"" + ask + "\" are both \"" + value + "\"; they must differ";
    }
    for (const auto& need : use.needs)
    {
        std::string why;
        if (const auto inside = leadInside (harness, need.point))
            why = inside->text() + " is joined inside the pickup";
        else
            try
            {
                const auto point = resolvePoint (harness, need.point);
                if (need.mustBeFree && ! isFree (harness, point))
                    why = point.text() + " is wired already";
            }
            catch (const HarnessError& error)
            {
                why = error.what();
            }
        if (! why.empty())
            return need.otherwise.empty() ? why : need.otherwise + " (" + why + ")";
    }
    return {};
}
}
