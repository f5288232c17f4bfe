#include "CoilFitTruth.h"
#include "support/Ngspice.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cstdio>

namespace coilFitSweepTest
{
// Sweeps made by ngspice, a general circuit simulator in process, from netlists written here: coil by coil, with a
// mutual inductance, and no line in common with the circuit that the fit computes.

using namespace coldiron;
using namespace coldiron::fittruth;
using coldiron::support::Ngspice;

namespace
{
std::string number (double value)
{
    char text[40];
    std::snprintf (text, sizeof text, "%.12g", value);
    return text;
}

/** The coils in series from tip to ground, an EMF inside each winding capacitance. */
Ngspice::Lines coils (const Truth& truth, bool driven)
{
    Ngspice::Lines lines;
    for (int i = 1; i <= truth.coils; ++i)
    {
        const std::string n = std::to_string (i), top = i == 1 ? "tip" : "mid", bottom = i == truth.coils ? "0" : "mid";
        lines.push_back ("ve" + n + " " + top + " a" + n + " dc 0 ac " + (driven ? "1" : "0"));
        lines.push_back ("l" + n + " a" + n + " b" + n + " " + number (truth.henries));
        lines.push_back ("r" + n + " b" + n + " c" + n + " " + number (truth.ohms));
        lines.push_back ("ly" + n + " c" + n + " " + bottom + " " + number (truth.lossHenries));
        lines.push_back ("ry" + n + " c" + n + " " + bottom + " " + number (truth.lossOhms));
        lines.push_back ("cw" + n + " " + top + " " + bottom + " " + number (truth.farads));
    }
    if (truth.coils == 2)
        lines.push_back ("k12 l1 l2 " + number (truth.coupling));
    return lines;
}

std::vector<double> frequencies()
{
    std::vector<double> hz;
    for (int i = 0; i < 40; ++i)
        hz.push_back (100.0 * std::pow (200.0, i / 39.0));
    return hz;
}

std::vector<double> levels (Ngspice::Lines lines) // dB at the tip
{
    std::vector<double> db;
    const auto swept = Ngspice::ac (lines, { "tip" }, frequencies());
    for (const auto& value : swept.values.front())
        db.push_back (20.0 * std::log10 (std::abs (value)));
    return db;
}

std::vector<double> impedanceDb (const Truth& truth)
{
    auto lines = coils (truth, false);
    lines.push_back ("i1 0 tip dc 0 ac 1");
    return levels (lines);
}

std::vector<double> responseDb (const Truth& truth, double ohms, double farads)
{
    auto lines = coils (truth, true);
    lines.push_back ("rload tip 0 " + number (ohms));
    lines.push_back ("cload tip 0 " + number (farads));
    return levels (lines);
}

struct Worst
{
    double henries = 0.0, farads = 0.0;
    int fits = 0, measured = 0;

    void add (const CoilFit& fit, const Truth& truth)
    {
        INFO ((fit.accepted() ? -1 : static_cast<int> (fit.refusals.front().reason)));
        REQUIRE (fit.accepted());
        henries = std::max (henries, std::abs (fit.values[CoilFit::inductance].value / truth.seriesHenries() - 1.0));
        farads = std::max (farads, std::abs (fit.values[CoilFit::capacitance].value / truth.seriesFarads() - 1.0));
        ++fits;
        measured += fit.pickup.known == Provenance::measured;
    }

    void print (const char* what) const
    {
        std::printf ("  ngspice, %-52s worst of %d: L %.2f %%, C %.2f %%; pickup measured %d\n", what, fits, 100 * henries,
                     100 * farads, measured);
    }
};

constexpr double noiseDb = 0.2;
constexpr unsigned seeds = 4;
}

TEST_CASE ("Impedance sweeps by ngspice with 0.2 dB of noise give L within 2 % and C within 5 %", "[fit]")
{
    Worst worst;
    for (const auto& truth : truths())
    {
        const auto hz = frequencies();
        const auto db = impedanceDb (truth);
        for (unsigned seed = 1; seed <= seeds; ++seed)
        {
            std::mt19937 engine (seed);
            std::normal_distribution<double> deviate;
            PickupReadings readings;
            readings.accuracy.impedance = std::log (10.0) / 20.0 * noiseDb;
            for (size_t i = 0; i < hz.size(); ++i)
                readings.readings.push_back (
                    { ImpedanceReading { hz[i], std::pow (10.0, (db[i] + noiseDb * deviate (engine)) / 20.0), {}, 0.0 },
                      (int)i + 1 });
            worst.add (fitCoil (generic (truth.kind), readings), truth);
        }
    }
    worst.print ("impedance, 40 points 100 Hz to 20 kHz");
    CHECK (worst.henries < 0.02);
    CHECK (worst.farads < 0.05);
    CHECK (worst.measured == worst.fits);
}

TEST_CASE ("Responses by ngspice through two loads with 0.2 dB of noise give L within 2 % and C within 5 %", "[fit]")
{
    Worst worst;
    for (const auto& truth : truths())
    {
        const auto hz = frequencies();
        const ResponseSweep loads[] = { { 10e6, 15e-12, false, "" }, { 1e6, 470e-12, true, "" } };
        std::vector<std::vector<double>> db;
        for (const auto& load : loads)
            db.push_back (responseDb (truth, load.loadOhms, load.loadFarads));
        for (unsigned seed = 1; seed <= seeds; ++seed)
        {
            std::mt19937 engine (seed);
            std::normal_distribution<double> deviate;
            PickupReadings readings;
            readings.readings.push_back ({ OhmsReading { truth.seriesOhms() * (1.0 + 0.005 * deviate (engine)) }, 1 });
            for (int sweep = 0; sweep < 2; ++sweep)
            {
                readings.sweeps.push_back (loads[sweep]);
                for (size_t i = 0; i < hz.size(); ++i)
                {
                    const double rise = loads[sweep].rising ? 20.0 * std::log10 (hz[i]) : 0.0;
                    readings.readings.push_back (
                        { ResponseReading { hz[i], db[(size_t)sweep][i] + rise - 12.0 + noiseDb * deviate (engine), sweep },
                          (int)i + 2 });
                }
            }
            worst.add (fitCoil (generic (truth.kind), readings), truth);
        }
    }
    worst.print ("DCR, responses through 10M/15p flat and 1M/470p rising");
    CHECK (worst.henries < 0.02);
    CHECK (worst.farads < 0.05);
    CHECK (worst.measured == worst.fits);
}
}
