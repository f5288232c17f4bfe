#include "response/Responses.h"

#include <catch2/catch.hpp>

namespace workedHarnessTest
{
using namespace coldiron;
using namespace coldiron::support;

// Worked cases, each computed twice outside this project: with a general circuit simulator and by hand formula.
// Both coils of a humbucker are driven with a volt, the idle one too. Load: volume and tone pots equal, tone at full through 22 nF, 500 pF cable, 1 Mohm; ends of the pots not floored.
// Bar: 0.001 dB, the digits given.
namespace
{
struct Case
{
    std::string name;
    Harness harness;
    Setting setting;
    double at100, at1k, at5k, at10k;
    double peakDb, peakHz; // 0: none
};

/** A volume whose wiper leaves 225k above and 25k below at knob 5. */
Harness singleAtNineTenthsDown()
{
    auto harness = oneVolumeOneTone (single ("bridge"), 250e3, "bridge.coil.start", "bridge.coil.finish");
    Part tenth = pot ("volume", 250e3);
    tenth.as<PotPart>()->taper = Taper::fromPoints ({ { 0.0, 0.0 }, { 0.5, 0.1 }, { 1.0, 1.0 } });
    harness.replacePart ("volume", tenth, {});
    return harness;
}

Setting halfDown()
{
    Setting setting;
    setting.knobs["volume"] = 5.0;
    return setting;
}

Part bareSouth()
{
    auto part = humbucker ("bridge");
    part.as<PickupPart>()->pickup.coils[1].farads = 0.0;
    return part;
}

std::vector<Case> cases()
{
    const auto n1 = oneVolumeOneTone (single ("bridge"), 250e3, "bridge.coil.start", "bridge.coil.finish");
    auto bleed = singleAtNineTenthsDown();
    bleed.addPart (capacitor ("bleed-cap", 1e-9));
    bleed.addPart (resistor ("bleed-r", 150e3));
    for (const std::string part : { "bleed-cap", "bleed-r" })
    {
        bleed.solder ({ part + ".1", "volume.3" });
        bleed.solder ({ part + ".2", "volume.2" });
    }
    auto inSeries = singleAtNineTenthsDown();
    inSeries.addPart (capacitor ("bleed-cap", 1.2e-9));
    inSeries.addPart (resistor ("bleed-r", 130e3));
    inSeries.solder ({ "bleed-cap.1", "volume.3" });
    inSeries.solder ({ "bleed-cap.2", "bleed-r.1" });
    inSeries.solder ({ "bleed-r.2", "volume.2" });
    Setting toneDown;
    toneDown.knobs["tone"] = 0.0;

    return { { "N1 single coil, 250k pots", n1, {}, -0.4246, -0.0484, 0.5513, -14.3752, 3.7465, 3708 },
             { "N2 humbucker in series",
               humbuckerWired (Wiring::series, humbucker ("bridge")),
               {},
               5.6962,
               6.4054,
               1.6562,
               -13.0001,
               11.4004,
               3011 },
             { "N3 humbucker in parallel",
               humbuckerWired (Wiring::parallel, humbucker ("bridge")),
               {},
               -0.0815,
               0.1681,
               9.3072,
               -6.1742,
               11.8428,
               5709.5 },
             { "N4 split, other coil shorted",
               humbuckerWired (Wiring::splitShorted, bareSouth()),
               {},
               -0.2740,
               -1.0693,
               6.6781,
               -12.3894,
               7.5062,
               4618.5 },
             { "N5 split, other coil open",
               humbuckerWired (Wiring::splitOpen, humbucker ("bridge")),
               {},
               -0.1639,
               0.2111,
               7.9928,
               -9.6603,
               9.0740,
               4564.5 },
             { "N6 volume wiper 225k/25k", singleAtNineTenthsDown(), halfDown(), -20.5724, -20.5809, -20.7386, -24.3333, 0, 0 },
             { "N7 with 1 nF par 150k", bleed, halfDown(), -14.0197, -12.6181, -10.2854, -18.9965, 0, 0 },
             { "N7b with 1.2 nF and 130k in series", inSeries, halfDown(), -20.3256, -15.0224, -15.4319, -21.2693, 0, 0 },
             { "N8 tone pot at 0 ohm", n1, toneDown, -0.1034, -3.6366, -34.8002, -46.9394, 4.4094, 612 } };
}
}

TEST_CASE ("worked harness cases")
{
    for (const auto& worked : cases())
    {
        INFO (worked.name);
        const GuitarResponse response = voiceOf (worked.harness, worked.setting, workedLoad(), unfloored());
        CHECK (db (response.unisonResponse (100.0)) == Approx (worked.at100).margin (0.001));
        CHECK (db (response.unisonResponse (1000.0)) == Approx (worked.at1k).margin (0.001));
        CHECK (db (response.unisonResponse (5000.0)) == Approx (worked.at5k).margin (0.001));
        CHECK (db (response.unisonResponse (10000.0)) == Approx (worked.at10k).margin (0.001));
        if (worked.peakHz > 0.0)
        {
            const auto [hz, peak] = peakNear (response, worked.peakHz);
            CHECK (peak == Approx (worked.peakDb).margin (worked.name.starts_with ("N8") ? 0.002 : 0.001));
            CHECK (hz == Approx (worked.peakHz).margin (1.0)); // the table gives whole or half hertz
        }
    }
}
}
