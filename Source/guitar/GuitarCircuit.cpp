#include "guitar/GuitarCircuit.h"

#include "guitar/HeardPath.h"
#include "guitar/Nets.h"

#include <algorithm>
#include <cmath>

namespace coldiron
{
namespace
{
class Builder
{
public:
    Builder (const Harness& h, const Setting& s, const Load& l, const BuildOptions& o)
        : harness (h), setting (s), load (l), options (o), nets (h, s, l.plug == Plug::mono)
    {
        nodes.assign (static_cast<size_t> (nets.count()), -1);
        groundNet = nets.net (harness.point (SolderPoint::ground()));
        nodes[static_cast<size_t> (groundNet)] = ground;
    }

    GuitarCircuit run()
    {
        checkSetting();
        for (const auto& part : harness.parts())
        {
            factors = factorsOf (part.name);
            std::visit ([&] (const auto& kind) { add (part, kind); }, part.kind);
            const auto index = static_cast<size_t> (&part - harness.parts().data());
            circuit.resistorParts.resize (circuit.netlist.resistors().size(), index);
            circuit.branchParts.resize (circuit.netlist.branches().size(), index);
        }
        const auto& jack = harness.jack();
        const bool stereo = jack.as<JackPart>()->stereo;
        const auto tip = node ({ jack.name, "tip" });
        const auto ring = stereo ? node ({ jack.name, "ring" }) : ground;
        circuit.tip = load.plug == Plug::stereoRing ? ring : tip;
        addRuns();
        circuit.path = circuit.tip == ground ? Path::shorted : leadsToTip (circuit) ? Path::open : Path::none;
        if (options.withLoad)
        {
            addInput (tip);
            if (ring != tip)
                addInput (ring);
        }
        return std::move (circuit);
    }

private:
    const Harness& harness;
    const Setting& setting;
    const Load& load;
    const BuildOptions& options;
    const Nets nets;
    std::vector<NodeId> nodes; ///< by net; -1 not made yet
    int groundNet = 0;
    GuitarCircuit circuit;
    PartFactors factors;

    void checkSetting() const
    {
        const auto all = controls (harness);
        const auto known = [&all] (const std::string& name, bool isKnob)
        {
            return std::any_of (all.begin(), all.end(),
                                [&] (const Control& c) { return c.name == name && c.positions.empty() == isKnob; });
        };
        for (const auto& [name, value] : setting.knobs)
        {
            if (! known (name, true))
                throw HarnessError ("there is no knob \"" + name + "\" on this guitar");
            if (! (value >= 0.0 && value <= 10.0))
                throw HarnessError ("knob " + name + " goes from 0 to 10");
        }
        for (const auto& [name, value] : setting.levers)
            if (! known (name, false))
                throw HarnessError ("there is no switch \"" + name + "\" on this guitar");
    }

    PartFactors factorsOf (const std::string& name) const
    {
        if (options.factors != nullptr)
            for (const auto& [part, bend] : *options.factors)
                if (part == name)
                    return bend;
        return {};
    }

    NodeId node (const SolderPoint& point)
    {
        auto& known = nodes[static_cast<size_t> (nets.net (point))];
        if (known < 0)
            known = circuit.netlist.addNode();
        return known;
    }

    void resistor (NodeId a, NodeId b, double ohms)
    {
        if (a != b)
            circuit.netlist.addResistor (a, b, ohms);
    }

    void capacitor (NodeId a, NodeId b, double farads)
    {
        if (a != b)
            circuit.netlist.addCapacitor (a, b, farads);
    }

    void addInput (NodeId at)
    {
        if (at == ground)
            return;
        circuit.netlist.addCapacitor (at, ground, load.cableFarads * factorsOf ("cable").cable);
        circuit.netlist.addResistor (at, ground, load.inputOhms);
        circuit.netlist.addCapacitor (at, ground, load.inputFarads);
    }

    /** A run at a point that no part of the circuit touches has nothing to load. */
    void addRuns()
    {
        for (const auto& run : harness.runs())
            if (const auto at = nodes[static_cast<size_t> (nets.net (run.at))]; at > ground)
                circuit.netlist.addCapacitor (at, ground, run.farads);
    }

