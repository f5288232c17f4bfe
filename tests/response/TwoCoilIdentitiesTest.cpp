#include "response/Responses.h"

#include "response/SourceResponses.h"

#include <catch2/catch.hpp>

#include <iostream>

namespace twoCoilIdentitiesTest
{
using namespace coldiron;
using namespace coldiron::support;

// Two equal coils, exact identities [calc]: Z_parallel = Z_series / 4 at every frequency with losses, winding
// capacitance and coupling; EMF 2e, e, e; with cable capacitance alone the parallel resonance is twice the series one.
namespace
{
Part lossy (double coupling)
{
    auto part = humbucker ("bridge", coupling);
    for (auto& coil : part.as<PickupPart>()->pickup.coils)
        coil.losses = { { 0.5, 60e3 } };
    return part;
}

/** The two coils straight on the jack: no pots. */
Harness bare (Wiring wiring, Part pickup)
{
    Harness harness;
    harness.addPart (std::move (pickup));
    harness.addPart (jack());
    harness.solder ({ "bridge.north.start", "jack.tip" });
    if (wiring == Wiring::series)
    {
        harness.solder ({ "bridge.north.finish", "bridge.south.finish" });
        harness.solder ({ "bridge.south.start", "ground" });
    }
    else
    {
        harness.solder ({ "bridge.north.finish", "ground" });
        harness.solder ({ "bridge.south.start", "ground" });
        harness.solder ({ "bridge.south.finish", "jack.tip" });
    }
    return harness;
}

BuildOptions openJack()
{
    BuildOptions options;
    options.withLoad = false;
    return options;
}
}

TEST_CASE ("series to parallel is four to one in impedance at every frequency")
{
    for (const double k : { 0.0, 0.15, 0.3 })
    {
        const GuitarResponse series = voiceOf (bare (Wiring::series, lossy (k)), {}, {}, openJack());
        const GuitarResponse parallel = voiceOf (bare (Wiring::parallel, lossy (k)), {}, {}, openJack());
        for (double hz = 10.0; hz < 20000.0; hz *= 1.7)
        {
            const auto ratio = series.outputImpedance (hz) / parallel.outputImpedance (hz);
            INFO ("k " << k << ", " << hz << " Hz");
            CHECK (std::abs (ratio - 4.0) < 1e-4); // the solver's 1e-12 S at every node against some megohms at resonance
        }
    }
}

TEST_CASE ("open-circuit EMF: twice in series, once in parallel")
{
    const GuitarResponse series = voiceOf (bare (Wiring::series, lossy (0.15)), {}, {}, openJack());
    const GuitarResponse parallel = voiceOf (bare (Wiring::parallel, lossy (0.15)), {}, {}, openJack());
    CHECK (db (series.unisonResponse (20.0)) == Approx (6.0206).margin (1e-3));
    CHECK (db (parallel.unisonResponse (20.0)) == Approx (0.0).margin (1e-3));
}

TEST_CASE ("with cable capacitance alone parallel resonates at twice the series frequency")
{
    auto coils = humbucker ("bridge", 0.15);
    for (auto& coil : coils.as<PickupPart>()->pickup.coils)
    {
        coil.farads = 0.0;
        coil.dcrOhms = 1.0; // resistance shifts the top of a peak, not the resonance
    }
    const Load cable { 500e-12, 1e9, 0.0 };
    const double series = peakNear (voiceOf (bare (Wiring::series, coils), {}, cable), 3318.0).first;
    const double parallel = peakNear (voiceOf (bare (Wiring::parallel, coils), {}, cable), 6636.0).first;
    // 1 / (2 pi sqrt (2 L (1 + k) C)) with L = 2 H, k = 0.15, C = 500 pF
    CHECK (series == Approx (1.0 / (2.0 * M_PI * std::sqrt (2.0 * 2.0 * 1.15 * 500e-12))).epsilon (1e-5));
    CHECK (parallel / series == Approx (2.0).epsilon (1e-5));
}

TEST_CASE ("what the trade says of series, parallel and split, as numbers")
{
    // Common practice of the trade, no source: "back to series the level jumps about as leaving a split does";
    // "parallel halves the impedance" (circuit theory: a quarter of series, half of one coil only without coupling).
    const auto at = [] (Wiring wiring) { return voiceOf (humbuckerWired (wiring, humbucker ("bridge"))); };
    const GuitarResponse series = at (Wiring::series), parallel = at (Wiring::parallel), split = at (Wiring::splitShorted);
    const double fromParallel = db (series.unisonResponse (500.0)) - db (parallel.unisonResponse (500.0));
    const double fromSplit = db (series.unisonResponse (500.0)) - db (sourceResponses (split, 500.0)[0]);
    std::cout << "Back to series at 500 Hz: from parallel " << fromParallel << " dB, from a split " << fromSplit << " dB\n";
    CHECK (fromParallel == Approx (fromSplit).margin (1.5));
    CHECK (fromParallel > 5.0);

    const GuitarResponse bareSeries = voiceOf (bare (Wiring::series, humbucker ("bridge", 0.15)), {}, {}, openJack());
    const GuitarResponse bareParallel = voiceOf (bare (Wiring::parallel, humbucker ("bridge", 0.15)), {}, {}, openJack());
    const double share = std::abs (bareParallel.outputImpedance (1000.0)) / std::abs (bareSeries.outputImpedance (1000.0));
    std::cout << "Impedance of parallel at 1 kHz is " << share << " of series\n";
    CHECK (share == Approx (0.25).epsilon (1e-5));
}
}
