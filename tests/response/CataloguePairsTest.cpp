#include "CatalogueFixture.h"

#include <chrono>
#include <iostream>

namespace cataloguePairsTest
{
using namespace coldiron;
using namespace coldiron::catalogue;

// Every ordered pair of the rewires that a guitar can take, on every shipped guitar: refused with a reason, or the
// harness that comes of it answers as ngspice does on a netlist written from it by another route, at one mixed setting.
namespace
{
/** Each rewire that the guitar can take, filled in the first or the last way that serves. */
std::vector<RewireUse> usesOn (const Harness& harness, const std::vector<std::string>& rewires, const PresetFolders& presets,
                               bool last)
{
    std::vector<RewireUse> uses;
    for (const auto& name : rewires)
    {
        Diagnostics diagnostics;
        const auto info = readRewireInfo (name, presets, diagnostics);
        REQUIRE (info.has_value());
        auto ways = waysToFill (*info, harness);
        if (last)
            std::reverse (ways.begin(), ways.end());
        for (const auto& way : ways)
        {
            Diagnostics why;
            const auto use = fillRewire (name, way, harness, presets, why);
            if (use && applyRewires (harness, { *use }, name, why))
            {
                uses.push_back (*use);
                break;
            }
        }
    }
    return uses;
}

/** Knobs and levers mixed, another mixture for each pair. */
Setting mixedSetting (const Harness& harness, size_t turn)
{
    constexpr double knobs[] = { 10.0, 7.0, 4.0, 10.0, 8.5, 2.0, 5.0 };
    Setting setting;
    for (const auto& control : controls (harness))
    {
        turn = turn * 31 + 17;
        if (control.positions.empty())
            setting.knobs[control.name] = knobs[turn % std::size (knobs)];
        else
            setting.levers[control.name] = control.positions[turn / 7 % control.positions.size()];
    }
    return setting;
}
}

TEST_CASE ("Every ordered pair of rewires on every guitar is right by ngspice, or refused with a reason")
{
    const auto start = std::chrono::steady_clock::now();
    const auto presets = shipped();
    const auto rewires = presets.list ("rewires");
    Tally tally;
    int pairs = 0, refused = 0;
    for (const auto& name : presets.list ("guitars"))
    {
        Diagnostics diagnostics;
        const auto guitar = readGuitar (name, presets, diagnostics);
        REQUIRE (guitar.has_value());
        const StringSet strings { guitar->strings, std::vector<bool> (guitar->strings.size(), true) };
        const auto first = usesOn (guitar->harness, rewires, presets, false),
                   last = usesOn (guitar->harness, rewires, presets, true);
        REQUIRE (first.size() == last.size());
        for (const auto& a : first)
            for (size_t i = 0; i < first.size(); ++i)
            {
                // On the same pickup and pot they are likelier to collide, on others they should not: turn about.
                const auto& b = ++pairs % 2 == 0 ? first[i] : last[i];
                const auto what = name + ": " + a.preset + ", " + b.preset;
                Diagnostics why;
                const auto harness = applyRewires (guitar->harness, { a, b }, name, why);
                if (! harness)
                {
                    ++refused;
                    if (why.size() != 1 || why.front().message.size() < 40)
                        FAIL_CHECK (what << ": refused without a reason");
                    continue;
                }
                compare (*harness, mixedSetting (*harness, static_cast<size_t> (pairs)), {}, strings, what, tally, 4);
            }
    }
    std::cout << "Pairs of rewires: " << pairs << " ordered pairs, " << refused << " refused with a reason, " << tally.circuits
              << " compared with ngspice (" << tally.silent << " silent there, " << tally.cancelled
              << " points cancelled by over 20 dB, " << tally.rounded << " rounded by the simulator, of " << tally.points
              << "); worst " << tally.worstDb << " dB (" << tally.worst << "); "
              << std::chrono::duration<double> (std::chrono::steady_clock::now() - start).count() << " s\n";
    CHECK (tally.circuits > 5000);
    CHECK (tally.silent * 4 < tally.circuits);
    CHECK (tally.rounded * 1000 < tally.points);
    CHECK (tally.worstDb < barDb);
}
}
