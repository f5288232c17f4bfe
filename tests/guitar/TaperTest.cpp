#include "guitar/Taper.h"

#include <catch2/catch.hpp>

#include <stdexcept>

namespace taperTest
{
using namespace coldiron;

TEST_CASE ("The exponential law meets its closed form", "[taper]")
{
    // r(t) = (a^t - 1)/(a - 1), a = (1/m - 1)^2: computed from the formula, m = 10 %: a = 81; m = 20 %: a = 16.
    const auto ten = Taper::logarithmic (0.10), twenty = Taper::logarithmic (0.20), fifteen = Taper::logarithmic (0.15);
    CHECK (ten.share (0.25) == Approx (0.025).margin (1e-9));
    CHECK (ten.share (0.5) == Approx (0.1).margin (1e-9));
    CHECK (ten.share (0.75) == Approx (0.325).margin (1e-9));
    CHECK (twenty.share (0.25) == Approx (1.0 / 15.0).margin (1e-9));
    CHECK (twenty.share (0.5) == Approx (0.2).margin (1e-9));
    CHECK (twenty.share (0.75) == Approx (7.0 / 15.0).margin (1e-9));
    CHECK (fifteen.share (0.25) == Approx (0.044372447).margin (1e-9));
    CHECK (fifteen.share (0.5) == Approx (0.15).margin (1e-9));
    CHECK (fifteen.share (0.75) == Approx (0.401443869).margin (1e-9));
}

TEST_CASE ("Every law goes from 0 to 1 and never falls; reverse is the law from the other end", "[taper]")
{
    const auto log = Taper::logarithmic (0.15), reverse = Taper::reverseLogarithmic (0.15), linear = Taper::linear();
    const auto points =
        Taper::fromPoints ({ { 0.0, 0.0 },
                             { 0.5, 0.1 },
                             { 1.0, 1.0 } }); // two segments as commonly moulded: common practice of the trade, no source
    for (const auto& taper : { log, reverse, linear, points })
    {
        CHECK (taper.share (0.0) == 0.0);
        CHECK (taper.share (1.0) == 1.0);
        for (int i = 0; i < 100; ++i)
            CHECK (taper.share ((i + 1) / 100.0) >= taper.share (i / 100.0));
    }
    CHECK (points.share (0.25) == Approx (0.05));
    CHECK (points.share (0.75) == Approx (0.55));
    for (double t : { 0.1, 0.4, 0.8 })
        CHECK (reverse.share (t) == Approx (1.0 - log.share (1.0 - t)));
    CHECK (log.share (-1.0) == 0.0);
    CHECK (log.share (2.0) == 1.0);
}

TEST_CASE ("A taper that falls or does not span the travel is refused", "[taper]")
{
    CHECK_THROWS_AS (Taper::fromPoints ({ { 0.0, 0.0 }, { 0.5, 0.6 }, { 0.8, 0.5 }, { 1.0, 1.0 } }), std::invalid_argument);
    CHECK_THROWS_AS (Taper::fromPoints ({ { 0.0, 0.0 }, { 0.5, 0.6 } }), std::invalid_argument);
    CHECK_THROWS_AS (Taper::fromPoints ({}), std::invalid_argument);
    CHECK_THROWS_AS (Taper::logarithmic (0.0), std::invalid_argument);
    CHECK_THROWS_AS (Taper::logarithmic (0.5), std::invalid_argument);
}
}
