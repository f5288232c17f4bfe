#include "wording/BenchWords.h"

#include "wording/PartWords.h"
#include "wording/Say.h"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <map>
#include <set>

namespace coldiron::wording
{
namespace
{
std::string lower (std::string text)
{
    if (! text.empty() && text[0] >= 'A' && text[0] <= 'Z')
        text[0] = static_cast<char> (text[0] - 'A' + 'a');
    return text;
}

const Part* partOf (const Harness& harness, const std::string& point) { return harness.find (splitPoint (point).first); }

/** A point that may be of either harness. */
std::string pointIn (const Harness& first, const Harness& other, const std::string& name)
{
    return point (partOf (first, name) != nullptr || name == "strings" ? first : other, name);
}

bool isLeadOf (const Harness& first, const Harness& other, const std::string& name)
{
    const auto& harness = partOf (first, name) != nullptr ? first : other;
    return partOf (harness, name) != nullptr && harness.isLead (name);
}

std::string partsTitle (const Harness& harness, const std::vector<std::string>& names)
{
    const auto* part = names.empty() ? nullptr : harness.find (names.front());
    return part == nullptr ? std::string() : partTitle (*part);
}

std::string kindOf (const Harness& after, const std::vector<std::string>& names)
{
    const auto* first = after.find (names.front());
    if (first == nullptr)
        return {};
    const SwitchPart* onIt = nullptr;
    for (const auto& name : names)
        if (const auto* part = after.find (name); part != nullptr && part != first && part->as<SwitchPart>() != nullptr)
            onIt = part->as<SwitchPart>();
    if (first->as<PotPart>() != nullptr)
    {
        const auto value = partValue (*first);
        const auto* pot = first->as<PotPart>();
        const auto plain = pot->noLoad ? say ("no-load pot {value}", value) : say ("pot {value}", value);
        return onIt == nullptr ? plain : say ("{pot} with a switch on it ({switch})", plain, lower (onIt->type.name));
    }
    if (const auto* lever = first->as<SwitchPart>())
        return lever->type.name.empty() ? say ("switch") : lower (lever->type.name);
    if (first->as<JackPart>() != nullptr)
        return first->as<JackPart>()->stereo ? say ("stereo jack") : say ("jack");
    if (first->as<PickupPart>() != nullptr)
        return first->preset.empty() ? say ("pickup") : say ("pickup ({kind})", plainName (first->preset));
    const auto value = partValue (*first);
    return value.empty() ? first->kindName() : say ("{kind} {value}", first->kindName(), value);
}
}

std::string benchStep (const BenchStep& step, const Harness& before, const Harness& after)
{
    switch (step.kind)
    {
    case BenchStep::Kind::unsolder:
        return isLeadOf (before, after, step.at) ? say ("Open the joint in the air at {lead}", pointIn (before, after, step.at))
                                                 : say ("Unsolder at {lug}", pointIn (before, after, step.at));
    case BenchStep::Kind::takeOut:
        return step.ends.empty()
                   ? say ("Take out the old part: {part}", partsTitle (before, step.parts))
                   : say ("Take everything off the old part, then take it out: {part}", partsTitle (before, step.parts));
    case BenchStep::Kind::prepare:
        return say ("New, out of the guitar: {part}, {kind}", partsTitle (after, step.parts), kindOf (after, step.parts));
    case BenchStep::Kind::mount: return say ("Mount it: {part}", partsTitle (after, step.parts));
    case BenchStep::Kind::solder:
        if (isLeadOf (after, before, step.at))
            return say ("Join in the air, and sleeve: {lead}", pointIn (after, before, step.at));
        return step.isOutOfGuitar ? say ("Solder at {lug}, still out of the guitar", pointIn (after, before, step.at))
                                  : say ("Solder at {lug}", pointIn (after, before, step.at));
    case BenchStep::Kind::insulate:
        return say ("{lead} hangs free from now on: sleeve it and lay it aside", pointIn (after, before, step.at));
    }
    return {};
}

std::vector<std::string> benchEnds (const BenchStep& step, const Harness& before, const Harness& after)
{
    std::vector<std::string> lines;
    std::set<std::string> said;
    for (const auto& end : step.ends)
    {
        const bool opens = step.kind == BenchStep::Kind::unsolder || step.kind == BenchStep::Kind::takeOut;
        const auto& first = opens ? before : after;
        const auto& second = opens ? after : before;
        const auto other = pointIn (first, second, end.other);
        const bool isLead = isLeadOf (first, second, end.other);
        const auto here = end.other == end.pair.first ? end.pair.second : end.pair.first;
        std::string line;
        if (step.kind == BenchStep::Kind::unsolder)
            line = isLead ? say ("{lead}", other) : say ("the wire to {point}", other);
        else if (step.kind == BenchStep::Kind::takeOut)
        {
            const auto lug = pointIn (first, second, here);
            line = isLead ? say ("{lug}: {lead}", lug, other) : say ("{lug}: the wire to {point}", lug, other);
        }
        else if (step.kind == BenchStep::Kind::prepare)
            line = say ("put a link through {lug} and {other}", pointIn (first, second, here), lower (other));
        else if (! end.movedFrom.empty())
            line = isLead ? say ("{lead}, moved here from {lug}", other, lower (pointIn (before, after, end.movedFrom)))
                          : say ("the wire from {point}, moved here from {lug}", other,
                                 lower (pointIn (before, after, end.movedFrom)));
        else if (end.isHooked)
            line = say ("the link to {point} that is through it", other);
        else if (isLead)
            line = end.again ? say ("{lead}, as before", other) : say ("{lead}", other);
        else
            line = end.again ? say ("the wire to {point}, as before", other) : say ("a new wire to {point}", other);
        if (said.insert (line).second)
            lines.push_back (line);
    }
    return lines;
}

std::vector<std::string> ringOut (const SwitchType& type)
{
    std::vector<std::string> lines;
    for (const auto& position : type.positions)
    {
        std::vector<std::string> groups;
        for (const auto& group : position.contacts)
        {
            std::vector<std::string> names;
            for (const auto& name : group)
                names.push_back (plainName (name));
            if (names.size() == 2)
                groups.push_back (say ("{a} rings to {b}", names[0], names[1]));
            else if (names.size() > 2)
                groups.push_back (say ("{all} ring together", listOf (names)));
        }
        const auto where = plainName (position.name);
        lines.push_back (groups.empty() ? say ("{position}: nothing rings", where)
                                        : say ("{position}: {groups}, nothing else", where, listOf (groups)));
    }
    return lines;
}

std::string valueCode (double value, bool isFarads)
{
    struct Multiple
    {
        double scale;
        const char* letter;
    };
    static constexpr Multiple ohms[] = { { 1e9, "G" }, { 1e6, "M" }, { 1e3, "K" }, { 1.0, "R" } };
    static constexpr Multiple farads[] = { { 1e-3, "m" }, { 1e-6, "µ" }, { 1e-9, "n" }, { 1e-12, "p" } };
    if (! (value > 0.0) || ! std::isfinite (value))
        return {};
    const auto* multiples = isFarads ? farads : ohms;
    const Multiple* chosen = &multiples[3];
    for (int i = 3; i >= 0; --i)
        if (value >= multiples[i].scale * 0.9995)
            chosen = &multiples[i];
    const double scaled = value / chosen->scale;
    char text[32];
    std::snprintf (text, sizeof text, scaled < 9.995 ? "%.2f" : scaled < 99.95 ? "%.1f" : "%.0f", scaled);
    const std::string figures = text;
    const auto dot = figures.find ('.');
    if (dot == std::string::npos)
        return figures + chosen->letter;
    if (figures.front() == '0') // below one of the smallest multiple: R47, both figures
        return chosen->letter + figures.substr (dot + 1);
    auto behind = figures.substr (dot + 1);
    while (! behind.empty() && behind.back() == '0')
        behind.pop_back();
    if (behind.empty() && dot == 1)
        behind = "0"; // at least two figures: 1K0
    return figures.substr (0, dot) + chosen->letter + behind;
}

char toleranceLetter (double share)
{
    static constexpr std::pair<double, char> letters[] = { { 0.001, 'B' }, { 0.0025, 'C' }, { 0.005, 'D' },
                                                           { 0.01, 'F' },  { 0.02, 'G' },   { 0.05, 'J' },
                                                           { 0.1, 'K' },   { 0.2, 'M' },    { 0.3, 'N' } };
    for (const auto& [size, letter] : letters)
        if (std::abs (share - size) < 1e-6)
            return letter;
    return 0;
}

BuyLine buyLine (const Harness& after, const std::vector<std::string>& names)
{
    BuyLine line;
    const auto* first = names.empty() ? nullptr : after.find (names.front());
    if (first == nullptr)
        return line;
    line.what = capitalised (kindOf (after, names));
    double value = 0.0, share = 0.0;
    bool isFarads = false;
    if (const auto* pot = first->as<PotPart>())
    {
        value = pot->ohms;
        share = pot->tolerance;
        line.fits = { say ("hole and thread"), say ("shaft: length, and the knob fits it"), say ("room under it in the cavity") };
    }
    else if (const auto* resistor = first->as<ResistorPart>())
    {
        value = resistor->ohms;
        share = resistor->tolerance;
    }
    else if (const auto* capacitor = first->as<CapacitorPart>())
    {
        value = capacitor->farads;
        share = capacitor->tolerance;
        isFarads = true;
    }
    else if (first->as<SwitchPart>() != nullptr)
        line.fits = { say ("hole or slot"), say ("room under it in the cavity"), say ("its tip or cap") };
    else if (first->as<JackPart>() != nullptr)
        line.fits = { say ("hole, and the length of its thread") };
    else if (first->as<PickupPart>() != nullptr)
        line.fits = { say ("outline and legs in the cavity"), say ("spacing of its poles at the strings"),
                      say ("leads: number and length") };
    line.code = valueCode (value, isFarads);
    if (const char letter = toleranceLetter (share); letter != 0 && ! line.code.empty())
        line.code += letter;
    if (share > 0.0)
        line.tolerance = say ("±{percent} %", quantity (share * 100.0, ""));
    while (! line.tolerance.empty() && line.tolerance.find ("  ") != std::string::npos)
        line.tolerance.erase (line.tolerance.find ("  "), 1);
    return line;
}

std::vector<std::string> benchCautions (const Harness& before, const Harness& after)
{
    std::vector<std::string> all { say ("Unplug the guitar from everything before it is opened, and take a battery out. "
                                        "Amplifiers and mains hold lethal voltages "
                                        "even when off: out of scope here, for qualified people only."),
                                   say ("The fume of flux with rosin can cause asthma: extract it or air the room, and keep your "
                                        "face out of it (HSE leaflet INDG248). "
                                        "Solder with lead: no food on the bench, wash your hands."),
                                   say ("Hot tip: eye protection, a stand, unplug it when you leave. Mask the finish. Short heat "
                                        "on switches and small pots. Shielding "
                                        "foil must touch no lug."),
                                   say ("The string ground ties the player to the amplifier's earth. Never remove an amplifier's "
                                        "earth; test the outlets played from, and "
                                        "use a residual-current device."),
                                   say ("Old guitars: original joints and parts carry value. Ask in writing before they are "
                                        "opened, and give every part back.") };
    bool opensPickup = false;
    for (const auto& part : after.parts())
        if (const auto* old = before.find (part.name); part.as<PickupPart>() != nullptr && old != nullptr && ! (*old == part))
            opensPickup = true;
    if (opensPickup)
        all.push_back (
            say ("A pickup with two leads can die when it is opened. To turn a coil's leads round, its cover and shield must be "
                 "apart from the coil first."));
    all.push_back (say ("What is told here of sound is a preview, and says nothing of electrical safety. Local codes and "
                        "licensed practice govern."));
    return all;
}
}
