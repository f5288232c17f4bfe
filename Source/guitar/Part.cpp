#include "guitar/Part.h"

#include "guitar/Harness.h"

#include <algorithm>
#include <cmath>

namespace coldiron
{
const SwitchType::Position* SwitchType::find (const std::string& position) const
{
    const auto found = std::find_if (positions.begin(), positions.end(), [&] (const Position& p) { return p.name == position; });
    return found == positions.end() ? nullptr : &*found;
}

const SwitchType::Position& SwitchType::standard() const
{
    const auto* atRest = rest.empty() ? nullptr : find (rest);
    if (atRest == nullptr && positions.empty())
        throw HarnessError ("a switch without positions stands nowhere");
    return atRest != nullptr ? *atRest : positions.front();
}

std::vector<std::string> Part::points() const
{
    if (const auto* pickupPart = as<PickupPart>())
    {
        std::vector<std::string> result;
        for (const auto& coil : pickupPart->pickup.coils)
            for (const char* end : { ".start", ".finish" })
                result.push_back (coil.name + end);
        if (pickupPart->pickup.shield)
            result.push_back ("shield");
        return result;
    }
    if (as<PotPart>() != nullptr)
        return { "1", "2", "3", "case" };
    if (const auto* switchPart = as<SwitchPart>())
        return switchPart->type.points;
    if (const auto* jackPart = as<JackPart>())
        return jackPart->stereo ? std::vector<std::string> { "tip", "ring", "sleeve" }
                                : std::vector<std::string> { "tip", "sleeve" };
    if (as<BufferPart>() != nullptr)
        return { "in", "out", "ground" };
    return { "1", "2" };
}

bool Part::isLead (const std::string& point) const
{
    if (as<PickupPart>() != nullptr)
        return point != "shield";
    return as<CapacitorPart>() != nullptr || as<ResistorPart>() != nullptr || as<InductorPart>() != nullptr;
}

std::string Part::kindName() const
{
    static constexpr const char* names[] = { "pickup", "pot", "capacitor", "resistor", "inductor", "switch", "jack", "buffer" };
    return names[kind.index()];
}

std::string Part::knobName() const
{
    const auto* pot = as<PotPart>();
    return pot != nullptr && ! pot->shaft.empty() ? pot->shaft : name;
}

std::string Part::leverName() const
{
    const auto* lever = as<SwitchPart>();
    return lever != nullptr && ! lever->shaft.empty() ? lever->shaft : name;
}

namespace
{
bool same (const Coil& a, const Coil& b)
{
    const auto cells = [] (const LossCell& x, const LossCell& y) { return x.henries == y.henries && x.ohms == y.ohms; };
    return a.name == b.name && a.dcrOhms == b.dcrOhms && a.henries == b.henries && a.farads == b.farads
           && std::equal (a.losses.begin(), a.losses.end(), b.losses.begin(), b.losses.end(), cells) && a.magnet == b.magnet
           && a.wound == b.wound && a.offsetMm == b.offsetMm && a.output == b.output && a.turns == b.turns && a.hears == b.hears;
}

bool same (const PickupPart& a, const PickupPart& b)
{
    const auto coils = [] (const Coil& x, const Coil& y) { return same (x, y); };
    return a.bridgeMm == b.bridgeMm && a.pickup.coupling == b.pickup.coupling && a.pickup.inside == b.pickup.inside
           && a.pickup.slantMm == b.pickup.slantMm && a.pickup.shield == b.pickup.shield
           && std::equal (a.pickup.coils.begin(), a.pickup.coils.end(), b.pickup.coils.begin(), b.pickup.coils.end(), coils);
}

bool same (const PotPart& a, const PotPart& b)
{
    bool tapers = a.taper.name == b.taper.name;
    for (double t : { 0.1, 0.25, 0.5, 0.75, 0.9 })
        tapers = tapers && a.taper.share (t) == b.taper.share (t);
    return a.ohms == b.ohms && tapers && a.shaft == b.shaft && a.noLoad == b.noLoad && a.turnedOver == b.turnedOver
           && a.rest == b.rest;
}

bool same (const CapacitorPart& a, const CapacitorPart& b) { return a.farads == b.farads; }
bool same (const ResistorPart& a, const ResistorPart& b) { return a.ohms == b.ohms; }
bool same (const InductorPart& a, const InductorPart& b) { return a.henries == b.henries && a.ohms == b.ohms; }
bool same (const JackPart& a, const JackPart& b) { return a.stereo == b.stereo; }

bool same (const BufferPart& a, const BufferPart& b)
{
    return a.gain == b.gain && a.inputOhms == b.inputOhms && a.outputOhms == b.outputOhms;
}

bool same (const SwitchPart& a, const SwitchPart& b)
{
    const auto positions = [] (const SwitchType::Position& x, const SwitchType::Position& y)
    { return x.name == y.name && x.contacts == y.contacts; };
    return a.on == b.on && a.shaft == b.shaft && a.type.points == b.type.points && a.type.rest == b.type.rest
           && std::equal (a.type.positions.begin(), a.type.positions.end(), b.type.positions.begin(), b.type.positions.end(),
                          positions);
}
}

bool operator== (const Part& a, const Part& b)
{
    if (a.name != b.name || a.serves != b.serves || a.kind.index() != b.kind.index())
        return false;
    return std::visit ([&b] (const auto& mine) { return same (mine, *b.as<std::decay_t<decltype (mine)>>()); }, a.kind);
}
}
