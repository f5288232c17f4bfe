// Parts that few catalogue circuits lean on, each against a closed form [calc] by both routes: the product's circuit and
// the independent netlist in ngspice. Load everywhere: 500 pF of cable, 1M and 20 pF.

#include "circuit/Network.h"
#include "guitar/Bench.h"
#include "guitar/GuitarCircuit.h"
#include "support/Ngspice.h"
#include "support/OracleNetlist.h"

#include <catch2/catch.hpp>

#include <cmath>
#include <functional>
#include <numbers>

namespace oracleSpotTest
{
using namespace coldiron;
using namespace coldiron::support;

namespace
{
using Complex = std::complex<double>;
using Formula = std::function<Complex (Complex s)>;

Complex beside (Complex a, Complex b) { return a * b / (a + b); }

/** The input as the tip sees it. */
Complex loadOf (Complex s) { return 1.0 / (1.0 / 1e6 + s * 520e-12); }

/** support::single: 6k and 2.5 H, 110 pF across. Its EMF through R and L onto whatever stands across it. */
Complex ontoCoil (Complex s, Complex across)
{
    const Complex total = beside (across, 1.0 / (s * 110e-12));
    return total / (total + 6e3 + s * 2.5);
}

void check (const Harness& harness, const Setting& setting, const Load& load, const Formula& formula)
{
    const std::vector<double> hz { 20.0, 150.0, 1e3, 3.3e3, 9e3, 30e3 };
    const auto built = buildCircuit (harness, setting, load);
    std::vector<BranchId> branches;
    for (const auto& coil : built.coils)
        branches.push_back (coil.branch);
    const Network network (built.netlist, branches, built.tip);
    const auto theirs = Ngspice::ac (OracleNetlist (harness, setting, load).lines, { "tip" }, hz);
    std::vector<Complex> each (branches.size());
    for (size_t i = 0; i < hz.size(); ++i)
    {
        network.responses (hz[i], each.data());
        Complex ours;
        for (size_t k = 0; k < each.size(); ++k)
            ours += each[k] * built.coils[k].stringDrive;
        const auto right = formula (Complex (0.0, 2.0 * std::numbers::pi * hz[i]));
        CAPTURE (hz[i], ours, theirs.values[0][i], right);
        CHECK (std::abs (ours - right) < 2e-6 * std::abs (right)); // 1e-12 S of leakage on 500k
        CHECK (std::abs (theirs.values[0][i] - right) < 2e-6 * std::abs (right));
    }
}

Harness coilAnd (std::vector<Part> parts, bool stereo = false)
{
    Harness harness;
    harness.addPart (single ("pickup"));
    Part socket = jack();
    socket.as<JackPart>()->stereo = stereo;
    harness.addPart (socket);
    for (auto& part : parts)
        harness.addPart (std::move (part));
    harness.solder ({ "pickup.coil.finish", "ground" });
    return harness;
}

template <typename Kind>
Part part (const std::string& name, Kind kind)
{
    Part result;
    result.name = name;
    result.kind = std::move (kind);
    return result;
}
}

TEST_CASE ("A buffer takes the load off the coil")
{
    auto harness = coilAnd ({ part ("buffer", BufferPart { 2.0, 470e3, 1.5e3 }) });
    harness.solder ({ "pickup.coil.start", "buffer.in" });
    harness.solder ({ "buffer.out", "jack.tip" });
    harness.solder ({ "buffer.ground", "ground" });
    check (harness, {}, {}, [] (Complex s) { return 2.0 * ontoCoil (s, 470e3) * loadOf (s) / (loadOf (s) + 1.5e3); });
}

TEST_CASE ("An inductor with its own resistance across the coil")
{
    auto harness = coilAnd ({ part ("choke", InductorPart { 1.5, 90.0 }), capacitor ("cap", 10e-9) });
    harness.solder ({ "pickup.coil.start", "jack.tip" });
    harness.solder ({ "choke.1", "jack.tip" });
    harness.solder ({ "choke.2", "cap.1" });
    harness.solder ({ "cap.2", "ground" });
    check (harness, {}, {}, [] (Complex s) { return ontoCoil (s, beside (loadOf (s), 90.0 + s * 1.5 + 1.0 / (s * 10e-9))); });
}

TEST_CASE ("A no-load tone leaves the circuit at 10 and is a pot below")
{
    auto tone = pot ("tone", 250e3);
    tone.as<PotPart>()->noLoad = true;
    tone.as<PotPart>()->taper = Taper::linear();
    auto harness = coilAnd ({ tone, capacitor ("cap", 22e-9) });
    harness.solder ({ "pickup.coil.start", "jack.tip", "tone.1" });
    harness.solder ({ "tone.2", "cap.1" });
    harness.solder ({ "cap.2", "ground" });
    Setting setting;
    setting.knobs["tone"] = 10.0;
    check (harness, setting, {}, [] (Complex s) { return ontoCoil (s, loadOf (s)); });
    setting.knobs["tone"] = 6.0; // 150k in line with 22 nF; lug 3 hangs
    check (harness, setting, {}, [] (Complex s) { return ontoCoil (s, beside (loadOf (s), 150e3 + 1.0 / (s * 22e-9))); });
}

TEST_CASE ("A pot turned over meets its taper from the other end")
{
    // 15 % law at 5, turned over: 1 - 0.15 = 0.85 of the track between lug 1 and the wiper.
    auto volume = pot ("volume", 500e3);
    volume.as<PotPart>()->turnedOver = true;
    auto harness = coilAnd ({ volume });
    harness.solder ({ "pickup.coil.start", "volume.3" });
    harness.solder ({ "volume.2", "jack.tip" });
    harness.solder ({ "volume.1", "ground" });
    Setting setting;
    setting.knobs["volume"] = 5.0;
    check (harness, setting, {},
           [] (Complex s)
           {
               const Complex below = beside (425e3, loadOf (s));
               return ontoCoil (s, 75e3 + below) * below / (75e3 + below);
           });
    // At 2.5: 1 - r(0.75) = 1 - 0.401443869 (the exponential law's table).
    setting.knobs["volume"] = 2.5;
    check (harness, setting, {},
           [] (Complex s)
           {
               const double share = 1.0 - 0.401443869;
               const Complex below = beside (500e3 * share, loadOf (s)), above = 500e3 * (1.0 - share);
               return ontoCoil (s, above + below) * below / (above + below);
           });
}

TEST_CASE ("A dummy coil hears no string and stands in the way")
{
    auto dummy = single ("dummy", 5e3, 2.0, 0.0);
    dummy.as<PickupPart>()->pickup.coils[0].magnet = Magnet::none;
    auto harness = coilAnd ({ dummy });
    harness.solder ({ "pickup.coil.start", "dummy.coil.start" });
    harness.solder ({ "dummy.coil.finish", "jack.tip" });
    check (harness, {}, {},
           [] (Complex s)
           {
               const Complex through = 5e3 + s * 2.0 + loadOf (s);
               return ontoCoil (s, through) * loadOf (s) / through;
           });
    CHECK (buildCircuit (harness, {}, {}).coils[1].stringDrive == 0.0);
    CHECK (buildCircuit (harness, {}, {}).coils[1].humDrive == 1.0);
}

TEST_CASE ("A stereo jack's ring is grounded by a mono plug and heard through a stereo one")
{
    auto harness = coilAnd ({ resistor ("link", 100e3) }, true);
    harness.solder ({ "pickup.coil.start", "jack.tip" });
    harness.solder ({ "link.1", "jack.tip" });
    harness.solder ({ "link.2", "jack.ring" });
    const auto linked = [] (Complex s) { return 100e3 + loadOf (s); };
    check (harness, {}, { .plug = Plug::mono }, [] (Complex s) { return ontoCoil (s, beside (loadOf (s), 100e3)); });
    check (harness, {}, { .plug = Plug::stereoTip }, [&] (Complex s) { return ontoCoil (s, beside (loadOf (s), linked (s))); });
    check (harness, {}, { .plug = Plug::stereoRing },
           [&] (Complex s) { return ontoCoil (s, beside (loadOf (s), linked (s))) * loadOf (s) / linked (s); });
}
}
