#include "support/OracleNetlist.h"

#include <cmath>
#include <cstdio>
#include <map>
#include <set>
#include <stdexcept>

namespace coldiron::support
{
namespace
{
/** Points by the colour of the paint that runs along every metal path. */
class Paint
{
public:
    void touch (const std::string& a, const std::string& b)
    {
        const auto keep = colour (a), lose = colour (b);
        for (auto& [name, own] : colours)
            if (own == lose)
                own = keep;
    }

    int colour (const std::string& point)
    {
        const auto [place, isNew] = colours.emplace (point, next);
        next += isNew;
        return place->second;
    }

private:
    std::map<std::string, int> colours;
    int next = 1;
};

/** The share of a track by the stated laws, from the taper's name; points in a table are asked of the table itself. */
double trackShare (const Taper& taper, double travel)
{
    const auto exponential = [] (double middle, double t)
    {
        const auto base = (1.0 / middle - 1.0) * (1.0 / middle - 1.0);
        return (std::pow (base, t) - 1.0) / (base - 1.0);
    };
    if (taper.name == "linear")
        return travel;
    if (taper.name.rfind ("log-", 0) == 0)
        return exponential (std::stod (taper.name.substr (4)) / 100.0, travel);
    if (taper.name.rfind ("reverse-log-", 0) == 0)
        return 1.0 - exponential (std::stod (taper.name.substr (12)) / 100.0, 1.0 - travel);
    return taper.share (travel);
}

struct Writer
{
    const Harness& harness;
    const Setting& setting;
    const OracleOptions& options;
    OracleNetlist& out;
    Paint paint;
    int sleeve = 0, tip = 0, serial = 0;
    std::set<std::string> nodes;

    std::string node (const std::string& point) { return nodeOf (paint.colour (point)); }

    std::string nodeOf (int colour)
    {
        if (colour == sleeve)
            return "0";
        const auto name = colour == tip ? std::string ("tip") : "n" + std::to_string (colour);
        nodes.insert (name);
        return name;
    }

    std::string fresh()
    {
        const auto name = "m" + std::to_string (++serial);
        nodes.insert (name);
        return name;
    }

    /** A two-ended element; returns its name. */
    std::string put (char letter, const std::string& a, const std::string& b, double value)
    {
        char text[40];
        std::snprintf (text, sizeof text, " %.17g", value);
        const auto name = std::string (1, letter) + std::to_string (++serial);
        out.lines.push_back (name + " " + a + " " + b + text);
        return name;
    }

    std::string leverPosition (const Part& part, const SwitchPart& lever) const
    {
        const auto& name = lever.shaft.empty() ? part.name : lever.shaft;
        if (const auto found = setting.levers.find (name); found != setting.levers.end())
            return found->second;
        return lever.type.rest.empty() ? lever.type.positions.front().name : lever.type.rest;
    }

    double knobTravel (const Part& part, const PotPart& pot) const
    {
        const auto found = setting.knobs.find (pot.shaft.empty() ? part.name : pot.shaft);
        return (found == setting.knobs.end() ? pot.rest : found->second) / 10.0;
    }

    void joinPoints()
    {
        for (const auto& [lead, landing] : harness.landings())
        {
            if (! landing.lug.empty())
                paint.touch (landing.lug, lead);
            if (landing.joint >= 0)
                paint.touch ("joint:" + std::to_string (landing.joint), lead);
        }
        for (const auto& [a, b] : harness.wires())
            paint.touch (a, b);

        for (const auto& part : harness.parts())
        {
            if (const auto* pickup = part.as<PickupPart>())
                for (const auto& [a, b] : pickup->pickup.inside)
                    paint.touch (part.name + "." + a, part.name + "." + b);
            if (const auto* lever = part.as<SwitchPart>())
            {
                const auto wanted = leverPosition (part, *lever);
                bool known = false;
                for (const auto& position : lever->type.positions)
                    if (position.name == wanted)
                    {
                        known = true;
                        for (const auto& group : position.contacts)
                            for (const auto& point : group)
                                paint.touch (part.name + "." + group.front(), part.name + "." + point);
                    }
                if (! known)
                    throw std::runtime_error (part.name + " has no position " + wanted);
            }
        }
    }

