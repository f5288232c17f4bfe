#include "Targets.h"

#include "filter/DesignGrid.h"
#include "filter/MinimumPhase.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <iostream>
#include <limits>
#include <stdexcept>

namespace designTest
{
using namespace coldiron;
using namespace coldiron::targets;

namespace
{
constexpr double rates[] = { 44100.0, 48000.0, 88200.0, 96000.0, 192000.0 };

/** The loaded coils of a second-order low-pass in closed form, that wirings turn into one another. */
const LoadedCoil loadedCoils[] = { { 2.5, 6e3, 610e-12, 1e6 },
                                   { 2.5, 6e3, 610e-12, 200e3 },
                                   { 2.5, 6e3, 610e-12, 111e3 },
                                   { 4.6, 8e3, 540e-12, 200e3 },
                                   { 8.0, 14e3, 600e-12, 200e3 } };
}

TEST_CASE ("One loaded coil turned into another, every pair, five rates, denser than the fit's grid", "[filter]")
{
    for (const double rate : rates)
    {
        const FilterDesigner designer (rate);
        double worst = 0.0;
        for (const auto& from : loadedCoils)
            for (const auto& to : loadedCoils)
            {
                const Response change = [&] (double hz) { return to (hz) / from (hz); };
                const auto filter = designer.design (onGrid (designer, change), false);
                const auto error = deviation (filter, softlyCapped (designer, change));
                worst = std::max (worst, error.worst);
                CHECK (error.worst < 0.02);
                for (const auto& pole : filter.poles)
                    CHECK (std::abs (pole) < 1.0);
            }
        std::cout << "loaded coils at " << rate << " Hz: worst " << worst << " dB\n";
    }
}

TEST_CASE ("A thousand random harness-like changes", "[filter]")
{
    std::mt19937 random (20240607); // fixed: the same thousand every time
    const auto between = [&random] (double low, double high)
    { return low * std::pow (high / low, std::uniform_real_distribution<double> (0.0, 1.0) (random)); };
    const auto coil = [&] {
        return LoadedCoil { between (0.8, 10.0), between (2e3, 16e3), between (250e-12, 1200e-12), between (60e3, 450e3) };
    };
    std::vector<double> errors;
    for (int i = 0; i < 1000; ++i)
    {
        const auto designer = FilterDesigner::shared (rates[i % 5]);
        const auto from = coil(), to = coil();
        // A tone control rolled part way on one side: a shelf whose corners are those of R and C.
        const double cap = between (10e-9, 47e-9), track = between (1e3, 500e3), source = between (5e3, 50e3);
        const bool toneMoves = i % 3 == 0;
        const Response change = [&] (double hz)
        {
            const std::complex<double> s (0.0, 2.0 * std::numbers::pi * hz);
            const auto shelf =
                toneMoves ? (1.0 + s * cap * track) / (1.0 + s * cap * (track + source)) : std::complex<double> (1.0);
            return shelf * to (hz) / from (hz);
        };
        const auto filter = designer->design (onGrid (*designer, change), false);
        // The bar holds against what is aimed at, the soft-capped target, on a grid denser than the fit's.
        errors.push_back (deviation (filter, softlyCapped (*designer, change)).worst);
    }
    std::sort (errors.begin(), errors.end());
    std::cout << "1,000 random changes: median " << errors[500] << ", p99 " << errors[990] << ", worst " << errors[999]
              << " dB\n";
    CHECK (errors[990] < 0.1);
    CHECK (errors[999] < 0.5);
}

TEST_CASE ("The phase is the minimum phase of the gain", "[filter]")
{
    // Of 1/(1 + jW), of a resonance and of their ratio, in closed form.
    std::vector<double> w;
    for (double x = 1e-4; x < 60.0; x *= 1.0175)
        w.push_back (x);
    const auto matrix = minimumPhaseMatrix (w);
    const auto check = [&] (const Response& response, double tolerance)
    {
        Eigen::VectorXd logs (static_cast<Eigen::Index> (w.size()));
        for (size_t k = 0; k < w.size(); ++k)
            logs[static_cast<Eigen::Index> (k)] = std::log (std::abs (response (w[k])));
        const Eigen::VectorXd phase = matrix * logs;
        double worst = 0.0;
        for (size_t k = 0; k < w.size(); ++k)
            if (w[k] < 2.0)
                worst = std::max (worst, std::abs (phase[static_cast<Eigen::Index> (k)] - std::arg (response (w[k]))));
        CHECK (worst < tolerance);
    };
    using C = std::complex<double>;
    // Flat beyond the grid, so closed forms that are flat there: a shelf, and a resonance over another.
    check ([] (double x) { return (1.0 + C (0, x)) / (1.0 + C (0, 4.0 * x)); }, 0.002);
    check (
        [] (double x)
        {
            const C s (0, x);
            return (s * s + 0.2 * s + 0.04) / (s * s + 0.06 * s + 0.09);
        },
        0.01);
}

TEST_CASE ("Silence, unity and a plain gain are exact; nonsense is refused", "[filter]")
{
    const FilterDesigner designer (48000.0);
    const auto count = designer.gridHz().size();
    const auto silence = designer.design (std::vector<double> (count, 0.0), false);
    CHECK (silence.poles.empty());
    CHECK (silence.direct == 0.0);
    const auto half = designer.design (std::vector<double> (count, 0.5), true);
    CHECK (half.poles.empty());
    CHECK (half.direct == 0.5);
    auto wrong = std::vector<double> (count, 1.0);
    wrong[7] = std::numeric_limits<double>::quiet_NaN();
    CHECK_THROWS_AS (designer.design (wrong, false), std::invalid_argument);
    wrong[7] = -1.0;
    CHECK_THROWS_AS (designer.design (wrong, false), std::invalid_argument);
    CHECK_THROWS_AS (designer.design ({ 1.0 }, false), std::invalid_argument);
    CHECK_THROWS_AS (FilterDesigner (100.0), std::invalid_argument);
    CHECK_THROWS_AS (FilterDesigner (std::numeric_limits<double>::quiet_NaN()), std::invalid_argument);
}

TEST_CASE ("The same target gives the same filter, bit for bit", "[filter]")
{
    const FilterDesigner one (48000.0), two (48000.0);
    const auto target = onGrid (one, [] (double hz) { return loadedCoils[3](hz) / loadedCoils[0](hz); });
    const auto a = one.design (target, false), b = two.design (target, false);
    CHECK (a.direct == b.direct);
    CHECK (a.poles == b.poles);
    CHECK (a.residues == b.residues);
}

TEST_CASE ("Gain is capped softly at 24 dB over the passband, and said", "[filter]")
{
    const FilterDesigner designer (48000.0);
    const Response steep = [] (double hz) { return std::complex<double> (1.0 + std::pow (hz / 2000.0, 3.0)); };
    bool capped = false;
    const auto gains = designer.softCapped (onGrid (designer, steep), &capped);
    CHECK (capped);
    CHECK (db (*std::max_element (gains.begin(), gains.end())) < 24.1);
    CHECK (designer.design (onGrid (designer, steep), false).capped);
    bool gentle = true;
    designer.softCapped (onGrid (designer, [] (double) { return std::complex<double> (3.0); }), &gentle);
    CHECK_FALSE (gentle);
}

TEST_CASE ("Why a warped circuit would not do", "[filter]")
{
    // Bilinear: f_a = (fs/pi) tan (pi f_d/fs), closed form. At 48 kHz a 10 kHz resonance would land at 8854.583 Hz.
    const double rate = 48000.0, pi = std::numbers::pi;
    CHECK (rate / pi * std::atan (pi * 10e3 / rate) == Approx (8854.583).margin (0.001));
    CHECK (rate / pi * warped (4000.0, rate) == Approx (4093.962).margin (0.001));
    // Ours does not move it.
    const LoadedCoil coil { 2.5, 6e3, 101.3e-12, 1e6 };
    const FilterDesigner designer (rate);
    const Response change = [&] (double hz) { return coil (hz) / loadedCoils[0](hz); };
    const auto filter = designer.design (onGrid (designer, change), false);
    double peakHz = 0.0, peak = 0.0, wantedHz = 0.0, wanted = 0.0;
    for (double hz = 8000.0; hz < 12000.0; hz += 1.0)
    {
        if (std::abs (filter.response (hz)) > peak)
            peak = std::abs (filter.response (peakHz = hz));
        if (std::abs (change (hz)) > wanted)
            wanted = std::abs (change (wantedHz = hz));
    }
    CHECK (peakHz == Approx (wantedHz).epsilon (0.005));
}

TEST_CASE ("The grid is dense where guitars resonate and ends below half the rate", "[filter]")
{
    for (const double rate : { 8000.0, 44100.0, 192000.0 })
    {
        const auto grid = designGrid (rate);
        CHECK (std::is_sorted (grid.begin(), grid.end()));
        CHECK (std::adjacent_find (grid.begin(), grid.end()) == grid.end());
        CHECK (grid.front() == Approx (8.0));
        CHECK (grid.back() == Approx (0.492 * rate));
    }
}
}
