#include "wording/FaultWords.h"

#include "wording/PartWords.h"
#include "wording/Say.h"

#include <algorithm>

namespace coldiron::wording
{
namespace
{
/** "Neck pickup, north coil"; of a pickup with one coil just "Bridge pickup". */
std::string coilTitle (const Harness& harness, const std::string& lead)
{
    const auto [name, terminal] = splitPoint (lead);
    const auto title = pickupTitle (name);
    const auto* part = harness.find (name);
    const bool isAlone = part != nullptr && part->as<PickupPart>() != nullptr && part->as<PickupPart>()->pickup.coils.size() == 1;
    return isAlone ? title : say ("{pickup}, {coil} coil", title, plainName (terminal.substr (0, terminal.find ('.'))));
}

struct Notes
{
    int all = 0, failing = 0;

    explicit Notes (const BenchVerdict& verdict)
    {
        for (const auto& reading : verdict.readings)
        {
            if (reading.ohms)
                add (reading.ohms->passes);
            for (const auto& tap : reading.taps)
                add (tap.passes);
            for (const auto& kick : reading.kicks)
                add (kick.passes);
        }
    }

    void add (bool passes)
    {
        ++all;
        failing += passes ? 0 : 1;
    }
};
}

std::string fault (const Fault& what, const Harness& harness)
{
    const auto at = [&] (size_t i) { return point (harness, what.points.at (i)); };
    switch (what.kind)
    {
    case Fault::Kind::none: return say ("Nothing wrong: parts at the edge of their tolerance");
    case Fault::Kind::openLead: return say ("Open joint: {lead} on {lug}", at (0), at (1));
    case Fault::Kind::openWire: return say ("Open wire, at either end: {one} to {other}", at (0), at (1));
    case Fault::Kind::openJoint: return say ("Off its joint in the air: {lead}", at (0));
    case Fault::Kind::dryLug:
        return say ("Dry joint: {lug}; what is soldered there holds together and does not reach the lug", at (0));
    case Fault::Kind::bridged: return say ("Touching: {one} and {other}", at (0), at (1));
    case Fault::Kind::swappedLeads: return say ("Swapped leads: {one} and {other}", at (0), at (1));
    case Fault::Kind::swappedLugs: return say ("Swapped: all that is on {one} and on {other}", at (0), at (1));
    case Fault::Kind::deadCoil: return say ("Dead coil, open inside: {coil}", coilTitle (harness, what.points.at (0)));
    case Fault::Kind::shortedCoil: return say ("Shorted coil, start to finish: {coil}", coilTitle (harness, what.points.at (0)));
    case Fault::Kind::wrongPot:
    {
        const auto& part = harness.partOf (what.points.at (0));
        return say ("Wrong pot: {pot} is {found} and should be {wanted}", partTitle (part), quantity (what.ohms, "Ω"),
                    quantity (part.as<PotPart>()->ohms, "Ω"));
    }
    }
    return {};
}

std::string lookFirst (const FaultGroup& group, const Harness& harness)
{
    if (group.lookFirst.empty())
        return {};
    const auto first = point (harness, group.lookFirst[0]);
    return group.lookFirst.size() == 1
               ? say ("Look first at {point}.", first)
               : say ("Look first at {point}; then at {next}.", first, point (harness, group.lookFirst[1]));
}

std::string noted (const OhmsNoted& ohms)
{
    switch (ohms.kind)
    {
    case OhmsNoted::Kind::open: return say ("open");
    case OhmsNoted::Kind::shorted: return say ("short");
    case OhmsNoted::Kind::number: break;
    }
    return quantity (ohms.ohms, "Ω");
}

std::string noted (Tap tap)
{
    switch (tap)
    {
    case Tap::loud: return say ("loud");
    case Tap::weak: return say ("weak");
    case Tap::none: break;
    }
    return say ("none");
}

std::string noted (Kick kick)
{
    switch (kick)
    {
    case Kick::up: return "+";
    case Kick::down: return "-";
    case Kick::none: break;
    }
    return say ("none");
}

std::string expected (const OhmVerdict& verdict)
{
    return verdict.expected == OhmsNoted::Kind::number
               ? say ("{low} to {high}", quantity (verdict.lowOhms, "Ω"), quantity (verdict.highOhms, "Ω"))
               : noted (OhmsNoted { verdict.expected });
}

std::string verdict (const BenchVerdict& all)
{
    const Notes notes (all);
    if (all.passes)
        return notes.all == 1 ? say ("PASS: what was noted is as it should be.")
                              : say ("PASS: all {count} things noted are as they should be.", notes.all);
    if (all.eachPasses)
        return say ("FAIL: each of the {count} things noted is within its bounds, and together they do not fit this wiring.",
                    notes.all);
    return notes.failing == 1
               ? say ("FAIL: 1 of {count} things noted is not as it should be.", notes.all)
               : say ("FAIL: {failing} of {count} things noted are not as they should be.", notes.failing, notes.all);
}

std::string doubt (const BenchVerdict& all)
{
    if (all.suspects.empty() || all.suspects.front().fits == all.suspects.front().of)
        return {};
    return say (
        "No single fault explains all of it: there may be two, a slip of the pen, or a guitar that is wired otherwise than "
        "the job says.");
}

std::string notShown (const BenchVerdict& all, const Harness& harness, size_t most)
{
    if (all.unseen.empty())
        return {};
    std::string names;
    for (size_t i = 0; i < std::min (most, all.unseen.size()); ++i)
        names = i == 0 ? fault (all.unseen[i], harness) : say ("{before}; {next}", names, fault (all.unseen[i], harness));
    const auto count = static_cast<int> (all.unseen.size());
    return count == 1 ? say ("One fault would not show in these readings: {fault}.", names)
           : all.unseen.size() <= most
               ? say ("{count} faults would not show in these readings: {faults}.", count, names)
               : say ("{count} faults would not show in these readings, among them: {faults}.", count, names);
}

std::string readingsCaution()
{
    return say ("Ohms with the guitar unplugged; plugged in only to tap. Unplug it before the iron: hot tip, eyes protected, "
                "fume drawn off.");
}
}
