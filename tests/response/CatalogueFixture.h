#pragma once

// What the tests over the whole catalogue share: how rewires are filled in, and a circuit held against ngspice.

#include "job/Job.h"
#include "response/SourceResponses.h"
#include "response/Volumes.h"
#include "support/Ngspice.h"
#include "support/OracleNetlist.h"

#include <catch2/catch.hpp>

namespace coldiron::catalogue
{
using namespace coldiron::support;

inline constexpr double barDb = 1e-4; ///< 10 Hz to 40 kHz
inline constexpr double leakageDb = -100.0;
inline constexpr double quietestDb = -120.0; ///< below it nothing is compared but that it is quiet

inline PresetFolders shipped() { return PresetFolders ({ std::filesystem::path (COLDIRON_SOURCE) / "presets" }); }

/** What an ask may be filled with. A point is asked for a tone's end: lug 1 of each pot that is no volume. The pot that
    carries a push-pull for a pickup changes no circuit, so one is tried. */
inline std::vector<std::string> fillings (const RewireInfo& info, const RewireInfo::Ask& ask, const Harness& harness)
{
    auto names = candidates (ask.kind, harness);
    const bool forPickup = std::any_of (info.asks.begin(), info.asks.end(), [] (const auto& a) { return a.kind == "pickup"; });
    if (ask.kind == "pot" && forPickup)
        names.resize (std::min<size_t> (names.size(), 1));
    if (ask.kind != "point")
        return names;
    const auto volumes = volumeKnobs (harness, {});
    std::vector<std::string> points;
    for (const auto& part : harness.parts())
        if (part.as<PotPart>() != nullptr && std::find (volumes.begin(), volumes.end(), part.knobName()) == volumes.end())
            points.push_back (part.name + ".1");
    return points;
}

using Arguments = std::map<std::string, std::string>;

/** Every way to fill in what a rewire asks; values keep their defaults. */
inline std::vector<Arguments> waysToFill (const RewireInfo& info, const Harness& harness)
{
    std::vector<Arguments> ways (1);
    for (const auto& ask : info.asks)
    {
        if (ask.hasStandard || ask.kind == "value")
            continue;
        std::vector<Arguments> next;
        for (const auto& way : ways)
            for (const auto& name : fillings (info, ask, harness))
            {
                next.push_back (way);
                next.back()[ask.name] = name;
            }
        ways = std::move (next);
    }
    return ways;
}

struct Tally
{
    int cancelled = 0, rounded = 0, points = 0, circuits = 0, silent = 0, harnesses = 0, refused = 0;
    double worstDb = 0.0;
    std::string worst;
};

inline double levelDb (std::complex<double> h) { return 20.0 * std::log10 (std::abs (h) + 1e-30); }

/** The plain response by one dense solve for each coil: the slow reference. */
inline std::complex<double> denseSolution (const GuitarResponse& response, double hz)
{
    std::complex<double> sum;
    for (const auto& coil : response.guitar().coils)
        sum += coil.stringDrive * nodeVoltage (response.guitar().netlist, coil.branch, response.guitar().tip, hz);
    return sum;
}

inline void compare (const Harness& harness, const Setting& setting, const Load& load, const StringSet& strings,
                     const std::string& what, Tally& tally, int pointsPerDecade = 6)
{
    const GuitarResponse response (harness, setting, load, strings);
    const OracleNetlist oracle (harness, setting, load);
    ++tally.circuits;
    if (oracle.shorted)
    {
        ++tally.silent;
        CHECK (response.isSilent());
        return;
    }
    const auto ac = Ngspice::acDecades (oracle.lines, { "tip" }, pointsPerDecade, 10.0, 40000.0);
    tally.silent += response.isSilent();
    for (size_t i = 0; i < ac.hz.size(); ++i)
    {
        ++tally.points;
        const double theirs = levelDb (ac.values[0][i]), ours = levelDb (response.unisonResponse (ac.hz[i]));
        // No path from a coil to the tip: what a simulator still gives is leakage through its smallest conductance, 1e-12 S
        // into the input's 1M [calc: 20 log10 (1e-12 * 1e6) = -120 dB a terminal].
        if (response.isSilent() && theirs < leakageDb)
            continue;
        if (theirs < quietestDb)
        {
            if (ours > quietestDb + 1.0)
                FAIL_CHECK (what << ": " << ours << " dB where ngspice has " << theirs << " at " << ac.hz[i] << " Hz");
            continue;
        }
        // Where pickups cancel by more than 20 dB the rest is the difference of two large numbers, and the simulator keeps
        // fewer digits of it than the bar asks for. There ours is held to a plain dense solve instead, and the two
        // simulators to each other at the size of what cancels.
        const auto h = sourceResponses (response, ac.hz[i]);
        const double largest = h.size() > 0 ? h.cwiseAbs().maxCoeff() : 0.0;
        if (std::abs (ac.values[0][i]) < 0.1 * largest)
        {
            const auto dense = denseSolution (response, ac.hz[i]);
            ++tally.cancelled;
            const double apart = std::abs (std::abs (ac.values[0][i]) - std::abs (response.unisonResponse (ac.hz[i]))) / largest;
            // What is left below the simulator's own leakage it cannot know.
            if (std::abs (ours - levelDb (dense)) > barDb || (apart > barDb * 0.115 && std::max (ours, theirs) > leakageDb))
                FAIL_CHECK (what << ": cancelled to " << ours << " dB, dense " << levelDb (dense) << ", ngspice " << theirs);
            continue;
        }
        // The simulator rounds too: a point it gives otherwise is decided by the plain dense solve, and counted.
        if (std::abs (ours - theirs) > barDb)
        {
            ++tally.rounded;
            const double dense = levelDb (denseSolution (response, ac.hz[i]));
            if (std::abs (ours - dense) > barDb || std::abs (ours - theirs) > 10.0 * barDb)
                FAIL_CHECK (what << " at " << ac.hz[i] << " Hz: " << ours << " dB, dense " << dense << ", ngspice " << theirs);
            continue;
        }
        if (std::abs (ours - theirs) > tally.worstDb)
        {
            tally.worstDb = std::abs (ours - theirs);
            tally.worst = what + " at " + std::to_string (ac.hz[i]) + " Hz, " + std::to_string (theirs) + " dB";
        }
    }
}
}
