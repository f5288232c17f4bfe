#include "Targets.h"

#include "strings/StringMix.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <iostream>

namespace stringTargetTest
{
using namespace coldiron;
using namespace coldiron::targets;

namespace
{
StringSet strings (std::initializer_list<const char*> names, double scaleMm, unsigned ticked)
{
    StringSet set;
    for (const char* name : names)
    {
        set.strings.push_back ({ name, noteHz (name), scaleMm });
        set.played.push_back ((ticked >> set.played.size() & 1u) != 0);
    }
    return set;
}

struct Places
{
    std::vector<double> mm;
    double second = 1.0; ///< what the later half of the coils is driven with, the first with 1
};

double power (const StringSet& set, const Places& places, double hz)
{
    std::vector<CoilPosition> coilPositions;
    Eigen::VectorXd drive = Eigen::VectorXd::Ones (static_cast<Eigen::Index> (places.mm.size()));
    for (double mm : places.mm)
        coilPositions.push_back (coilPositionAt (set, mm, 0.0, {}));
    drive.tail (drive.size() / 2).setConstant (places.second);
    return drive.dot (stringWeights (set, coilPositions, hz) * drive);
}
}

TEST_CASE ("Whatever strings are ticked, an estimated option follows its smoothed target", "[filter][strings]")
{
    // The bars are ours: rms 0.05 dB, at most 0.25 dB, 20 Hz to 20 kHz.
    const std::pair<Places, Places> moves[] = { { { { 35.0, 53.0 } }, { { 35.0 } } },                             // split
                                                { { { 35.0, 53.0 } }, { { 143.0, 161.0 } } },                     // to the neck
                                                { { { 143.0, 161.0 } }, { { 35.0, 53.0 } } },                     // and back
                                                { { { 44.0 } }, { { 44.0, 150.0 }, 0.9 } },                       // to both
                                                { { { 35.0, 53.0 } }, { { 35.0, 53.0, 143.0, 161.0 }, -0.9 } } }; // out of phase
    const LoadedCoil from { 4.6, 8e3, 540e-12, 200e3 }, to { 2.5, 6e3, 610e-12, 200e3 };
    double worst = 0.0, worstRms = 0.0;
    size_t most = 0;
    for (const double rate : { 44100.0, 48000.0, 88200.0, 96000.0, 192000.0 })
    {
        const FilterDesigner designer (rate);
        for (const unsigned ticked : { 63u, 3u, 56u, 1u, 32u, 4u, 14u })
            for (const bool isBass : { false, true })
            {
                if (isBass && (ticked & 15u) == 0)
                    continue;
                const auto set = isBass ? strings ({ "E1", "A1", "D2", "G2" }, 863.6, ticked)
                                        : strings ({ "E2", "A2", "D3", "G3", "B3", "E4" }, 647.7, ticked);
                for (const auto& [before, after] : moves)
                {
                    const Response change = [&, before = before, after = after] (double hz)
                    { return to (hz) / from (hz) * std::sqrt (power (set, after, hz) / power (set, before, hz)); };
                    const auto filter = designer.design (onGrid (designer, change), true);
                    const auto error = deviation (filter, softlyCapped (designer, change));
                    CHECK (error.rms < 0.05);
                    CHECK (error.worst < 0.25);
                    worst = std::max (worst, error.worst);
                    worstRms = std::max (worstRms, error.rms);
                    most = std::max (most, filter.poles.size());
                }
            }
    }
    std::cout << "estimated targets: worst " << worst << " dB, largest rms " << worstRms << " dB, at most " << most
              << " poles or pairs\n";
}
}
