#include "audition/Figures.h"
#include "audition/Voices.h"

#include <catch2/catch.hpp>

using namespace coldiron;
using namespace coldiron::bench;

namespace
{
/** A coil straight on the jack, all of its load in the cable and the input. */
Side straight (double ohms, double henries, double farads, Load load)
{
    Harness harness;
    harness.addPart (single ("bridge", ohms, henries, farads));
    harness.addPart (jack());
    harness.solder ({ "bridge.coil.start", "jack.tip" });
    harness.solder ({ "bridge.coil.finish", "ground" });
    return { harness, {}, load, sixStrings() };
}

Side wired (Wiring wiring) { return { humbuckerWired (wiring, humbucker ("bridge")), {}, {}, sixStrings() }; }
}

TEST_CASE ("resonance of a loaded coil in closed form")
{
    // Second-order low-pass, closed form [calc]; e with R and L, shunted by C and Rp. Peak re DC.
    struct Row { double henries, ohms, ownFarads, cableFarads, loadOhms, peakHz, peakDb; };
    const double three = 1.0 / (1.0 / 500e3 + 1.0 / 500e3 + 1.0 / 1e6), low = 1.0 / (1.0 / 250e3 + 1.0 / 250e3 + 1.0 / 1e6);
    for (const auto& row : { Row { 2.5, 6e3, 110e-12, 500e-12, 1e6, 4062.394, 16.0940 },
                             Row { 2.5, 6e3, 110e-12, 500e-12, three, 3960.575, 7.9766 },
                             Row { 2.5, 6e3, 110e-12, 500e-12, low, 3712.154, 4.1971 },
                             Row { 4.6, 8e3, 40e-12, 500e-12, three, 3012.182, 5.7178 },
                             Row { 8.0, 14e3, 100e-12, 500e-12, three, 2087.782, 3.9351 } })
    {
        const auto side = straight (row.ohms, row.henries, row.ownFarads, { row.cableFarads, row.loadOhms, 0.0 });
        const auto figures = computeFigures (side, side);
        REQUIRE (figures.peakHz.has_value());
        CHECK (*figures.peakHz == Approx (row.peakHz).epsilon (1e-5));
        const double dcTo100 = db (side.voice().plain (100.0)) - 20.0 * std::log10 (row.loadOhms / (row.loadOhms + row.ohms));
        CHECK (figures.peakDb + dcTo100 == Approx (row.peakDb).margin (1e-4));
        REQUIRE (figures.cornerHz.has_value());
        CHECK (db (side.voice().plain (*figures.cornerHz)) == Approx (db (side.voice().plain (100.0)) - 3.0103).margin (1e-6));
        CHECK (*figures.cornerHz > *figures.peakHz);
    }
}

TEST_CASE ("output impedance leaves cable and input out; a metre of cable costs treble")
{
    const auto side = straight (6e3, 2.5, 0.0, {});
    const auto figures = computeFigures (side, side);
    CHECK (figures.outputOhms == Approx (std::hypot (6e3, 2.0 * M_PI * 1000.0 * 2.5)).epsilon (1e-6));
    CHECK (figures.dbPerMetre < 0.0);
    Side longer = side;
    longer.load.cableFarads += 100e-12;
    CHECK (figures.dbPerMetre == Approx (db (longer.voice().plain (5000.0) / side.voice().plain (5000.0))).margin (1e-9));
}

TEST_CASE ("level is that of the take's own spectrum")
{
    const auto recorded = wired (Wiring::series), option = wired (Wiring::parallel);
    CHECK (computeFigures (recorded, recorded).levelDb == Approx (0.0).margin (1e-9));
    // A take of one tone: the level is the gain there.
    for (const int band : { 80, 135, 191 }) // 202, 987 and 4973 Hz: middles of the spectrum's bands
    {
        const double hz = 20.0 * std::exp2 (band / 24.0);
        std::vector<float> tone;
        for (int i = 0; i < 96000; ++i)
            tone.push_back (static_cast<float> (std::sin (2.0 * M_PI * hz * i / 48000.0)));
        const Voice before = recorded.voice(), after = option.voice();
        const double gain = 20.0 * std::log10 (Change (before, after).gain (hz));
        CHECK (computeFigures (recorded, option, takeSpectrum ({ tone }, 48000.0)).levelDb == Approx (gain).margin (0.05)); // a window's skirts reach the neighbours
    }
    CHECK (takeSpectrum ({ std::vector<float> (1000, 0.0f) }, 48000.0).isEmpty());
    CHECK (takeSpectrum ({ {} }, 48000.0).isEmpty());
}

TEST_CASE ("treble kept at each step of the volume heard")
{
    const auto side = wired (Wiring::series);
    const auto figures = computeFigures (side, side);
    REQUIRE (figures.volumes.size() == 1);
    REQUIRE (figures.volumes[0].heard);
    REQUIRE (figures.volumes[0].steps.size() == 5);
    CHECK_FALSE (figures.volumes[0].mutesOthers.has_value());
    for (const auto& step : figures.volumes[0].steps)
    {
        Side turned = side;
        turned.setting.knobs["volume"] = step.knob;
        const Voice voice = turned.voice();
        CHECK (step.trebleDb == Approx (db (voice.plain (5000.0) / voice.plain (500.0))).margin (1e-9));
    }
}

TEST_CASE ("a silent option says so and keeps the jack's figures")
{
    auto open = wired (Wiring::series);
    open.harness.unsolder ("bridge.north.finish", "bridge.south.finish");
    const auto figures = computeFigures (wired (Wiring::series), open);
    CHECK (figures.silent);
    CHECK (figures.levelDb == -300.0);
    CHECK (figures.outputOhms > 1e3);
    CHECK (levelWords (-300.0) == "silent");
    CHECK (levelWords (0.2) == "as loud");
    CHECK (levelWords (-4.0) == "clearly softer, turn the amplifier up a little");
}
