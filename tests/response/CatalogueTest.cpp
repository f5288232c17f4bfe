#include "CatalogueFixture.h"

#include <chrono>
#include <iostream>

namespace catalogueTest
{
using namespace coldiron;
using namespace coldiron::catalogue;

// Every shipped guitar, every rewire it can take, every position of its switches, knobs at 10, 5 and 0, against the
// circuit simulator ngspice in process; its netlists come from a generator that shares no code with ours.
namespace
{
std::vector<Setting> settingsOf (const Harness& harness)
{
    std::vector<Setting> settings;
    for (const double knob : { 10.0, 5.0, 0.0 })
    {
        std::vector<Setting> these (1);
        for (const auto& control : controls (harness))
        {
            if (control.positions.empty())
            {
                for (auto& setting : these)
                    setting.knobs[control.name] = knob;
                continue;
            }
            std::vector<Setting> next;
            for (const auto& setting : these)
                for (const auto& position : control.positions)
                {
                    next.push_back (setting);
                    next.back().levers[control.name] = position;
                }
            these = std::move (next);
        }
        settings.insert (settings.end(), these.begin(), these.end());
    }
    return settings;
}

void compareAll (const Harness& harness, const StringSet& strings, const std::string& what, Tally& tally)
{
    ++tally.harnesses;
    for (const auto& setting : settingsOf (harness))
    {
        compare (harness, setting, {}, strings, what, tally);
        if (harness.jack().as<JackPart>()->stereo)
            for (const auto plug : { Plug::stereoTip, Plug::stereoRing })
                compare (harness, setting, { .plug = plug }, strings,
                         what + (plug == Plug::stereoTip ? ", stereo tip" : ", stereo ring"), tally);
    }
}
}

TEST_CASE ("the whole catalogue against ngspice")
{
    const auto presets = shipped();
    const auto start = std::chrono::steady_clock::now();
    Tally tally;
    const auto guitars = presets.list ("guitars"), rewires = presets.list ("rewires");
    REQUIRE (guitars.size() >= 3);
    REQUIRE (rewires.size() >= 11);
    std::map<std::string, int> taken; // rewire -> on how many guitars
    for (const auto& name : guitars)
    {
        Diagnostics diagnostics;
        const auto guitar = readGuitar (name, presets, diagnostics);
        for (const auto& fault : diagnostics)
            FAIL_CHECK (fault.text());
        REQUIRE (guitar.has_value());
        StringSet strings { guitar->strings, std::vector<bool> (guitar->strings.size(), true) };
        compareAll (guitar->harness, strings, name, tally);

        std::vector<Harness> seen { guitar->harness };
        for (const auto& preset : rewires)
        {
            const auto info = readRewireInfo (preset, presets, diagnostics);
            REQUIRE (info.has_value());
            bool applied = false;
            for (const auto& way : waysToFill (*info, guitar->harness))
            {
                Diagnostics why;
                const auto use = fillRewire (preset, way, guitar->harness, presets, why);
                const auto rewired = use ? applyRewires (guitar->harness, { *use }, name, why) : std::nullopt;
                if (! rewired)
                {
                    CHECK_FALSE (why.empty()); // refused with a reason, never silently
                    ++tally.refused;
                    continue;
                }
                applied = true;
                if (std::any_of (seen.begin(), seen.end(), [&] (const Harness& h) { return h.sameAs (*rewired); }))
                    continue;
                seen.push_back (*rewired);
                std::string what = name + ", " + preset;
                for (const auto& [ask, value] : way)
                    what += " " + value;
                compareAll (*rewired, strings, what, tally);
            }
            taken[preset] += applied;
        }
    }
    for (const auto& [preset, count] : taken)
    {
        INFO (preset);
        CHECK (count > 0); // a rewire that no shipped guitar can take is a defect
    }
    std::cout << "Catalogue: " << guitars.size() << " guitars, " << rewires.size() << " rewires, " << tally.harnesses
              << " harnesses, " << tally.circuits << " circuits (" << tally.silent << " silent, " << tally.cancelled
              << " points cancelled by over 20 dB, " << tally.rounded << " rounded by the simulator, of " << tally.points << "), "
              << tally.refused << " fillings refused with a reason; worst " << tally.worstDb << " dB (" << tally.worst << "); "
              << std::chrono::duration<double> (std::chrono::steady_clock::now() - start).count() << " s\n";
    CHECK (tally.circuits > 500);
    CHECK (tally.rounded * 1000 < tally.points);
    CHECK (tally.worstDb < barDb);
}
}