    void add (const Part& part, const PickupPart& kind)
    {
        const auto& pickup = kind.pickup;
        const auto first = circuit.coils.size();
        for (const auto& coil : pickup.coils)
            addCoil (part, kind, coil);

        const double k = pickup.coils.size() > 1 ? std::clamp (pickup.coupling + factors.couplingShift, -0.95, 0.95) : 0.0;
        for (size_t i = 0; i < pickup.coils.size(); ++i)
            for (size_t j = i + 1; j < pickup.coils.size(); ++j)
            {
                const auto &a = pickup.coils[i], &b = pickup.coils[j];
                const double mutual =
                    k * std::sqrt (a.henries * b.henries) * factors.inductance * a.stringSign() * b.stringSign();
                if (mutual != 0.0)
                    circuit.netlist.addCoupling (circuit.coils[first + i].branch, circuit.coils[first + j].branch, mutual);
            }
    }

    void addCoil (const Part& part, const PickupPart& kind, const Coil& coil)
    {
        const auto start = node ({ part.name, coil.name + ".start" });
        const auto finish = node ({ part.name, coil.name + ".finish" });
        auto from = start;
        auto to = coil.losses.empty() ? finish : circuit.netlist.addNode();
        const auto branch =
            circuit.netlist.addBranch (from, to, coil.dcrOhms * factors.resistance, coil.henries * factors.inductance);
        for (size_t i = 0; i < coil.losses.size(); ++i)
        {
            from = to;
            to = i + 1 == coil.losses.size() ? finish : circuit.netlist.addNode();
            circuit.netlist.addBranch (from, to, 0.0, coil.losses[i].henries * factors.inductance);
            resistor (from, to, coil.losses[i].ohms * factors.loss);
        }
        capacitor (start, finish, coil.farads * factors.capacitance);

        CoilSource source;
        source.pickup = part.name;
        source.coil = coil.name;
        source.branch = branch;
        source.stringDrive = coil.output * coil.stringSign();
        source.humDrive = coil.humSign() * coil.turns / 5000.0;
        source.bridgeMm = kind.bridgeMm + coil.offsetMm;
        source.slantMm = kind.pickup.slantMm;
        source.hears = coil.hears;
        source.known = kind.pickup.known;
        circuit.coils.push_back (std::move (source));
    }

    void add (const Part& part, const PotPart& pot)
    {
        const double knob = setting.knob (part.knobName(), pot.rest);
        const auto one = node ({ part.name, "1" }), two = node ({ part.name, "2" }), three = node ({ part.name, "3" });
        const double ohms = pot.ohms * factors.pots, t = knob / 10.0;
        if (pot.noLoad && knob >= 10.0)
        {
            resistor (one, three, ohms);
            return;
        }
        const double share = pot.turnedOver ? 1.0 - pot.taper.share (1.0 - t) : pot.taper.share (t);
        resistor (one, two, std::max (share * ohms, options.potFloorOhms));
        resistor (two, three, std::max ((1.0 - share) * ohms, options.potFloorOhms));
    }

    void add (const Part& part, const CapacitorPart& kind)
    {
        capacitor (node ({ part.name, "1" }), node ({ part.name, "2" }), kind.farads * factors.capacitance);
    }

    void add (const Part& part, const ResistorPart& kind)
    {
        resistor (node ({ part.name, "1" }), node ({ part.name, "2" }), kind.ohms * factors.resistance);
    }

    void add (const Part& part, const InductorPart& kind)
    {
        circuit.netlist.addBranch (node ({ part.name, "1" }), node ({ part.name, "2" }), kind.ohms,
                                   kind.henries * factors.inductance);
    }

    void add (const Part&, const SwitchPart&) {} // its contacts were merged into nets

    void add (const Part&, const JackPart&) {} // a mono plug's ring was merged with the sleeve

    void add (const Part& part, const BufferPart& buffer)
    {
        const auto in = node ({ part.name, "in" }), out = node ({ part.name, "out" });
        const auto common = node ({ part.name, "ground" });
        const auto inner = circuit.netlist.addNode();
        resistor (in, common, buffer.inputOhms);
        circuit.netlist.addFollower (in, inner, buffer.gain);
        resistor (inner, out, buffer.outputOhms);
    }
};
}

GuitarCircuit buildCircuit (const Harness& harness, const Setting& setting, const Load& load, const BuildOptions& options)
{
    return Builder (harness, setting, load, options).run();
}
}
