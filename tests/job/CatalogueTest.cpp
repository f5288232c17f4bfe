#include "Catalogue.h"

#include "job/Paths.h"

#include <iostream>

using namespace coldiron;

namespace
{
/** Why a rewire was refused, checked to be words that a person can act on. */
void checkReason (const Faults& faults)
{
    REQUIRE (faults.size() == 1);
    CHECK (faults.front().message.size() > 20);
}

void checkUndo (const Harness& before, const Harness& after)
{
    Harness undone = after;
    for (const auto& step : difference (after, before))
        undone = coldiron::after (undone, step);
    CHECK (undone.sameAs (before));
}
}

TEST_CASE ("Every rewire on every guitar is applied and can be undone, or is refused with a reason")
{
    const auto presets = bench::shipped();
    int pairs = 0, applied = 0, refused = 0, neverOn = 0, ways = 0;
    std::map<std::string, int> guitarsOf;
    for (const auto& guitar : bench::allGuitars (presets.list ("guitars")))
        for (const auto& name : presets.list ("rewires"))
        {
            ++pairs;
            Faults faults;
            const auto info = readRewireInfo (name, presets, faults);
            REQUIRE (info.has_value());
            bool any = false;
            int tried = 0;
            for (const auto& arguments : bench::waysToFill (*info, guitar.harness, 10))
            {
                if (++tried > 60)
                    break;
                ++ways;
                INFO (guitar.preset << " " << name);
                faults.clear();
                const auto use = fillRewire (name, arguments, guitar.harness, presets, faults);
                const auto harness = use ? applyRewires (guitar.harness, { *use }, "job", faults) : std::nullopt;
                if (! harness)
                {
                    checkReason (faults);
                    continue;
                }
                CHECK (faults.empty());
                checkUndo (guitar.harness, *harness);
                any = any || bestPath (*harness) == Path::open;
            }
            guitarsOf[name] += any ? 1 : 0;
            (any ? applied : tried == 0 ? neverOn : refused)++;
        }
    for (const auto& [name, count] : guitarsOf)
    {
        INFO (name << " can be used on no guitar");
        CHECK (count > 0);
    }
    std::cout << "rewire x guitar: " << pairs << " pairs, " << applied << " applied, " << refused << " refused with a reason, " << neverOn
              << " with nothing to fill the asks; " << ways << " ways tried, each applied one undone\n";
    CHECK (applied > 0);
}

TEST_CASE ("Every two rewires in both orders are applied, or refused with a reason")
{
    const auto presets = bench::shipped();
    int pairs = 0, applied = 0, refused = 0;
    for (const auto& guitar : bench::allGuitars ({ "two-humbuckers-four-knobs", "one-humbucker", "two-single-coils" }))
    {
        std::vector<RewireUse> uses;
        for (const auto& name : presets.list ("rewires"))
        {
            Faults faults;
            const auto info = readRewireInfo (name, presets, faults);
            int tried = 0;
            for (const auto& arguments : bench::waysToFill (*info, guitar.harness, 10))
            {
                if (++tried > 60)
                    break;
                faults.clear();
                const auto use = fillRewire (name, arguments, guitar.harness, presets, faults);
                const auto harness = use ? applyRewires (guitar.harness, { *use }, "job", faults) : std::nullopt;
                if (harness && bestPath (*harness) == Path::open)
                {
                    uses.push_back (*use);
                    break;
                }
            }
        }
        for (const auto& first : uses)
            for (const auto& second : uses)
            {
                ++pairs;
                INFO (guitar.preset << ": " << first.preset << ", " << second.preset);
                Faults faults;
                const auto harness = applyRewires (guitar.harness, { first, second }, "job", faults);
                if (harness)
                {
                    ++applied;
                    checkUndo (guitar.harness, *harness);
                    continue;
                }
                ++refused;
                checkReason (faults);
                CHECK (faults.front().message.find ("order") + 1 + faults.front().message.find ("by itself") + 1 > 0);
            }
    }
    std::cout << "ordered pairs of rewires: " << pairs << ", " << applied << " applied and undone, " << refused << " refused with a reason\n";
    CHECK (applied > 0);
    CHECK (applied + refused == pairs);
}
