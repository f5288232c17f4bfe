// Which take an option is derived from. The marks are assessConfidence()'s; what is asked here is the choice among several takes.
#include "response/NearestTake.h"
#include "response/Responses.h"

#include <catch2/catch.hpp>

namespace nearestTakeTest
{
using namespace coldiron;
using namespace coldiron::support;

namespace
{
CircuitConfig at (const Harness& harness, const std::string& position)
{
    CircuitConfig config { harness, {}, {}, sixStrings() };
    config.setting.levers["selector"] = position;
    return config;
}
}

TEST_CASE ("the take of the same coils is the nearest")
{
    const std::vector<CircuitConfig> takes { at (apart(), "bridge"), at (apart(), "neck"), at (apart(), "both") };
    const auto neck = nearestTake (takes, at (apart(), "neck"));
    CHECK (neck.take == 1);
    CHECK (neck.words == "from take 2, neck alone: same coils");
    CHECK (neck.suggestion.empty());
    CHECK (nearestTake (takes, at (apart(), "bridge")).take == 0);
    const auto both = nearestTake (takes, at (apart(), "both"));
    CHECK (both.take == 2);
    CHECK (both.words == "from take 3, neck and bridge: same coils");
    CHECK_FALSE (both.isOwn);
}

TEST_CASE ("out of phase is derived from a take of one pickup")
{
    // The take of both comes first and would be rougher.
    const std::vector<CircuitConfig> takes { at (apart(), "both"), at (apart(), "bridge") };
    const auto choice = nearestTake (takes, at (reversedNeck(), "both"));
    CHECK (choice.take == 1);
    CHECK (choice.confidence.playing == Similarity::rough);
    CHECK_FALSE (choice.confidence.betweenOneAndBothOutOfPhase);
}

TEST_CASE ("an option's own take wins, and a surer one is suggested")
{
    const std::vector<CircuitConfig> takes { at (apart(), "bridge"), at (apart(), "neck") };
    const auto choice = nearestTake (takes, at (apart(), "neck"), 0);
    CHECK (choice.take == 0);
    CHECK (choice.isOwn);
    CHECK (choice.suggestion == "surer from take 2, neck alone: same coils");
    CHECK (nearestTake (takes, at (apart(), "neck"), 7).take == 1); // there is no such take: as if nothing were said
}

TEST_CASE ("one take per pickup is suggested where it would help")
{
    const std::vector<CircuitConfig> takes { at (apart(), "bridge") };
    CHECK (nearestTake (takes, at (apart(), "neck")).suggestion == "record a take of the neck pickup: this would be surer");
    CHECK (nearestTake (takes, at (apart(), "bridge")).suggestion.empty());
    CHECK (nearestTake (takes, at (reversedNeck(), "both")).suggestion.find ("one take per pickup (neck and bridge)")
           != std::string::npos);
    // With a take of each there is nothing left to record.
    CHECK (nearestTake ({ at (apart(), "bridge"), at (apart(), "neck") }, at (reversedNeck(), "both")).suggestion.empty());
    CHECK (nearestTake ({}, at (apart(), "neck")).take == -1);
}

TEST_CASE ("of two takes alike, the one that needs less lift of treble")
{
    auto dark = at (apart(), "bridge");
    dark.setting.knobs["bridge-tone"] = 0.0;
    const std::vector<CircuitConfig> takes { dark, at (apart(), "bridge") };
    CHECK (nearestTake (takes, at (apart(), "bridge")).take == 1);
    CHECK (nearestTake (takes, dark).take == 0);
}
}
