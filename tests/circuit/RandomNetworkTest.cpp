#include "Benches.h"
#include "QuadReference.h"

#include <catch2/catch.hpp>

#include <random>

namespace randomNetworkTest
{
using namespace coldiron;
using namespace coldiron::support;

namespace
{
/** A circuit of parts as guitars have them, joined at random. */
struct RandomCircuit
{
    Netlist netlist;
    std::vector<BranchId> coils;

    explicit RandomCircuit (unsigned seed, bool withFollower = false)
    {
        std::mt19937 random (seed);
        const auto nodes = 3 + (int)(random() % 10);
        for (int i = 0; i < nodes; ++i)
            netlist.addNode();
        const auto node = [&] { return (NodeId)(random() % (unsigned)(nodes + 1)); };
        const auto between = [&] (double low, double high)
        { return low * std::pow (high / low, std::uniform_real_distribution<double>() (random)); };

        const auto numCoils = 1 + (int)(random() % 5);
        for (int i = 0; i < numCoils; ++i)
        {
            const auto a = node(), b = node();
            coils.push_back (netlist.addBranch (a, b, between (1e3, 2e4), random() % 6 == 0 ? 0.0 : between (0.1, 10.0)));
            if (random() % 2)
                netlist.addCapacitor (a, b, between (20e-12, 300e-12));
        }
        for (int i = 0; i + 1 < numCoils; i += 2)
            if (random() % 2)
            {
                const auto k = std::uniform_real_distribution<double> (-0.9, 0.9) (random);
                const auto& list = netlist.branches();
                netlist.addCoupling (i, i + 1, k * std::sqrt (list[(size_t)i].henries * list[(size_t)i + 1].henries));
            }
        for (int i = (int)(random() % 12); i > 0; --i)
            netlist.addResistor (node(), node(), random() % 5 == 0 ? 1.0 : between (1e3, 2e6));
        for (int i = (int)(random() % 6); i > 0; --i)
            netlist.addCapacitor (node(), node(), between (50e-12, 100e-9));
        for (int i = (int)(random() % 3); i > 0; --i)
        {
            const auto a = node(), b = node();
            netlist.addBranch (a, b, 0.0, between (0.05, 1.0));
            netlist.addResistor (a, b, between (1e4, 5e5));
        }
        if (withFollower)
        {
            const auto out = netlist.addNode();
            netlist.addFollower (node(), out, between (0.5, 4.0));
            netlist.addResistor (out, 1 + (NodeId)(random() % (unsigned)nodes), 1e3);
        }
    }
};

constexpr double spots[] = { 10.0, 20.0, 82.4, 440.0, 1000.0, 2950.0, 3000.0, 3700.0, 5000.0, 12000.0, 30000.0, 40000.0 };

/** The worst disagreement with solutions in quadruple precision, relative to the output's own largest value. */
struct Disagreement
{
    double network = 0.0, dense = 0.0;
    bool modal = false;

