#include "analysis/OhmTable.h"
#include "guitar/Bench.h"

#include <catch2/catch.hpp>

#include <cmath>

namespace ohmTableTest
{
using namespace coldiron;
using namespace coldiron::support;

// Meter readings after soldering [calc]: volume full, the tone's capacitor blocks DC: R_pickup parallel R_volume.
// No floor of the pots, cable and input left out. Copper 0.393 %/K at 20 C from IEC 60028 (as quoted).
namespace
{
enum class Coils { series, parallel, split };

Harness wired (Coils coils, double potOhms = 500e3)
{
    auto harness = oneVolumeOneTone (humbucker ("bridge"), potOhms, "bridge.north.start",
                                     coils == Coils::series ? "bridge.south.start" : "bridge.north.finish");
    if (coils == Coils::series)
        harness.solder ({ "bridge.north.finish", "bridge.south.finish" });
    if (coils == Coils::parallel)
        harness.solder ({ "bridge.south.finish", "volume.3" });
    if (coils != Coils::series)
        harness.solder ({ "bridge.south.start", "volume.case" });
    return harness;
}

double alone (const Harness& harness)
{
    const auto table = ohmTable (harness);
    REQUIRE (table.size() == 1);
    return table[0].ohms;
}

Harness known (Harness harness, Provenance knowledge)
{
    Part part = *harness.find ("bridge");
    part.as<PickupPart>()->pickup.known = knowledge;
    harness.replacePart ("bridge", part, {});
    return harness;
}
}

TEST_CASE ("ohms at the jack of 4k coils with a 500k volume")
{
    CHECK (alone (wired (Coils::split)) == Approx (3968.25).epsilon (1e-6));
    CHECK (alone (wired (Coils::series)) == Approx (7874.02).epsilon (1e-6));
    CHECK (alone (wired (Coils::parallel)) == Approx (1992.03).epsilon (1e-6));
    CHECK (alone (oneVolumeOneTone (single ("bridge"), 250e3, "bridge.coil.start", "bridge.coil.finish"))
           == Approx (5859.38).epsilon (1e-6));
}

TEST_CASE ("both pickups in parallel behind two volumes, every position of the switch")
{
    auto harness = fourKnobs();
    for (const auto& [name, ohms] : { std::pair { "neck", 3750.0 }, { "bridge", 4000.0 } })
    {
        Part part = *harness.find (name);
        for (auto& coil : part.as<PickupPart>()->pickup.coils)
            coil.dcrOhms = ohms;
        harness.replacePart (name, part, {});
    }
    const auto table = ohmTable (harness);
    REQUIRE (table.size() == 3);
    CHECK (table[1].levers == std::vector<std::pair<std::string, std::string>> { { "selector", "both" } });
    CHECK (table[1].ohms == Approx (3811.94).margin (0.005)); // 8k and 7.5k with two 500k
    CHECK (table[2].ohms == Approx (7874.02).epsilon (1e-6));
}

TEST_CASE ("copper and tolerance, the worst case to both sides")
{
    // 8000 ohm reads 7842.8 at 15, 8314.4 at 30 C; coils +/-10 % unless measured before, then +/-2 %; pots +/-20 %.
    const double cold = 7842.8 / 8000.0, warm = 8314.4 / 8000.0;
    const auto parallel = [] (double a, double b) { return a * b / (a + b); };
    const auto assumed = ohmTable (wired (Coils::series))[0];
    CHECK (assumed.lowOhms == Approx (parallel (8000.0 * cold * 0.9, 400e3)).epsilon (1e-4));
    CHECK (assumed.highOhms == Approx (parallel (8000.0 * warm * 1.1, 600e3)).epsilon (1e-4));
    const auto measured = ohmTable (known (wired (Coils::series), Provenance::fromOhms))[0];
    CHECK (measured.lowOhms == Approx (parallel (8000.0 * cold * 0.98, 400e3)).epsilon (1e-4));
    CHECK (measured.highOhms == Approx (parallel (8000.0 * warm * 1.02, 600e3)).epsilon (1e-4));

    // Pots +/-20 % alone on 8k/500k: 7843 to 7895.
    CHECK (parallel (8000.0, 400e3) == Approx (7843.0).margin (0.5));
    CHECK (parallel (8000.0, 600e3) == Approx (7895.0).margin (0.5));
}

TEST_CASE ("a volume turned down reads the pot")
{
    // (R_top + R_pickup) parallel R_bottom: at most 127k for 8k/500k, with the wiper at the middle of the track.
    auto harness = wired (Coils::series);
    Part linear = pot ("volume");
    linear.as<PotPart>()->taper = Taper::linear();
    harness.replacePart ("volume", linear, {});
    CHECK (ohmTable (harness)[0].volumeDownOhms == Approx (258e3 * 250e3 / 508e3).epsilon (1e-6));
    CHECK (258e3 * 250e3 / 508e3 == Approx (127e3).margin (500.0));
}

TEST_CASE ("open, short and a buffer are words and no number")
{
    auto cut = wired (Coils::series);
    cut.unsolder ("volume.2", "jack.tip");
    CHECK (ohmTable (cut)[0].kind == OhmReading::Kind::open);

    // A broken pickup behind a volume reads the track and not open: 500k.
    auto broken = wired (Coils::series);
    broken.unsolder ("bridge.north.finish", "bridge.south.finish");
    CHECK (alone (broken) == Approx (500e3).epsilon (1e-4));

    auto shorted = wired (Coils::series);
    shorted.solder ({ "volume.2", "volume.case" });
    CHECK (ohmTable (shorted)[0].kind == OhmReading::Kind::shorted);

    auto active = wired (Coils::series);
    Part buffer;
    buffer.name = "buffer";
    buffer.kind = BufferPart {};
    active.addPart (buffer);
    active.unsolder ("volume.2", "jack.tip");
    active.solder ({ "volume.2", "buffer.in" });
    active.solder ({ "buffer.out", "jack.tip" });
    active.solder ({ "buffer.ground", "ground" });
    CHECK (ohmTable (active)[0].kind == OhmReading::Kind::buffered);
}
}
