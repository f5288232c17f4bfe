#include "response/Figures.h"
#include "response/Responses.h"

#include <catch2/catch.hpp>

namespace figuresTest
{
using namespace coldiron;
using namespace coldiron::support;

namespace
{
/** A coil straight on the jack, all of its load in the cable and the input. */
CircuitConfig straight (double ohms, double henries, double farads, Load load)
{
    Harness harness;
    harness.addPart (single ("bridge", ohms, henries, farads));
    harness.addPart (jack());
    harness.solder ({ "bridge.coil.start", "jack.tip" });
    harness.solder ({ "bridge.coil.finish", "ground" });
    return { harness, {}, load, sixStrings() };
}

CircuitConfig wired (Wiring wiring) { return { humbuckerWired (wiring, humbucker ("bridge")), {}, {}, sixStrings() }; }
}

TEST_CASE ("resonance of a loaded coil in closed form")
{
    // Second-order low-pass, closed form [calc]; e with R and L, shunted by C and Rp. Peak re DC.
    struct Row
    {
        double henries, ohms, ownFarads, cableFarads, loadOhms, peakHz, peakDb;
    };
    const double three = 1.0 / (1.0 / 500e3 + 1.0 / 500e3 + 1.0 / 1e6), low = 1.0 / (1.0 / 250e3 + 1.0 / 250e3 + 1.0 / 1e6);
    for (const auto& row :
         { Row { 2.5, 6e3, 110e-12, 500e-12, 1e6, 4062.394, 16.0940 },
           Row { 2.5, 6e3, 110e-12, 500e-12, three, 3960.575, 7.9766 }, Row { 2.5, 6e3, 110e-12, 500e-12, low, 3712.154, 4.1971 },
           Row { 4.6, 8e3, 40e-12, 500e-12, three, 3012.182, 5.7178 },
           Row { 8.0, 14e3, 100e-12, 500e-12, three, 2087.782, 3.9351 } })
    {
        const auto side = straight (row.ohms, row.henries, row.ownFarads, { row.cableFarads, row.loadOhms, 0.0 });
        const auto figures = computeFigures (side, side);
        const auto& resonance = figures.resonance;
        REQUIRE (resonance.peakHz.has_value());
        REQUIRE (resonance.peakDb.has_value());
        CHECK (*resonance.peakHz == Approx (row.peakHz).epsilon (1e-5));
        CHECK (*resonance.peakDb == Approx (row.peakDb).margin (0.03)); // the low end is an octave above 80 Hz, not DC
        REQUIRE (resonance.cornerHz.has_value());
        const double dc = 20.0 * std::log10 (row.loadOhms / (row.loadOhms + row.ohms));
        CHECK (db (side.response().unisonResponse (*resonance.cornerHz)) == Approx (dc - 3.0103).margin (0.03));
        CHECK (*resonance.cornerHz > *resonance.peakHz);
        // The comb of the coil's place is divided out: one coil gives the circuit's own response.
        for (const double hz : { 100.0, 700.0, 2000.0, 9000.0 })
            CHECK (stringResponse (side.response(), hz)
                   == Approx (std::abs (side.response().unisonResponse (hz))).epsilon (1e-9));
    }
}

TEST_CASE ("coils in unison give the circuit's response, whatever their places")
{
    // Two equal coils in series: 2 e behind 2 R, 2 L (1 + k), C/2: both heard alike, so what strings give is their sum.
    for (const auto wiring : { Wiring::series, Wiring::parallel })
    {
        const GuitarResponse response = wired (wiring).response();
        for (const double hz : { 100.0, 700.0, 3000.0, 8000.0 })
            CHECK (stringResponse (response, hz) == Approx (std::abs (response.unisonResponse (hz))).epsilon (1e-6));
    }
}

TEST_CASE ("out of phase: no tall peak over a low end that has cancelled")
{
    // Common practice of the trade, no source: out of phase is thin and hollow, its resonance where the pickups have it.
    CircuitConfig both { apart(), {}, {}, sixStrings() }, against { reversedNeck(), {}, {}, sixStrings() };
    both.setting.levers["selector"] = against.setting.levers["selector"] = "both";
    const auto inPhase = findResonance (both.response()), hollow = findResonance (against.response());
    REQUIRE (inPhase.peakHz.has_value());
    REQUIRE (hollow.peakHz.has_value());
    CHECK (*hollow.peakHz == Approx (*inPhase.peakHz).epsilon (0.1));
    CHECK (hollow.peakDb.value_or (0.0) < 15.0);
    if (hollow.cornerHz)
        CHECK (*hollow.cornerHz > *hollow.peakHz);
    CHECK (std::abs (against.response().unisonResponse (300.0))
           < 1e-3 * std::abs (both.response().unisonResponse (300.0))); // driven alike they would leave nothing
    CHECK (stringResponse (against.response(), 300.0) > 0.05 * stringResponse (both.response(), 300.0));
    const auto left = [&] (double hz) { return stringResponse (against.response(), hz) / stringResponse (both.response(), hz); };
    CHECK (left (60.0) < 0.6 * left (700.0)); // and the bass does go

    // Through 2 pF into 1M without a cable the level climbs by 6 dB in every octave up to 80 kHz [calc]: there is no passband.
    auto thin = straight (6e3, 2.5, 1e-12, { 0.0, 1e6, 0.0 });
    thin.harness.addPart ({ "thin", CapacitorPart { 2e-12, 0.1 }, {}, {} });
    thin.harness.lift ("bridge.coil.start");
    thin.harness.solder ({ "bridge.coil.start", "thin.1" });
    thin.harness.solder ({ "thin.2", "jack.tip" });
    REQUIRE_FALSE (thin.response().isSilent());
    const auto climbing = findResonance (thin.response());
    CHECK_FALSE (climbing.passbandDb.has_value());
    CHECK_FALSE (climbing.peakDb.has_value());
    CHECK_FALSE (climbing.cornerHz.has_value());
}

TEST_CASE ("output impedance leaves cable and input out; a metre of cable costs treble")
{
    const auto side = straight (6e3, 2.5, 0.0, {});
    const auto figures = computeFigures (side, side);
    CHECK (figures.outputOhms == Approx (std::hypot (6e3, 2.0 * M_PI * 1000.0 * 2.5)).epsilon (1e-6));
    CHECK (figures.dbPerMetre < 0.0);
    CircuitConfig longer = side;
    longer.load.cableFarads += 100e-12;
    CHECK (figures.dbPerMetre
           == Approx (db (longer.response().unisonResponse (5000.0) / side.response().unisonResponse (5000.0))).margin (1e-9));
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
        const GuitarResponse before = recorded.response(), after = option.response();
        const double gain = 20.0 * std::log10 (TransferFunction (before, after).gain (hz));
        CHECK (computeFigures (recorded, option, takeSpectrum ({ tone }, 48000.0)).levelDb
               == Approx (gain).margin (0.05)); // a window's skirts reach the neighbours
    }
    CHECK (takeSpectrum ({ std::vector<float> (1000, 0.0f) }, 48000.0).isEmpty());
    CHECK (takeSpectrum ({ {} }, 48000.0).isEmpty());
}

