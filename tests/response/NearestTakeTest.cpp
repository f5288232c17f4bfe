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

using Names = std::vector<std::string>;

TEST_CASE ("the take of the same coils is the nearest")
{
    const std::vector<CircuitConfig> takes { at (apart(), "bridge"), at (apart(), "neck"), at (apart(), "both") };
    const auto neck = nearestTake (takes, at (apart(), "neck"));
    CHECK (neck.take == 1);
    CHECK (neck.pickups == Names { "neck" });
    CHECK (neck.confidence.playing == Similarity::sameCoils);
    CHECK (neck.surer.kind == SurerTake::Kind::none);
    CHECK (nearestTake (takes, at (apart(), "bridge")).take == 0);
    const auto both = nearestTake (takes, at (apart(), "both"));
    CHECK (both.take == 2);
    CHECK (both.pickups == Names { "neck", "bridge" });
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
    CHECK (choice.surer.kind == SurerTake::Kind::otherTake);
    CHECK (choice.surer.take == 1);
    CHECK (choice.surer.pickups == Names { "neck" });
    CHECK (choice.surer.playing == Similarity::sameCoils);
    CHECK (nearestTake (takes, at (apart(), "neck"), 7).take == 1); // there is no such take: as if nothing were said
}

TEST_CASE ("one take per pickup is suggested where it would help")
{
    const std::vector<CircuitConfig> takes { at (apart(), "bridge") };
    const auto neck = nearestTake (takes, at (apart(), "neck")).surer;
    CHECK (neck.kind == SurerTake::Kind::recordAnother);
    CHECK (neck.pickups == Names { "neck" });
    CHECK (nearestTake (takes, at (apart(), "bridge")).surer.kind == SurerTake::Kind::none);
    const auto both = nearestTake (takes, at (reversedNeck(), "both")).surer;
    CHECK (both.kind == SurerTake::Kind::recordAnother);
    CHECK (both.pickups == Names { "neck", "bridge" });
    // With a take of each there is nothing left to record.
    CHECK (nearestTake ({ at (apart(), "bridge"), at (apart(), "neck") }, at (reversedNeck(), "both")).surer.kind
           == SurerTake::Kind::none);
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
