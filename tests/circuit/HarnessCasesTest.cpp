// Whole harnesses, put together by hand here and for ngspice, against values computed once by a general circuit simulator
// and by hand formulas ([calc], twice), dB re one coil's EMF.
// Load: volume and tone pots equal, tone at full through 22 nF, 500 pF cable, 1M input. No 1 ohm floor of the pots.

#include "Benches.h"
#include "support/Ngspice.h"

#include <catch2/catch.hpp>

#include <numeric>

namespace harnessCasesTest
{
using namespace coldiron;
using namespace coldiron::support;

namespace
{
/** Adds every part to our netlist and to ngspice's. Node 0 is ground, 1 the pickup's hot end, 2 the volume's wiper. */
struct Both
{
    Netlist ours;
    Ngspice::Lines theirs { "vsrc src 0 dc 0 ac 1" };
    std::vector<BranchId> coils;
    int parts = 0;

    NodeId node()
    {
        const auto n = ours.addNode();
        line ("r", n, 0, 1e12);
        return n;
    }

    std::string line (const std::string& kind, NodeId a, NodeId b, double value)
    {
        const auto name = kind + std::to_string (++parts);
        char text[120];
        std::snprintf (text, sizeof text, "%s %d %d %.17g", name.c_str(), a, b, value);
        theirs.push_back (text);
        return name;
    }

    void resistor (NodeId a, NodeId b, double ohms)
    {
        ours.addResistor (a, b, ohms);
        line ("r", a, b, ohms);
    }
    void capacitor (NodeId a, NodeId b, double farads)
    {
        ours.addCapacitor (a, b, farads);
        line ("c", a, b, farads);
    }

    /** EMF 1 towards a; returns ngspice's name of the inductance. */
    std::string coil (NodeId a, NodeId b, double ohms, double henries, double farads)
    {
        coils.push_back (ours.addBranch (a, b, ohms, henries));
        const auto id = std::to_string (++parts);
        const auto text = [] (NodeId n) { return std::to_string (n); };
        theirs.push_back ("e" + id + " " + text (a) + " p" + id + " src 0 1");
        theirs.push_back ("rw" + id + " p" + id + " q" + id + " " + std::to_string (ohms));
        theirs.push_back ("lw" + id + " q" + id + " " + text (b) + " " + std::to_string (henries));
        if (farads > 0.0)
            capacitor (a, b, farads);
        return "lw" + id;
    }

