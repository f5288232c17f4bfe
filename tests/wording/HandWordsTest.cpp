#include "wording/HandWords.h"
#include "job/Job.h"
#include "wording/PartWords.h"

#include <catch2/catch.hpp>

namespace handWordsTest
{
using namespace coldiron;
using namespace coldiron::wording;
using Kind = HandVerdict::Kind;
using Sound = HandVerdict::Sound;

namespace
{
Harness harnessOf (const std::string& guitar)
{
    Diagnostics diagnostics;
    const std::string text = R"({ "coldiron": "job 1", "title": "Test", "guitar": ")" + guitar + "\" }";
    const auto job = readJobText (text, {}, PresetFolders::standard(), diagnostics);
    REQUIRE (job.has_value());
    return job->guitar.harness;
}

HandVerdict verdictOf (Kind kind)
{
    HandVerdict verdict;
    verdict.kind = kind;
    return verdict;
}

std::string said (const HandVerdict& verdict) { return handVerdict (verdict, harnessOf ("two-humbuckers-four-knobs")); }
}

TEST_CASE ("points, parts and values as a person reads them")
{
    const auto harness = harnessOf ("two-humbuckers-four-knobs");
    CHECK (point (harness, "bridge-volume.2") == "Bridge volume, lug 2");
    CHECK (point (harness, "bridge-volume.case") == "Bridge volume, case");
    CHECK (point (harness, "bridge-cap.1") == "Bridge cap, leg 1");
    CHECK (point (harness, "neck.north.start") == "Neck pickup, north start");
    CHECK (point (harness, "strings") == "Strings, at the bridge");
    CHECK (point (harness, "nowhere.1") == "nowhere.1");
    CHECK (partTitle (*harness.find ("neck")) == "Neck pickup");
    CHECK (partTitle (*harness.find ("neck-volume")) == "Neck volume");
    CHECK (pickupTitle ("bridge-pickup") == "Bridge pickup");
    CHECK (partValue (*harness.find ("bridge-cap")) == "22 nF");
    CHECK (partValue (*harness.find ("selector")).empty());
    CHECK (quantity (8200.0, "\xce\xa9") == "8.2 k\xce\xa9");
    CHECK (quantity (0.0, "F") == "0 F");
}

TEST_CASE ("a move that cannot be done or does nothing says so")
{
    const auto harness = harnessOf ("two-humbuckers-four-knobs");
    CHECK (handRefusal ({ HandRefusal::Reason::inside, "neck.north.start" }, harness)
           == "Neck pickup, north start is joined inside the pickup and cannot be reached");
    CHECK (handRefusal ({ HandRefusal::Reason::toItself, {} }, harness) == "A wire from a point to itself joins nothing");
    auto refused = verdictOf (Kind::refused);
    refused.refusal = HandRefusal { HandRefusal::Reason::wiring, "there is no wire between a and b" };
    CHECK (said (refused) == "there is no wire between a and b");

    auto nothing = verdictOf (Kind::nothing);
    CHECK (said (nothing) == "Nothing changes: the same points stay joined");
    nothing.nothing = HandVerdict::Nothing::joinedAlready;
    CHECK (said (nothing) == "Nothing changes: already joined");
    nothing.nothing = HandVerdict::Nothing::backWhereItWas;
    CHECK (said (nothing) == "Nothing changes: soldered back where it was");
}

TEST_CASE ("a harmful move says where and what")
{
    auto verdict = verdictOf (Kind::bad);
    verdict.shorted = { SwitchSettings::Kind::some, true, { { { "selector", "neck" } }, { { "selector", "both" } } } };
    CHECK (said (verdict) == "Shorts the output at neck and both");
    verdict.shorted = { SwitchSettings::Kind::all, true, {} };
    CHECK (said (verdict) == "Shorts the output in every position");
    verdict.shorted.hasSwitches = false;
    CHECK (said (verdict) == "Shorts the output");

    verdict = verdictOf (Kind::bad);
    verdict.silent = { SwitchSettings::Kind::all, true, {} };
    CHECK (said (verdict) == "No sound in any position");
    verdict.silent = { SwitchSettings::Kind::some,
                       true,
                       { { { "selector", "neck" }, { "neck-pull", "up", true } },
                         { { "selector", "middle-two" } },
                         { { "selector", "a" } },
                         { { "selector", "b" } } } };
    CHECK (said (verdict) == "No sound at neck, neck pull up, middle two, a and 1 more");

    verdict = verdictOf (Kind::bad);
    verdict.live = { { TouchedMetal::Kind::pickupShield, "neck" } };
    verdict.floating = { { TouchedMetal::Kind::potCase, "bridge-tone" }, { TouchedMetal::Kind::strings, "" } };
    verdict.uselessKnobs = { "neck-tone" };
    CHECK (said (verdict)
           == "Puts the signal on the neck pickup's shield: hums when touched; ground left off the bridge tone's case and the "
              "strings: will hum when touched; neck tone does nothing");
    verdict = verdictOf (Kind::bad);
    verdict.uselessKnobs = { "neck-tone", "bridge-tone" };
    CHECK (said (verdict) == "Neck tone and bridge tone do nothing");
}

TEST_CASE ("what a move does to the sound")
{
    auto verdict = verdictOf (Kind::heard);
    CHECK (said (verdict).empty());
    verdict.sound = Sound::silentAsSet;
    CHECK (said (verdict) == "Silent as it is set");
    verdict.sound = Sound::heardAgain;
    CHECK (said (verdict) == "Heard again as it is set");

    verdict.sound = Sound::changed;
    verdict.levelDb = 0.04;
    CHECK (said (verdict) == "No change as it is set");
    verdict.peakBeforeHz = 3100.0;
    verdict.peakHz = 3110.0;
    CHECK (said (verdict) == "No change as it is set");
    verdict.humPlayingDb = 0.0;
    CHECK (said (verdict) == "As loud, hums like a single coil");
    verdict.humPlayingDb.reset();
    verdict.levelDb = -1.26;
    verdict.peakHz = 2800.0;
    CHECK (said (verdict)
           == "\xe2\x88\x92"
              "1.3 dB, peak 3.1 kHz to 2.8 kHz");
    verdict.peakHz.reset();
    CHECK (said (verdict)
           == "\xe2\x88\x92"
              "1.3 dB, no peak left");
    verdict.levelDb = 2.0;
    verdict.peakBeforeHz.reset();
    verdict.peakHz = 4200.0;
    CHECK (said (verdict) == "+2.0 dB, peak at 4.2 kHz");
}
}