    void put (const Part& part, const PickupPart& kind)
    {
        struct Winding
        {
            std::string inductor;
            double henries;
            int sign;
        };
        std::vector<Winding> windings;

        for (const auto& coil : kind.pickup.coils)
        {
            const auto start = node (part.name + "." + coil.name + ".start");
            const auto finish = node (part.name + "." + coil.name + ".finish");
            const auto winding = coil.wound == Wound::clockwise ? 1 : -1;
            const auto pole = coil.magnet == Magnet::north ? 1 : coil.magnet == Magnet::south ? -1 : 0;
            const auto index = (int)out.coils.size();
            const auto emf = options.onlyCoil < 0 ? winding * pole * coil.output : options.onlyCoil == index ? 1.0 : 0.0;
            out.coils.push_back (part.name + "." + coil.name);

            // From the start lead inwards: EMF, resistance, inductance with its dot towards the start, cells.
            auto at = fresh();
            char gain[40];
            std::snprintf (gain, sizeof gain, " src 0 %.17g", emf);
            out.lines.push_back ("e" + std::to_string (++serial) + " " + start + " " + at + gain);
            auto next = fresh();
            put ('r', at, next, coil.dcrOhms);
            at = next;
            if (coil.henries > 0.0)
            {
                next = fresh();
                windings.push_back ({ put ('l', at, next, coil.henries), coil.henries, winding * pole });
                at = next;
            }
            for (const auto& cell : coil.losses)
            {
                next = fresh();
                put ('l', at, next, cell.henries);
                put ('r', at, next, cell.ohms);
                at = next;
            }
            out.lines.push_back ("v" + std::to_string (++serial) + " " + at + " " + finish + " 0");
            if (coil.farads > 0.0 && start != finish)
                put ('c', start, finish, coil.farads);
        }

        for (size_t i = 0; i < windings.size(); ++i)
            for (size_t j = i + 1; j < windings.size(); ++j)
                if (const auto k = kind.pickup.coupling * windings[i].sign * windings[j].sign; k != 0.0)
                    put ('k', windings[i].inductor, windings[j].inductor, k);
    }

    void put (const Part& part, const PotPart& pot)
    {
        const auto one = node (part.name + ".1"), two = node (part.name + ".2"), three = node (part.name + ".3");
        const auto travel = knobTravel (part, pot);
        if (pot.noLoad && travel >= 1.0)
        {
            put ('r', one, three, pot.ohms);
            return;
        }
        const auto share = pot.turnedOver ? 1.0 - trackShare (pot.taper, 1.0 - travel) : trackShare (pot.taper, travel);
        const auto floor = std::max (options.potFloorOhms, 1e-6);
        put ('r', one, two, std::max (floor, pot.ohms * share));
        put ('r', two, three, std::max (floor, pot.ohms * (1.0 - share)));
    }

    void put (const Part& part, const CapacitorPart& kind)
    {
        put ('c', node (part.name + ".1"), node (part.name + ".2"), kind.farads);
    }
    void put (const Part& part, const ResistorPart& kind)
    {
        put ('r', node (part.name + ".1"), node (part.name + ".2"), kind.ohms);
    }

    void put (const Part& part, const InductorPart& kind)
    {
        const auto middle = fresh();
        put ('r', node (part.name + ".1"), middle, std::max (kind.ohms, 1e-6));
        put ('l', middle, node (part.name + ".2"), kind.henries);
    }

    void put (const Part&, const SwitchPart&) {}
    void put (const Part&, const JackPart&) {}

    void put (const Part& part, const BufferPart& kind)
    {
        const auto in = node (part.name + ".in"), base = node (part.name + ".ground"), inner = fresh();
        char gain[40];
        std::snprintf (gain, sizeof gain, " %.17g", kind.gain);
        put ('r', in, base, kind.inputOhms);
        out.lines.push_back ("e" + std::to_string (++serial) + " " + inner + " 0 " + in + " 0" + gain);
        put ('r', inner, node (part.name + ".out"), std::max (kind.outputOhms, 1e-6));
    }
};
}

OracleNetlist::OracleNetlist (const Harness& harness, const Setting& setting, const Load& load, const OracleOptions& options)
{
    Writer writer { harness, setting, options, *this, {}, 0, 0, 0, {} };
    writer.joinPoints();
    const auto socket = harness.jack().name;
    const bool threeContacts = std::get<JackPart> (harness.jack().kind).stereo;
    if (threeContacts && load.plug == Plug::mono)
        writer.paint.touch (socket + ".sleeve", socket + ".ring"); // the plug's long sleeve
    const bool ringHeard = load.plug == Plug::stereoRing;
    writer.sleeve = writer.paint.colour (socket + ".sleeve");
    writer.tip = ! ringHeard     ? writer.paint.colour (socket + ".tip")
                 : threeContacts ? writer.paint.colour (socket + ".ring")
                                 : writer.sleeve;
    shorted = writer.sleeve == writer.tip;
    const auto tip = writer.nodeOf (writer.tip);

    lines.push_back (options.external ? "vsrc src 0 external" : "vsrc src 0 dc 0 ac 1");
    for (const auto& part : harness.parts())
        std::visit ([&] (const auto& kind) { writer.put (part, kind); }, part.kind);

    if (options.withLoad && ! shorted)
    {
        if (const auto farads = load.cableFarads + load.inputFarads; farads > 0.0)
            writer.put ('c', tip, "0", farads);
        writer.put ('r', tip, "0", load.inputOhms);
    }
    if (options.withLoad && threeContacts && load.plug != Plug::mono)
    {
        // The other channel of a stereo lead ends in a like input.
        const auto other = writer.node (socket + (ringHeard ? ".tip" : ".ring"));
        if (other != "0" && other != tip)
        {
            writer.put ('r', other, "0", load.inputOhms);
            writer.put ('c', other, "0", load.cableFarads);
            writer.put ('c', other, "0", load.inputFarads);
        }
    }
    for (const auto& [point, farads] : harness.runs())
        if (const auto where = writer.node (point); where != "0")
            writer.put ('c', where, "0", farads);
    for (const auto& name : std::set<std::string> (writer.nodes))
        writer.put ('r', name, "0", 1e12);
}
}
