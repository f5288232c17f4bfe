#include "response/Hum.h"
#include "engine/SwitchEngine.h"
#include "metering/WholeNoise.h"
#include "response/Figures.h"
#include "response/Responses.h"

#include <Eigen/Core>
#include <catch2/catch.hpp>

#include <iostream>

namespace humTest
{
using namespace coldiron;
using namespace coldiron::support;

namespace
{
/** Series humbucker whose coils differ in turns by a share. */
Part mismatched (double share)
{
    auto part = humbucker ("bridge");
    part.as<PickupPart>()->pickup.coils[1].turns *= 1.0 + share;
    return part;
}

double rms (const std::vector<float>& samples)
{
    double sum = 0.0;
    for (const double s : samples)
        sum += s * s;
    return std::sqrt (sum / static_cast<double> (samples.size()));
}
}

TEST_CASE ("induction counts each harmonic by its number")
{
    // A field with 5 % 3rd, 6 % 5th, 5 % 7th (EN 50160's limits, as quoted in meter manuals) induces 15, 30, 35 %.
    const auto spectrum = humSpectrum ({});
    REQUIRE (spectrum[0].number == 1);
    for (const auto& [number, share] : { std::pair { 3, 0.15 }, { 5, 0.30 }, { 7, 0.35 } })
        for (const auto& harmonic : spectrum)
            if (harmonic.number == number)
                CHECK (harmonic.share / spectrum[0].share == Approx (share).epsilon (1e-12));
    double power = 0.0;
    for (const auto& harmonic : spectrum)
        power += harmonic.share * harmonic.share;
    CHECK (power == Approx (1.0).epsilon (1e-12));
}

TEST_CASE ("turns that differ leave their share of one coil's hum")
{
    // 20 log10 (delta): 1 % -40.00, 2 % -33.98, 5 % -26.02 dB of one coil's hum [calc].
    for (const auto& [share, expected] : { std::pair { 0.01, -40.00 }, { 0.02, -33.98 }, { 0.05, -26.02 } })
    {
        const GuitarResponse series = voiceOf (humbuckerWired (Wiring::series, mismatched (share)));
        const GuitarResponse oneCoil = voiceOf (humbuckerWired (Wiring::series, mismatched (0.0)));
        Eigen::VectorXcd alone (2);
        oneCoil.humResponses (100.0, alone.data());
        CHECK (db (series.hum (100.0) / alone[0]) == Approx (expected).margin (0.05));
        // and the assumed mismatch of equal coils is the same thing
        CHECK (20.0 * std::log10 (humRms (oneCoil, {}, share)) == Approx (20.0 * std::log10 (humRms (series, {}))).margin (0.1));
    }
}

TEST_CASE ("equal turns cancel in series and parallel; unequal impedances leave hum in parallel; a split hums")
{
    const auto level = [] (Wiring wiring, Part pickup)
    { return db (voiceOf (humbuckerWired (wiring, std::move (pickup)), {}, workedLoad()).hum (100.0)); };
    CHECK (level (Wiring::series, humbucker ("bridge")) < -100.0);
    CHECK (level (Wiring::parallel, humbucker ("bridge")) < -100.0);
    CHECK (level (Wiring::splitShorted, humbucker ("bridge")) > -3.0);

    // 4.1k with 6.8k coils in parallel leave -12.0 dB at 100 Hz [calc]: their inductances are not given.
    // In the ratio of the ohms (6.8 - 4.1)/(6.8 + 4.1) is -12.12 dB, and the pots take another 0.1.
    auto unequal = humbucker ("bridge", 0.0);
    auto& coils = unequal.as<PickupPart>()->pickup.coils;
    coils[0].dcrOhms = 4.1e3;
    coils[1].dcrOhms = 6.8e3;
    coils[1].henries = coils[0].henries * 6.8 / 4.1;
    CHECK (level (Wiring::parallel, unequal) == Approx (-12.0).margin (0.25));
    CHECK (level (Wiring::series, unequal) < -60.0);
}

TEST_CASE ("hum rendered is the hum computed")
{
    const double rate = 48000.0;
    const size_t frames = 20 * 48000;
    const double emf = 0.1;
    const GuitarResponse split = voiceOf (humbuckerWired (Wiring::splitShorted, humbucker ("bridge")));
    const auto hum = wholeHum (split, {}, emf, rate, frames);
    CHECK (20.0 * std::log10 (rms (hum)) == Approx (20.0 * std::log10 (emf * humRms (split, {}))).margin (0.02));
    CHECK (hum == wholeHum (split, {}, emf, rate, frames)); // the same on every run
    for (const double share : { 0.01, 0.02, 0.05 })
    {
        const GuitarResponse series = voiceOf (humbuckerWired (Wiring::series, mismatched (share)));
        const auto left = wholeHum (series, {}, emf, rate, frames);
        std::cout << "Rendered hum of a series humbucker, " << 100.0 * share
                  << " % of turns apart: " << 20.0 * std::log10 (rms (left) / emf) << " dB of one coil's EMF\n";
        CHECK (rms (left) == Approx (emf * humRms (series, {})).epsilon (0.003));
    }
    CHECK (rms (wholeHum (split, { 50.0, 0.0, 0.0 }, emf, rate, 4800)) == 0.0); // coils edge-on to the field
    CHECK (humEmfFor (-20.0, -6.0) == Approx (std::pow (10.0, -29.0103 / 20.0)).epsilon (1e-6));
}

TEST_CASE ("equal coils are quiet and not dead; unequal ones hum as they are")
{
    // 20 log10 (0.02) = -33.98 dB of one coil [calc]; 2 % between coils meant to be equal: common practice of the trade, no source.
    const GuitarResponse series = voiceOf (humbuckerWired (Wiring::series, humbucker ("bridge")));
    Eigen::VectorXcd alone (2);
    series.humResponses (100.0, alone.data());
    CHECK (db (heardHum (series, 100.0) / alone[0]) == Approx (-33.98).margin (0.05));
    CHECK (db (heardHum (series, 100.0, 1.0, 0.0) / alone[0]) < -100.0);
    CHECK (heardHum (series, 100.0, 0.0) == std::complex<double> (0.0));

    // What is rendered and what plays live has it too.
    const double heard = 20.0 * std::log10 (rms (support::wholeHum (series, {}, 1.0, 48000.0, 48000)));
    CHECK (heard == Approx (-34.0).margin (1.0));
    const auto cycle = HumCycle::of (series, {}, 1.0);
    CHECK (20.0 * std::log10 (rms ({ cycle.samples.begin(), cycle.samples.end() - 1 })) == Approx (heard).margin (0.1));

    const GuitarResponse measured = voiceOf (humbuckerWired (Wiring::series, mismatched (0.01)));
    measured.humResponses (100.0, alone.data());
    CHECK (db (heardHum (measured, 100.0) / alone[0]) == Approx (-40.0).margin (0.05)); // the 1 % given, no 2 % on top
}

TEST_CASE ("hum in steps that a client hears")
{
    CHECK (humKind (-30.0) == HumKind::quiet);
    CHECK (humKind (-12.1) == HumKind::less);
    CHECK (humKind (0.4) == HumKind::like);
    CHECK (humKind (5.8) == HumKind::more);
    // A lone coil hums against its playing like any other: of 5000 turns here, 20 log10 (5000/8000) = -4.08 dB of hum EMF at the jack.
    const auto split = humFigures (voiceOf (humbuckerWired (Wiring::splitOpen, humbucker ("bridge"))));
    CHECK (split.playingDb == Approx (0.0).margin (0.6));
    CHECK (split.jackDb == Approx (-4.08).margin (0.6));
    CHECK_FALSE (split.assumed);
    CHECK (humFigures (voiceOf (humbuckerWired (Wiring::series, humbucker ("bridge")))).assumed);
}

TEST_CASE ("figures tell hum in numbers, also where only an assumed mismatch is left")
{
    const auto side = [] (Wiring wiring) {
        return CircuitConfig { humbuckerWired (wiring, humbucker ("bridge")), {}, {}, sixStrings() };
    };
    const auto parallel = computeFigures (side (Wiring::series), side (Wiring::parallel));
    CHECK (parallel.humByMismatch);
    CHECK (humKind (parallel.hum.playingDb) == HumKind::quiet);
    CHECK (parallel.hum.playingDb < -33.0);
    CHECK (parallel.hum.playingDb > -45.0);
    const auto split = computeFigures (side (Wiring::series), side (Wiring::splitShorted));
    CHECK (split.humByMismatch); // as recorded was quiet: how many dB more is the mismatch's to say
    CHECK (split.humJackDb > 20.0);
    CHECK (humKind (split.hum.playingDb) == HumKind::like);
    const auto back = computeFigures (side (Wiring::splitOpen), side (Wiring::splitShorted));
    CHECK_FALSE (back.humByMismatch);
    CHECK (std::abs (back.humJackDb) < 3.0);
    CHECK (back.humAgainstPlayingDb == Approx (back.humJackDb - back.levelDb).epsilon (1e-12));
}
}
