#include "strings/StringMix.h"

#include <catch2/catch.hpp>

#include <Eigen/Eigenvalues>

#include <cmath>
#include <numbers>

namespace stringSetTest
{
using namespace coldiron;

namespace
{
StringSet guitar (double scaleMm = 648.0)
{
    StringSet set;
    for (const char* name : { "E2", "A2", "D3", "G3", "B3", "E4" })
        set.strings.push_back ({ name, noteHz (name), scaleMm });
    set.played.assign (6, true);
    return set;
}

/** One string alone, no smoothing: what a coil at d hears is sin^2 (2 pi f d / c). */
double heard (const StringSet& set, int string, double hz, const std::vector<double>& places)
{
    std::vector<CoilPosition> coilPositions;
    for (double mm : places)
        coilPositions.push_back (coilPositionAt (set, mm, 0.0, {}));
    StringDraw draw;
    draw.sigma = 0.0;
    draw.onlyString = string;
    return stringWeights (set, coilPositions, hz, draw).sum() / stringPower (set, string, hz, draw);
}
}

TEST_CASE ("Note names are ISO 16 frequencies", "[strings]")
{
    // ISO 16, A4 = 440 Hz, equal temperament f = 440 x 2^((m-69)/12): from memory of the standard.
    const std::pair<const char*, double> notes[] = { { "E2", 82.41 },  { "A2", 110.00 }, { "D3", 146.83 }, { "G3", 196.00 },
                                                     { "B3", 246.94 }, { "E4", 329.63 }, { "E1", 41.20 },  { "A1", 55.00 },
                                                     { "D2", 73.42 },  { "G2", 98.00 },  { "B0", 30.87 },  { "A4", 440.0 } };
    for (const auto& [name, hz] : notes)
        CHECK (noteHz (name) == Approx (hz).margin (0.005));
    CHECK (noteHz ("F#2") == Approx (noteHz ("Gb2")));
    CHECK (noteHz ("Bb1") == Approx (58.27).margin (0.005));
    for (const char* wrong : { "", "E", "H2", "e2", "E22", "E2 ", "#2", "Ebb2" })
        CHECK (noteHz (wrong) == 0.0);
}

TEST_CASE ("A coil at d hears sin (2 pi f d / c), whatever the fret", "[strings]")
{
    auto set = guitar();
    set.strings[0].hz = 82.4069;
    CHECK (set.strings[0].waveSpeed() == Approx (106.799).margin (0.001)); // c = 2 L f, closed form
    // Nulls at m c/(2d), closed form: E2, 648 mm: d = 40 mm 1334.99 Hz, d = 162 mm 329.63 Hz.
    CHECK (heard (set, 0, 1334.99, { 40.0 }) == Approx (0.0).margin (1e-9));
    CHECK (heard (set, 0, 329.63, { 162.0 }) == Approx (0.0).margin (1e-8));
    // Partial n of the open string at d = L/4: sin (n pi / 4), closed form.
    const double expected[] = { 0.707107, 1.0, 0.707107, 0.0, 0.707107, 1.0, 0.707107, 0.0 };
    for (int n = 1; n <= 8; ++n)
        CHECK (std::sqrt (std::max (0.0, heard (set, 0, n * 82.4069, { 162.0 }))) == Approx (expected[n - 1]).margin (1e-6));
}

TEST_CASE ("Two coils in phase have a null at c/(2s)", "[strings]")
{
    // 2 sin (2 pi f d / c) cos (pi f s / c), s = 18 mm: E2 2966.65 Hz, E4 11866.6 Hz, closed form.
    auto set = guitar();
    set.strings[0].hz = 82.4069;
    set.strings[5].hz = 4.0 * 82.4069;
    CHECK (heard (set, 0, 2966.65, { 35.0, 53.0 }) == Approx (0.0).margin (1e-6));
    CHECK (heard (set, 5, 11866.6, { 35.0, 53.0 }) == Approx (0.0).margin (1e-6));
    const double f = 700.0, c = set.strings[0].waveSpeed(), pi = std::numbers::pi;
    const double both = 2.0 * std::sin (2.0 * pi * f * 0.044 / c) * std::cos (pi * f * 0.018 / c);
    CHECK (heard (set, 0, f, { 35.0, 53.0 }) == Approx (both * both).epsilon (1e-9));
}

TEST_CASE ("Weights are a power: symmetric, never negative, the sum of its strings", "[strings]")
{
    const auto set = guitar();
    const std::vector<CoilPosition> coilPositions { coilPositionAt (set, 35.0, 0.0, {}), coilPositionAt (set, 53.0, 4.0, {}),
                                                    coilPositionAt (set, 150.0, 0.0, { "E2", "A2" }) };
    for (double hz : { 60.0, 200.0, 1000.0, 5000.0, 15000.0 })
    {
        const auto w = stringWeights (set, coilPositions, hz);
        CHECK ((w - w.transpose()).norm() == 0.0);
        const Eigen::SelfAdjointEigenSolver<Eigen::MatrixXd> eigen (w);
        CHECK (eigen.eigenvalues().minCoeff() > -1e-6 * eigen.eigenvalues().maxCoeff());
        Eigen::MatrixXd sum = Eigen::MatrixXd::Zero (3, 3);
        for (int s = 0; s < 6; ++s)
        {
            StringDraw one;
            one.onlyString = s;
            sum += stringWeights (set, coilPositions, hz, one);
        }
        // Every string is played, so the sum over strings alone is the whole.
        CHECK ((w - sum).norm() < 1e-12 * w.norm());
    }
    // A coil that hears two strings shares nothing of the others.
    StringDraw high;
    high.onlyString = 5;
    CHECK (stringWeights (set, coilPositions, 1000.0, high) (2, 2) == 0.0);
}

TEST_CASE ("Ticked strings count fifty times the others, low strings nothing below their note", "[strings]")
{
    auto set = guitar();
    set.played = { true, false, false, false, false, false };
    auto all = guitar();
    CHECK (stringPower (all, 1, 2000.0) / stringPower (set, 1, 2000.0) == Approx (51.0));
    CHECK (stringPower (all, 0, 40.0) < 1e-6 * stringPower (all, 0, 82.41));
    CHECK_FALSE (all.isBass());
    StringSet bass;
    bass.strings = { { "E1", noteHz ("E1"), 863.6 }, { "A1", noteHz ("A1"), 863.6 } };
    CHECK (bass.isBass());
    // Wound guitar strings lose treble against plain ones: 1/(1 + (f/4 kHz)^2), ours.
    CHECK (stringPower (all, 0, 4000.0) / stringPower (all, 0, 400.0) == Approx (0.5 * 1.01).epsilon (1e-3));
    CHECK (stringPower (bass, 0, 4000.0) / stringPower (bass, 0, 400.0) == Approx (1.0).epsilon (1e-6));
    StringDraw bent;
    bent.levelDb = { 6.0, 0.0, 0.0, 0.0, 0.0, 0.0 };
    bent.slopeDb = { 3.0, 0.0, 0.0, 0.0, 0.0, 0.0 };
    CHECK (10.0 * std::log10 (stringPower (all, 0, 2000.0, bent) / stringPower (all, 0, 2000.0)) == Approx (9.0));
}

TEST_CASE ("A slanted pickup is farther from the bridge at the low string", "[strings]")
{
    const auto position = coilPositionAt (guitar(), 50.0, 6.0, {});
    CHECK (position.distanceMm.front() == Approx (53.0));
    CHECK (position.distanceMm.back() == Approx (47.0));
}
}
