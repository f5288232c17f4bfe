#include "wording/FitWords.h"

#include "support/JobFixture.h"
#include "wording/FittedPreset.h"

#include <catch2/catch.hpp>

namespace fitWordsTest
{
using namespace coldiron;
using namespace coldiron::support;
using namespace coldiron::wording;
using Reason = FitRefusal::Reason;
using Quantity = FittedReading::Quantity;

TEST_CASE ("a fit that is refused says what was found and what was expected", "[fit]")
{
    CHECK (fitRefusal ({ .reason = Reason::otherDcr, .found = 8.1, .expected = 8200.0 })
           == "reads 8.1 ohm, but a pickup of this kind has about 8200: is a k missing or too many, is a winding open or "
              "shorted, or "
              "is it another kind of pickup?");
    CHECK (fitRefusal ({ .reason = Reason::shortSweep, .found = 2.0, .expected = 6.0 })
           == "a response through one load needs at least 6 rows, since only its shape counts; found 2");
    CHECK (fitRefusal ({ .reason = Reason::noSuchCoil, .name = "middle" }) == "the pickup has no coil \"middle\" to drive");
    CHECK (fitRefusal ({ .reason = Reason::outlier, .reading = { 7, Quantity::impedance, 30500.0, 12345.678, 14.6 } })
           == "impedance reads 30500 ohm, but the pickup nearest to all readings gives 12346 ohm, 15 times the stated accuracy "
              "away; "
              "read it again, or leave the row out");
    CHECK (
        fitRefusal ({ .reason = Reason::otherInductance, .found = 41.237, .expected = 4.6 })
        == "the readings ask for 41.24 H, and the kind it starts from has 4.6; check units and mode, or start from another kind");
    CHECK (fitRefusal ({ .reason = Reason::otherCapacitance, .found = 2.5e-9, .expected = 110e-12 })
               .rfind ("the readings ask for 2.5e+03 pF of winding capacitance, and a pickup of this kind has about 110: with", 0)
           == 0);
    CHECK (fitRefusal ({ .reason = Reason::notInSeries, .name = "north.start", .series = SeriesFault::severalJoints })
           == "the pickup to start from cannot be read between two leads: north.start has several joints inside");
    CHECK (fitRefusal ({ .reason = Reason::failed, .name = "why" }) == "no pickup can be fitted to these readings: why");
    for (const auto reason : { Reason::noReadings, Reason::notOnePickup, Reason::nothingSaid })
        CHECK (fitRefusal ({ .reason = reason, .found = 5.04 }).find ('{') == std::string::npos);
    CHECK (fitRefusal ({ .reason = Reason::notOnePickup, .found = 5.04 }).find ("typically 5.0 times") != std::string::npos);
}

TEST_CASE ("notes of a fit give their numbers", "[fit]")
{
    using Kind = FitNote::Kind;
    CHECK (
        fitNote ({ Kind::rival, 4.71234, 47.12e-12 })
        == "another pickup fits these readings about as well, with 4.712 H and 47.1 pF: a reading with its phase, or at one more "
           "frequency, would decide");
    CHECK (
        fitNote ({ Kind::coilsInSeries, 2.0, 0.15 })
        == "its 2 coils were read in series: they keep the generic pickup's proportions to each other and its coupling of 0.15, "
           "assumed");
    CHECK (fitNote ({ Kind::farFromGeneric, 1.7321 }).rfind ("stays assumed: 1.73 times the DC resistance", 0) == 0);
    CHECK (fitNote ({ Kind::misfit, 2.55 }).rfind ("the readings lie 2.5 times their stated accuracy", 0) == 0);
    CHECK (fitNote ({ Kind::openCapacitance }) != fitNote ({ Kind::turns }));
}

TEST_CASE ("A fitted pickup is written as a preset that reads back the same", "[readings]")
{
    for (const std::string& preset : shipped().list ("pickups"))
    {
        INFO (preset);
        Diagnostics diagnostics;
        const auto file =
            readReadingsText ("pickup," + preset + "\nname,Quoted \"walnut\"\ndcr,9k\n", "bench.csv", shipped(), diagnostics);
        REQUIRE (file);
        auto readings = *file;
        auto& ohms = std::get<OhmsReading> (readings.readings.readings.front().kind).ohms;
        ohms = 0.0;
        for (const auto& coil : readings.generic.coils)
            ohms += 1.1 * coil.dcrOhms;
        const auto fit = fitCoil (readings.generic, readings.readings);
        for (const auto& refusal : fit.refusals)
            UNSCOPED_INFO (fitRefusal (refusal));
        REQUIRE (fit.accepted());

        const auto text = pickupPresetText (readings, fit);
        const auto back = readPickupText (text, "fitted.json", shipped(), diagnostics);
        for (const auto& fault : diagnostics)
            UNSCOPED_INFO (fault.text());
        REQUIRE (back);
        CHECK (diagnostics.empty());
        CHECK (back->name == "Quoted \"walnut\"");
        CHECK (back->known == Provenance::fromOhms);
        CHECK (back->coupling == readings.generic.coupling);
        CHECK (back->inside == readings.generic.inside);
        REQUIRE (back->coils.size() == fit.pickup.coils.size());
        for (size_t i = 0; i < back->coils.size(); ++i)
        {
            const auto &a = back->coils[i], &b = fit.pickup.coils[i];
            CHECK (a.name == b.name);
            CHECK (a.dcrOhms == Approx (b.dcrOhms).epsilon (1e-4)); // five digits are written
            CHECK (a.henries == Approx (b.henries).epsilon (1e-4));
            CHECK (a.farads == Approx (b.farads).epsilon (1e-4));
            CHECK (a.output == Approx (b.output).epsilon (1e-4));
            CHECK (a.turns == Approx (b.turns).epsilon (1e-4));
            CHECK (a.magnet == b.magnet);
            CHECK (a.wound == b.wound);
            CHECK (a.offsetMm == b.offsetMm);
            REQUIRE (a.losses.size() == b.losses.size());
            for (size_t k = 0; k < a.losses.size(); ++k)
                CHECK (a.losses[k].ohms == Approx (b.losses[k].ohms).epsilon (1e-4));
        }
    }
}
}