    Disagreement (const Netlist& netlist, const std::vector<BranchId>& sources, NodeId output)
    {
        const Network responses (netlist, sources, output);
        modal = responses.isModal();
        std::vector<std::complex<double>> quick (sources.size());
        auto largest = 1e-3; // what stays 60 dB below a volt everywhere is near silence

        for (const auto hz : { 10.0, 440.0, 3000.0, 5000.0, 40000.0 })
        {
            responses.responses (hz, quick.data());
            const auto right = quadVoltages (netlist, sources, hz);
            for (size_t k = 0; k < sources.size(); ++k)
            {
                const auto exact = right[k][(size_t)output];
                largest = std::max (largest, std::abs (exact));
                network = std::max (network, std::abs (quick[k] - exact));
                dense = std::max (dense, std::abs (nodeVoltage (netlist, sources[k], output, hz) - exact));
            }
        }
        network /= largest;
        dense /= largest;
    }
};
}

TEST_CASE ("Any circuit answers as a solution in quadruple precision does")
{
    auto worst = 0.0;
    int numModal = 0;
    constexpr int total = 300;
    for (unsigned seed = 1; seed <= total; ++seed)
    {
        const RandomCircuit circuit (seed, seed % 4 == 0);
        const Disagreement apart (circuit.netlist, circuit.coils, 1 + (NodeId)(seed % 3));
        CAPTURE (seed, apart.modal);
        CHECK (apart.network < 1e-8);
        CHECK (apart.dense < 1e-7);
        worst = std::max (worst, apart.network);
        numModal += apart.modal;
    }
    CAPTURE (worst, numModal);
    CHECK (worst < 1e-8);
    CHECK (numModal > total * 9 / 10);
    CHECK (numModal < total); // so that the other form was asked too
}

// Passivity, reciprocity and superposition: theorems of linear passive networks.
TEST_CASE ("Without active stages the output impedance never has a negative resistance")
{
    for (unsigned seed = 1; seed <= 300; ++seed)
    {
        const RandomCircuit circuit (seed);
        const Network network (circuit.netlist, {}, 1);
        for (const auto hz : spots)
        {
            const auto impedance = network.outputImpedance (hz);
            CAPTURE (seed, hz, impedance);
            CHECK (impedance.real() >= -1e-9 * std::abs (impedance));
        }
    }
}

TEST_CASE ("Any two coils carry each other's current: Y12 = Y21, and node 1 hears node 2 as 2 hears 1")
{
    int compared = 0;
    for (unsigned seed = 1; seed <= 300; ++seed)
    {
        RandomCircuit circuit (seed);
        auto& netlist = circuit.netlist;
        // Current into a node by way of a voltage behind a megohm at either node.
        const auto one = netlist.addBranch (1, ground, 1e6, 0.0), two = netlist.addBranch (2, ground, 1e6, 0.0);
        const Network atOne (netlist, { two }, 1), atTwo (netlist, { one }, 2);
        for (const auto hz : spots)
        {
            std::complex<double> h12, h21;
            atOne.responses (hz, &h12);
            atTwo.responses (hz, &h21);
            CAPTURE (seed, hz);
            CHECK (std::abs (h12 - h21) <= 1e-9 * std::max (std::abs (h12), 1e-3));
            compared += std::abs (h12) > 1e-3;
        }
        if (circuit.coils.size() > 1)
        {
            const auto a = circuit.coils[0], b = circuit.coils[1];
            const auto y12 = branchCurrent (netlist, a, b, 1000.0), y21 = branchCurrent (netlist, b, a, 1000.0);
            CHECK (std::abs (y12 - y21) <= 1e-10 * std::abs (y12) + 1e-17);
        }
    }
    CHECK (compared > 300); // not all of them were silent
}

TEST_CASE ("Coils together are the sum of each alone, and an active stage's gain multiplies")
{
    for (unsigned seed = 1; seed <= 100; ++seed)
    {
        // One EMF of 1 V and another of 2 V on a common path: the second coil's EMF put in series with the first's.
        Netlist netlist;
        const auto hot = netlist.addNode(), middle = netlist.addNode(), out = netlist.addNode();
        const auto first = netlist.addBranch (hot, middle, 1e3 * seed, 1.0 + 0.01 * seed);
        const auto second = netlist.addBranch (middle, ground, 4e3, 2.0);
        netlist.addCapacitor (hot, ground, 500e-12);
        netlist.addResistor (hot, ground, 300e3);
        netlist.addFollower (hot, out, 2.5);
        const Network network (netlist, { first, second }, out), before (netlist, { first, second }, hot);

        Netlist one;
        const auto top = one.addNode();
        const auto both = one.addBranch (top, ground, 1e3 * seed + 4e3, 3.0 + 0.01 * seed);
        one.addCapacitor (top, ground, 500e-12);
        one.addResistor (top, ground, 300e3);
        const Network joined (one, { both }, top);

        for (const auto hz : spots)
        {
            std::complex<double> h[2], raw[2], whole;
            network.responses (hz, h);
            before.responses (hz, raw);
            joined.responses (hz, &whole);
            // In series each EMF reaches the output alike, so 1 V and 2 V make 3 V of the whole.
            CHECK (std::abs (raw[0] + 2.0 * raw[1] - 3.0 * whole) <= 1e-6 * std::abs (whole)); // the middle leaks 1e-12 S
            CHECK (std::abs (h[0] - 2.5 * raw[0]) <= 1e-12 * std::abs (h[0]));
        }
    }
}

TEST_CASE ("What cannot be solved is refused")
{
    Netlist loop;
    const auto node = loop.addNode();
    const auto a = loop.addBranch (node, ground, 0.0, 0.0);
    loop.addBranch (node, ground, 0.0, 0.0);
    CHECK_THROWS_AS (Network (loop, { a }, node), std::runtime_error);
    CHECK_THROWS_AS (Network (loop, { 7 }, node), std::invalid_argument);
    CHECK_THROWS_AS (Network (loop, { a }, 9), std::invalid_argument);

    Netlist three; // pairs that can be, three that cannot
    const auto top = three.addNode();
    for (int i = 0; i < 3; ++i)
        three.addBranch (top, ground, 1e3, 1.0);
    for (int i = 0; i < 3; ++i)
        three.addCoupling (i, (i + 1) % 3, -0.9);
    CHECK_THROWS_AS (Network (three, { 0 }, top), std::runtime_error);

    Netlist netlist;
    const auto n = netlist.addNode();
    CHECK_THROWS_AS (netlist.addResistor (n, ground, 0.0), std::invalid_argument);
    CHECK_THROWS_AS (netlist.addResistor (n, 5, 1.0), std::invalid_argument);
    CHECK_THROWS_AS (netlist.addResistor (n, ground, std::nan ("")), std::invalid_argument);
    CHECK_THROWS_AS (netlist.addCapacitor (n, ground, -1e-12), std::invalid_argument);
    CHECK_THROWS_AS (netlist.addBranch (n, ground, -1.0, 0.0), std::invalid_argument);
    CHECK_THROWS_AS (netlist.addFollower (n, 3, 1.0), std::invalid_argument);
    const auto one = netlist.addBranch (n, ground, 1.0, 1.0), two = netlist.addBranch (n, ground, 1.0, 4.0);
    CHECK_THROWS_AS (netlist.addCoupling (one, two, 2.1), std::invalid_argument);
    CHECK_THROWS_AS (netlist.addCoupling (one, one, 0.1), std::invalid_argument);
    CHECK_NOTHROW (netlist.addCoupling (one, two, -2.0));
    netlist.addCapacitor (n, ground, 0.0);
    CHECK (netlist.capacitors().empty());
}
}
