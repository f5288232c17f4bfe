#include "support/Catalogue.h"

#include "job/AudiblePath.h"

#include <algorithm>
#include <iostream>

namespace catalogueTest
{
using namespace coldiron;

namespace
{
/** Why a rewire was refused, checked to be words that a person can act on. */
void checkReason (const Diagnostics& diagnostics)
{
    REQUIRE (diagnostics.size() == 1);
    CHECK (diagnostics.front().message.size() > 20);
}

void checkUndo (const Harness& before, const Harness& after)
{
    Harness undone = after;
    for (const auto& step : difference (after, before))
        undone = coldiron::applyStep (undone, step);
    CHECK (undone.sameAs (before));
}
}

TEST_CASE ("Every rewire on every guitar is applied and can be undone, or is refused with a reason")
{
    const auto presets = support::shipped();
    int pairs = 0, applied = 0, refused = 0, neverOn = 0, ways = 0;
    std::map<std::string, int> guitarsOf;
    for (const auto& guitar : support::allGuitars (presets.list ("guitars")))
        for (const auto& name : presets.list ("rewires"))
        {
            ++pairs;
            Diagnostics diagnostics;
            const auto info = readRewireInfo (name, presets, diagnostics);
            REQUIRE (info.has_value());
            bool any = false;
            int tried = 0;
            for (const auto& arguments : support::waysToFill (*info, guitar.harness, 10))
            {
                if (++tried > 60)
                    break;
                ++ways;
                INFO (guitar.preset << " " << name);
                diagnostics.clear();
                const auto use = fillRewire (name, arguments, guitar.harness, presets, diagnostics);
                const auto harness = use ? applyRewires (guitar.harness, { *use }, "job", diagnostics) : std::nullopt;
                if (! harness)
                {
                    checkReason (diagnostics);
                    continue;
                }
                CHECK (diagnostics.empty());
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
    std::cout << "rewire x guitar: " << pairs << " pairs, " << applied << " applied, " << refused << " refused with a reason, "
              << neverOn << " with nothing to fill the asks; " << ways << " ways tried, each applied one undone\n";
    CHECK (applied > 0);
}

namespace
{
/** Each of the rewires that the guitar can take, filled in the first or the last way that is heard. */
std::vector<RewireUse> usesOn (const Guitar& guitar, const std::vector<std::string>& rewires, bool last)
{
    const auto presets = support::shipped();
    std::vector<RewireUse> uses;
    for (const auto& name : rewires)
    {
        Diagnostics diagnostics;
        const auto info = readRewireInfo (name, presets, diagnostics);
        REQUIRE (info.has_value());
        auto ways = support::waysToFill (*info, guitar.harness, 10);
        if (last)
            std::reverse (ways.begin(), ways.end());
        int tried = 0;
        for (const auto& arguments : ways)
        {
            if (++tried > 200)
                break;
            diagnostics.clear();
            const auto use = fillRewire (name, arguments, guitar.harness, presets, diagnostics);
            const auto harness = use ? applyRewires (guitar.harness, { *use }, "job", diagnostics) : std::nullopt;
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
    for (const auto& guitar : support::allGuitars (guitars))
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
                Diagnostics diagnostics;
                const auto harness = applyRewires (guitar.harness, { first, second }, "job", diagnostics);
                if (harness)
                {
                    ++applied;
                    checkUndo (guitar.harness, *harness);
                    continue;
                }
                ++refused;
                checkReason (diagnostics);
                const auto& message = diagnostics.front().message;
                CHECK ((message.find ("order") != std::string::npos || message.find ("by itself") != std::string::npos));
            }
    }
    std::cout << what << ": " << pairs << " ordered pairs, " << applied << " applied and undone, " << refused
              << " refused with a reason\n";
    CHECK (applied > 0);
    CHECK (applied + refused == pairs);
}
}

TEST_CASE ("Every two rewires in both orders are applied, or refused with a reason")
{
    tryPairs ("the first rewires on the first guitars", { "two-humbuckers-four-knobs", "one-humbucker", "two-single-coils" },
              { "series-parallel", "split-shorted", "split-open", "phase", "phase-pull", "both-in-series", "independent-volumes",
                "tone-on-output", "treble-bleed-cap", "treble-bleed-parallel", "treble-bleed-series" });
    tryPairs ("all rewires on the first guitars and three single coils",
              { "two-humbuckers-four-knobs", "one-humbucker", "two-single-coils", "three-single-coils" },
              support::shipped().list ("rewires"));
}
}