TEST_CASE ("level and clarity at each step of the volume heard")
{
    const auto side = wired (Wiring::series);
    const auto figures = computeFigures (side, side);
    REQUIRE (figures.volumes.size() == 1);
    REQUIRE (figures.volumes[0].heard);
    REQUIRE (figures.volumes[0].steps.size() == 5);
    CHECK_FALSE (figures.volumes[0].mutesOthers.has_value());
    for (const auto& step : figures.volumes[0].steps)
    {
        CircuitConfig turned = side;
        turned.setting.knobs["volume"] = step.knob;
        const Clarity clarity (side, {});
        REQUIRE (step.clarityDb.has_value());
        CHECK (*step.clarityDb == Approx (*clarity.db (turned) - *clarity.db (side)).margin (1e-9));
        CHECK (step.levelDb
               == Approx (db (turned.response().unisonResponse (500.0) / side.response().unisonResponse (500.0))).margin (1e-6));
        CHECK (
            (step.knob == 10.0 || *step.clarityDb < -0.5)); // turned down it goes dull: common practice of the trade, no source
    }
}

TEST_CASE ("clarity is the power of the take in its two bands")
{
    // Two tones, one in each band: the clarity is the difference of their gains, and of a flat circuit none at all.
    const auto recorded = wired (Wiring::series), option = wired (Wiring::parallel);
    std::vector<float> tones;
    for (int i = 0; i < 96000; ++i)
        tones.push_back (static_cast<float> (std::sin (2.0 * M_PI * 403.175 * i / 48000.0)
                                             + 0.1 * std::sin (2.0 * M_PI * 3044.38 * i / 48000.0)));
    const auto take = takeSpectrum ({ tones }, 48000.0);
    const Clarity clarity (recorded, take);
    CHECK (*clarity.db (recorded) == Approx (-20.0).margin (0.1));
    const GuitarResponse before = recorded.response(), after = option.response();
    const TransferFunction transfer (before, after);
    CHECK (*clarity.db (option) + 20.0
           == Approx (20.0 * std::log10 (transfer.gain (3044.38) / transfer.gain (403.175))).margin (0.2));
    CHECK (*computeFigures (recorded, option, take).clarityDb
           == Approx (*clarity.db (option) - *clarity.db (recorded)).margin (1e-9));
    auto shorted = option;
    shorted.setting.knobs["volume"] = 0.0;
    CHECK (computeFigures (recorded, recorded, take).clarityDb == Approx (0.0).margin (1e-12));
}

TEST_CASE ("a silent option says so and keeps the jack's figures")
{
    auto open = wired (Wiring::series);
    open.harness.unsolder ("bridge.north.finish", "bridge.south.finish");
    const auto figures = computeFigures (wired (Wiring::series), open);
    CHECK (figures.silent);
    CHECK (figures.levelDb == -300.0);
    CHECK (figures.outputOhms > 1e3);
}
}