    void couple (const std::string& first, const std::string& second, double k, double henries)
    {
        ours.addCoupling (coils[0], coils[1], k * henries);
        theirs.push_back ("k1 " + first + " " + second + " " + std::to_string (k)); // both dots at the EMF's plus
    }
};

struct Options
{
    double pot = 250e3;
    double wiperTop = 0.0; ///< from hot to the wiper; 0: the wiper is at the top
    bool bleedParallel = false, bleedSeries = false;
    bool toneAtZero = false;
};

/** The pots, the tone cap, cable and input; the tip is where it is heard. */
NodeId addControls (Both& both, NodeId hot, const Options& options)
{
    auto tip = hot;
    if (options.wiperTop > 0.0)
    {
        tip = both.node();
        both.resistor (hot, tip, options.wiperTop);
        both.resistor (tip, ground, options.pot - options.wiperTop);
    }
    else
        both.resistor (hot, ground, options.pot);

    if (options.bleedParallel)
    {
        both.capacitor (hot, tip, 1e-9);
        both.resistor (hot, tip, 150e3);
    }
    if (options.bleedSeries)
    {
        const auto middle = both.node();
        both.capacitor (hot, middle, 1.2e-9);
        both.resistor (middle, tip, 130e3);
    }
    if (options.toneAtZero)
        both.capacitor (hot, ground, 22e-9);
    else
    {
        const auto middle = both.node();
        both.resistor (hot, middle, options.pot);
        both.capacitor (middle, ground, 22e-9);
    }
    both.capacitor (tip, ground, 500e-12);
    both.resistor (tip, ground, 1e6);
    return tip;
}

enum class Pickup { single, series, parallel, shorted, open };

NodeId addPickup (Both& both, Pickup pickup)
{
    const auto hot = both.node();
    if (pickup == Pickup::single)
    {
        both.coil (hot, ground, 6e3, 2.5, 110e-12);
        return hot;
    }
    const auto middle = pickup == Pickup::series ? both.node() : ground;
    const auto first = both.coil (hot, middle, 4e3, 2.0, 80e-12);
    const auto loose = pickup == Pickup::series     ? middle
                       : pickup == Pickup::parallel ? hot
                       : pickup == Pickup::open     ? both.node()
                                                    : ground;
    const auto second = both.coil (loose, ground, 4e3, 2.0, pickup == Pickup::shorted ? 0.0 : 80e-12);
    both.couple (first, second, 0.15, 2.0);
    return hot;
}

double ourDecibels (const Network& network, double hz)
{
    std::vector<std::complex<double>> h ((size_t)network.numSources());
    network.responses (hz, h.data());
    return decibels (std::accumulate (h.begin(), h.end(), std::complex<double>()));
}
}

TEST_CASE ("Harnesses put together by hand answer as the simulator and the formulas do")
{
    struct Row
    {
        const char* name;
        Pickup pickup;
        Options options;
        double at100, at1k, at5k, at10k, peakDb, peakHz, peakMargin;
    };
    const auto n = std::nan ("");
    const Row rows[] = {
        { "N1 single coil, 250k pots", Pickup::single, {}, -0.4246, -0.0484, 0.5513, -14.3752, 3.7465, 3708, 0.001 },
        { "N2 humbucker in series, 500k", Pickup::series, { 500e3 }, 5.6962, 6.4054, 1.6562, -13.0001, 11.4004, 3011, 0.001 },
        { "N3 humbucker in parallel, 500k",
          Pickup::parallel,
          { 500e3 },
          -0.0815,
          0.1681,
          9.3072,
          -6.1742,
          11.8428,
          5709.5,
          0.001 },
        { "N4 split, other coil shorted", Pickup::shorted, { 500e3 }, -0.2740, -1.0693, 6.6781, -12.3894, 7.5062, 4618.5, 0.001 },
        { "N5 split, other coil open", Pickup::open, { 500e3 }, -0.1639, 0.2111, 7.9928, -9.6603, 9.0740, 4564.5, 0.001 },
        { "N6 volume wiper at 225k/25k", Pickup::single, { 250e3, 225e3 }, -20.5724, -20.5809, -20.7386, -24.3333, n, 0, 0 },
        { "N7 treble bleed 1 nF par 150k",
          Pickup::single,
          { 250e3, 225e3, true },
          -14.0197,
          -12.6181,
          -10.2854,
          -18.9965,
          n,
          0,
          0 },
        { "N7b 1.2 nF and 130k in series",
          Pickup::single,
          { 250e3, 225e3, false, true },
          -20.3256,
          -15.0224,
          -15.4319,
          -21.2693,
          n,
          0,
          0 },
        { "N8 tone pot at 0 ohm",
          Pickup::single,
          { 250e3, 0.0, false, false, true },
          -0.1034,
          -3.6366,
          -34.8002,
          -46.9394,
          4.4094,
          612,
          0.002 },
    };

    auto worstToTable = 0.0, worstToSimulator = 0.0;
    for (const auto& row : rows)
    {
        Both both;
        const auto tip = addControls (both, addPickup (both, row.pickup), row.options);
        const Network network (both.ours, both.coils, tip);
        CAPTURE (row.name);
        CHECK (network.isModal());

        const std::pair<double, double> table[] = {
            { 100, row.at100 }, { 1e3, row.at1k }, { 5e3, row.at5k }, { 10e3, row.at10k }
        };
        for (const auto& [hz, db] : table)
        {
            CAPTURE (hz);
            CHECK (ourDecibels (network, hz) == Approx (db).margin (0.001).epsilon (0.0));
            worstToTable = std::max (worstToTable, std::abs (ourDecibels (network, hz) - db));
        }
        if (row.peakHz > 0.0)
        {
            const auto peak = findPeak ([&] (double hz) { return std::pow (10.0, ourDecibels (network, hz) / 20.0); },
                                        0.7 * row.peakHz, 1.4 * row.peakHz);
            CHECK (20.0 * std::log10 (peak.gain) == Approx (row.peakDb).margin (row.peakMargin).epsilon (0.0));
            CHECK (peak.hz == Approx (row.peakHz).margin (2.0).epsilon (0.0));
        }

        const auto theirs = Ngspice::acDecades (both.theirs, { std::to_string (tip) }, 60, 10.0, 40000.0);
        CHECK (theirs.hz.size() > 200);
        for (size_t i = 0; i < theirs.hz.size(); ++i)
            worstToSimulator =
                std::max (worstToSimulator, std::abs (ourDecibels (network, theirs.hz[i]) - decibels (theirs.values[0][i])));
    }
    INFO ("worst to the table " << worstToTable << " dB, to ngspice " << worstToSimulator << " dB");
    CHECK (worstToTable < 0.001);
    CHECK (worstToSimulator < 1e-5);
}
}
