#include "analysis/BenchPlan.h"
#include "support/Catalogue.h"

#include <catch2/catch.hpp>

namespace benchPlanTest
{
using namespace coldiron;
using namespace coldiron::support;

TEST_CASE ("the steps of the bench turn every guitar of the catalogue into every rewire of it", "[bench]")
{
    int plans = 0, joints = 0;
    for (const auto& guitar : allGuitars (shipped().list ("guitars")))
        for (const auto& preset : shipped().list ("rewires"))
        {
            Diagnostics diagnostics;
            const auto info = readRewireInfo (preset, shipped(), diagnostics);
            REQUIRE (info.has_value());
            for (const auto& arguments : waysToFill (*info, guitar.harness, 2))
            {
                Diagnostics refused;
                const auto use = fillRewire (preset, arguments, guitar.harness, shipped(), refused);
                if (! use)
                    continue;
                const auto after = applyRewires (guitar.harness, { *use }, "catalogue", refused);
                if (! after)
                    continue;
                INFO (guitar.name << " with " << preset);
                const auto plan = planBench (guitar.harness, *after);
                CHECK (carriedOut (guitar.harness, plan).sameAs (*after));
                const auto back = planBench (*after, guitar.harness);
                CHECK (carriedOut (*after, back).sameAs (guitar.harness));

                std::set<std::string> heated;
                for (const auto& step : plan.steps)
                    if (step.kind == BenchStep::Kind::solder)
                    {
                        CHECK (heated.insert (step.at).second); // one lug, one heat
                        CHECK_FALSE (step.ends.empty());
                        CHECK (step.number == static_cast<int> (heated.size()));
                    }
                CHECK (plan.toMake == static_cast<int> (heated.size()));
                ++plans;
                joints += plan.toMake;
            }
        }
    CHECK (plans > 1000);
    CHECK (joints > 5000);
}
}
