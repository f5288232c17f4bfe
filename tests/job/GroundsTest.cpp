// What belongs on ground is on ground: a cover, baseplate or braid that floats buzzes, a floating string ground hums when
// touched. Common practice of the trade, no source.
#include "support/Rewired.h"

#include "guitar/Grounds.h"
#include "guitar/Nets.h"

#include <algorithm>

namespace groundsTest
{
using namespace coldiron;
using namespace coldiron::support;

namespace
{
using Points = std::vector<SolderPoint>;

bool isOnGround (const Harness& harness, const std::string& point)
{
    const auto points = harness.allPoints();
    return std::find (points.begin(), points.end(), point) != points.end()
           && Nets (harness).joined (point, harness.point ("ground"));
}
}

TEST_CASE ("No shipped guitar leaves a shield, a case or the strings floating, and no rewire does", "[grounds]")
{
    const auto presets = shipped();
    int applied = 0;
    for (const auto& guitar : allGuitars (presets.list ("guitars")))
    {
        INFO (guitar.preset);
        CHECK (floatingGrounds (guitar.harness) == Points {});
        for (const auto& name : presets.list ("rewires"))
        {
            Diagnostics diagnostics;
            const auto info = readRewireInfo (name, presets, diagnostics);
            REQUIRE (info.has_value());
            int tried = 0;
            for (const auto& arguments : waysToFill (*info, guitar.harness, 10))
            {
                if (std::any_of (arguments.begin(), arguments.end(),
                                 [&] (const auto& a) { return isOnGround (guitar.harness, a.second); }))
                    continue; // asked for a tone and given a ground: what is asked for is lifted
                if (++tried > 20)
                    break;
                diagnostics.clear();
                const auto use = fillRewire (name, arguments, guitar.harness, presets, diagnostics);
                const auto harness = use ? applyRewires (guitar.harness, { *use }, "job", diagnostics) : std::nullopt;
                if (! harness)
                    continue;
                INFO (name);
                CHECK (floatingGrounds (*harness) == Points {});
                ++applied;
            }
        }
    }
    CHECK (applied > 1000);
}

TEST_CASE ("A floating ground is noted, of the guitar and of the option that leaves it so", "[grounds]")
{
    Diagnostics diagnostics;
    const auto job = readJobText (R"({ "coldiron": "job 1",
 "guitar": { "scale_mm": 650, "strings": ["E2"],
   "parts": { "p": { "pickup": "single-coil", "bridge_mm": 50 }, "volume": { "pot": "250k" }, "jack": { "jack": "mono" } },
   "wires": [["p.coil.start", "volume.3"], ["p.coil.finish", "volume.1", "ground"], ["volume.2", "jack.tip"], ["p.shield", "ground"], ["strings", "ground"]] },
 "options": { "A": { "rewires": [
   { "use": { "coldiron": "rewire 1", "name": "Cut", "steps": [ { "unsolder": ["p.shield", "ground"] }, { "unsolder": ["strings", "ground"] } ] } } ] } } })",
                                  "/", shipped(), diagnostics);
    REQUIRE (job.has_value());
    REQUIRE (job->warnings.size() == 3);
    CHECK (has (job->warnings, 2, { "the guitar", "volume.case", "on no ground", "buzzes" }));
    CHECK (has (job->warnings, 5, { "option A", "p.shield", "a live cover buzzes" }));
    CHECK (has (job->warnings, 5, { "option A", "string ground", "touching the strings does not ground them" }));
}

TEST_CASE ("The braid of a two-lead pickup is its cold lead: it is not turned round, nor lifted off ground", "[grounds]")
{
    const auto guitar = guitarOf ("two-humbuckers-two-lead");
    const std::vector<std::pair<std::string, Arguments>> rewires {
        { "phase", { { "pickup", "bridge" } } },
        { "phase-pull", { { "pickup", "bridge" }, { "pot", "volume" } } },
        { "both-in-series", { { "first", "neck" }, { "second", "bridge" }, { "pot", "tone" } } },
        { "half-out-of-phase", { { "pickup", "neck" }, { "pot", "tone" } } }
    };
    for (const auto& [name, arguments] : rewires)
    {
        const auto why = whyRefused (guitar, { { name, arguments } });
        INFO (name << ": " << why);
        CHECK (why.find ("braid") != std::string::npos);
        CHECK (why.find ("cannot leave ground") != std::string::npos);
        CHECK (why.find ("four leads") != std::string::npos);
    }
    // What works on the hot side alone, or beside the pickup, still does.
    rewired (guitar, { { "load-capacitor", { { "pickup", "bridge" } } } });
    rewired (guitar, { { "bass-cut", { { "pickup", "bridge" }, { "pot", "volume" } } } });
    // One with four leads may be put in its place, and the other way round.
    const auto four = rewired (guitar, { { "pickup-swap", { { "pickup", "bridge" }, { "new", "humbucker-hot" } } } });
    CHECK (floatingGrounds (four) == Points {});
    const auto back = rewired (guitarOf ("two-humbuckers-two-knobs"),
                               { { "pickup-swap", { { "pickup", "bridge" }, { "new", "humbucker-hot-two-lead" } } } });
    CHECK (floatingGrounds (back) == Points {});
    CHECK (ohmsAt (back, { { "selector", "bridge" } }) == Approx (parallel ({ 14000.0, 500e3 })).epsilon (1e-6));
}

TEST_CASE ("A joint inside may name the shield where there is one, and its lead is not wired by itself", "[grounds]")
{
    const auto with = [] (const std::string& shield, const std::string& wire)
    {
        return faultsOf (
            R"({ "coldiron": "job 1", "guitar": { "scale_mm": 650, "strings": ["E2"], "parts": { "jack": { "jack": "mono" },
 "p": { "bridge_mm": 50, "pickup": { "shield": )"
            + shield + R"(, "inside": [["coil.finish",
 "shield"]], "coils": { "coil": { "dcr": "6k", "inductance": 2 } } } } },
 "wires": [["p.coil.start", "jack.tip"], [")"
            + wire + R"(", "ground"], ["strings", "ground"]] } })");
    };
    CHECK (with ("true", "p.shield").empty());
    CHECK (has (with ("false", "p.coil.finish"), 3, { "no lead \"shield\"" }));
    CHECK (has (with ("true", "p.coil.finish"), 4, { "p.coil.finish", "joined to the braid", "\"p.shield\"" }));
}
}
