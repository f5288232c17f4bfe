#include "CoilFitTruth.h"

#include <catch2/catch.hpp>

namespace coilFitRefusalTest
{
using namespace coldiron;
using namespace coldiron::fittruth;

namespace
{
bool refusedAt (const CoilFit& fit, int line)
{
    for (const auto& refusal : fit.refusals)
        if (refusal.line == line)
            return true;
    return false;
}
}

TEST_CASE ("A DC resistance alone scales the generic pickup", "[fit]")
{
    // The law [calc]: turns as DC resistance, inductance as turns squared.
    PickupReadings readings;
    readings.readings = { { OhmsReading { 1.2 * 8200.0 }, 1 } };
    const auto start = generic ("humbucker");
    const auto fit = fitCoil (start, readings);
    REQUIRE (fit.accepted());
    CHECK (fit.pickup.known == Provenance::fromOhms);
    CHECK (fit.values[CoilFit::dcr].found == Found::measured);
    for (const int i : { CoilFit::inductance, CoilFit::capacitance, CoilFit::lossOhms, CoilFit::lossHenries })
        CHECK (fit.values[(size_t)i].found == Found::assumed);
    for (const auto& coil : fit.pickup.coils)
    {
        CHECK (coil.dcrOhms == Approx (1.2 * 4100.0).epsilon (1e-3)); // the wide prior pulls by 1e-4
        CHECK (coil.henries == Approx (1.44 * 1.6).epsilon (1e-3));
        CHECK (coil.losses.front().henries == Approx (1.44 * 0.5).epsilon (1e-3));
        CHECK (coil.losses.front().ohms == Approx (1.44 * 60e3).epsilon (1e-3));
        CHECK (coil.farads == Approx (90e-12));
        CHECK (coil.output == Approx (1.2).epsilon (1e-3));
        CHECK (coil.turns == Approx (6000.0).epsilon (1e-3));
    }
}

TEST_CASE ("A warm coil is brought back to 20 C", "[fit]")
{
    // Copper 0.393 % per kelvin at 20 C (IEC 60028, as quoted): 8000 ohm reads 8314.4 at 30 C.
    PickupReadings readings;
    readings.celsius = 30.0;
    readings.readings = { { OhmsReading { 8314.4 }, 1 } };
    const auto fit = fitCoil (generic ("humbucker"), readings);
    CHECK (fit.values[CoilFit::dcr].value == Approx (8000.0).epsilon (2e-4));
}

TEST_CASE ("Readings that no pickup gives are refused", "[fit]")
{
    const auto start = generic ("humbucker");

    SECTION ("a missing k")
    {
        PickupReadings readings;
        readings.readings = { { OhmsReading { 8.1 }, 3 } };
        CHECK (refusedAt (fitCoil (start, readings), 3));
    }
    SECTION ("no readings") { CHECK_FALSE (fitCoil (start, {}).accepted()); }
    SECTION ("two ohm readings apart")
    {
        PickupReadings readings;
        readings.readings = { { OhmsReading { 8100.0 }, 1 }, { OhmsReading { 9000.0 }, 2 } };
        CHECK_FALSE (fitCoil (start, readings).accepted());
    }
    SECTION ("a resonance far above what the inductance allows")
    {
        Meter meter (truths()[2], 1);
        meter.dcr().lcr (120.0).lcr (1000.0);
        meter.readings.readings.push_back ({ ResonanceReading { 60e3, 0.0 }, 9 });
        CHECK_FALSE (fitCoil (start, meter.readings).accepted());
    }
    SECTION ("an added capacitor that raises the resonance")
    {
        Meter meter (truths()[2], 1);
        meter.dcr().lcr (120.0);
        meter.readings.readings.push_back ({ ResonanceReading { 5e3, 0.0 }, 8 });
        meter.readings.readings.push_back ({ ResonanceReading { 7e3, 220e-12 }, 9 });
        CHECK_FALSE (fitCoil (start, meter.readings).accepted());
    }
    SECTION ("one typing error in a sweep is named by its line")
    {
        Meter meter (truths()[2], 1);
        meter.dcr().impedanceSweep (0.01);
        std::get<ImpedanceReading> (meter.readings.readings[20].kind).ohms *= 1.4;
        CHECK (refusedAt (fitCoil (start, meter.readings), 21));
    }
    SECTION ("a sweep of noise")
    {
        Meter meter (truths()[2], 1);
        meter.dcr().impedanceSweep (0.3);
        CHECK_FALSE (fitCoil (start, meter.readings).accepted());
    }
    SECTION ("a response of a few rows, and a coil that is not there")
    {
        PickupReadings readings;
        readings.sweeps = { { 1e6, 470e-12, false, "middle" } };
        readings.readings = { { ResponseReading { 1e3, 0.0, 0 }, 5 }, { ResponseReading { 2e3, 1.0, 0 }, 6 } };
        const auto fit = fitCoil (start, readings);
        REQUIRE (fit.refusals.size() == 2);
        CHECK (fit.refusals[0].reason == FitRefusal::Reason::shortSweep);
        CHECK (fit.refusals[0].found == 2.0);
        CHECK (fit.refusals[1].reason == FitRefusal::Reason::noSuchCoil);
        CHECK (fit.refusals[1].name == "middle");
    }
    SECTION ("coils that are not in series inside")
    {
        auto parallel = start;
        parallel.inside = { { "north.start", "south.finish" }, { "north.finish", "south.start" } };
        PickupReadings readings;
        readings.readings = { { OhmsReading { 8100.0 }, 1 } };
        const auto fit = fitCoil (parallel, readings);
        REQUIRE (fit.refusals.size() == 1);
        CHECK (fit.refusals[0].reason == FitRefusal::Reason::notInSeries);
        CHECK (fit.refusals[0].series == SeriesFault::notInSeries);
    }
}

TEST_CASE ("Where two pickups fit, none is called measured", "[fit]")
{
    // |Z| at one frequency beside the resonance: from below or from above?
    const Truth truth { "humbucker", 2, 4.4e3, 1.9, 125e-12, 0.4, 75e3, 0.15 };
    Meter meter (truth, 1);
    meter.dcr().lcr (120.0).lcr (1000.0).impedance (0.87 * truth.resonance (100e-12), 0.01, 100e-12);
    const auto fit = fitCoil (generic (truth.kind), meter.readings);
    REQUIRE (fit.accepted());
    CHECK (fit.values[CoilFit::capacitance].found != Found::measured);
    CHECK (fit.pickup.known != Provenance::measured);
    CHECK (fit.notes.front().kind == FitNote::Kind::rival);
}

TEST_CASE ("A joint inside and a dummy coil are read as they are wired", "[fit]")
{
    auto joined = generic ("humbucker");
    joined.inside = { { "north.finish", "south.finish" } }; // aiding: south has both the other pole and the other winding
    joined.coils[1].wound = Wound::clockwise;
    auto free = joined;
    free.inside.clear();
    Meter meter (truths()[2], 3);
    meter.dcr().impedanceSweep (0.01);
    const auto a = fitCoil (joined, meter.readings), b = fitCoil (free, meter.readings);
    REQUIRE (a.accepted());
    for (size_t i = 0; i < 5; ++i)
        CHECK (a.values[i].value == Approx (b.values[i].value).epsilon (1e-6));

    auto dummy = generic ("humbucker");
    dummy.coils[1].magnet = Magnet::none;
    const auto c = fitCoil (dummy, meter.readings);
    REQUIRE (c.accepted());
    CHECK (c.values[CoilFit::inductance].value == Approx (a.values[CoilFit::inductance].value).epsilon (0.01));
}

TEST_CASE ("The same readings give the same fit", "[fit]")
{
    Meter meter (truths()[4], 7);
    meter.dcr().impedanceSweep (0.02);
    const auto a = fitCoil (generic ("humbucker"), meter.readings), b = fitCoil (generic ("humbucker"), meter.readings);
    for (size_t i = 0; i < 5; ++i)
        CHECK (a.values[i].value == b.values[i].value);
}
}
