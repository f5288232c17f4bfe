#include "Catalogue.h"

#include "job/Paths.h"

#include <algorithm>
#include <iostream>

namespace catalogueTest
{
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

namespace
{
/** Each of the rewires that the guitar can take, filled in the first or the last way that is heard. */
std::vector<RewireUse> usesOn (const Guitar& guitar, const std::vector<std::string>& rewires, bool last)
{
    const auto presets = bench::shipped();
    std::vector<RewireUse> uses;
    for (const auto& name : rewires)
    {
        Faults faults;
        const auto info = readRewireInfo (name, presets, faults);
        REQUIRE (info.has_value());
        auto ways = bench::waysToFill (*info, guitar.harness, 10);
        if (last)
            std::reverse (ways.begin(), ways.end());
        int tried = 0;
        for (const auto& arguments : ways)
        {
            if (++tried > 200)
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
    return uses;
}

void tryPairs (const std::string& what, const std::vector<std::string>& guitars, const std::vector<std::string>& rewires)
{
    int pairs = 0, applied = 0, refused = 0;
    for (const auto& guitar : bench::allGuitars (guitars))
    {
        // On the same pickup and pot they collide, on others they must not: both are tried.
        const auto uses = usesOn (guitar, rewires, false), others = usesOn (guitar, rewires, true);
        REQUIRE (uses.size() == others.size());
        for (const auto& first : uses)
            for (size_t i = 0; i < 2 * uses.size(); ++i)
            {
                const auto& second = i < uses.size() ? uses[i] : others[i - uses.size()];
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
                const auto& message = faults.front().message;
                CHECK ((message.find ("order") != std::string::npos || message.find ("by itself") != std::string::npos));
            }
    }
    std::cout << what << ": " << pairs << " ordered pairs, " << applied << " applied and undone, " << refused << " refused with a reason\n";
    CHECK (applied > 0);
    CHECK (applied + refused == pairs);
}
}

TEST_CASE ("Every two rewires in both orders are applied, or refused with a reason")
{
    tryPairs ("the first rewires on the first guitars", { "two-humbuckers-four-knobs", "one-humbucker", "two-single-coils" },
              { "series-parallel", "split-shorted", "split-open", "phase", "phase-pull", "both-in-series", "independent-volumes", "tone-on-output",
                "treble-bleed-cap", "treble-bleed-parallel", "treble-bleed-series" });
    tryPairs ("all rewires on the first guitars and three single coils",
              { "two-humbuckers-four-knobs", "one-humbucker", "two-single-coils", "three-single-coils" }, bench::shipped().list ("rewires"));
}
}
