// What a move by hand comes to. Each verdict rests on the wiring alone; the level and peak on a closed form.

#include "analysis/HandCheck.h"
#include "job/Job.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>

namespace handCheckTest
{
using namespace coldiron;

namespace
{
Job jobOn (const std::string& guitar, const std::string& setting = "{}")
{
    Diagnostics diagnostics;
    const std::string text = R"({ "coldiron": "job 1", "title": "Test", "guitar": )" + guitar
                             + R"(, "recording": { "cable": "500p", "input": { "resistance": "1M", "capacitance": 0 } },
                                   "options": { "A": { "name": "As it is", "setting": )"
                             + setting + " } } }";
    auto job = readJobText (text, {}, PresetFolders::standard(), diagnostics);
    for (const auto& fault : diagnostics)
        UNSCOPED_INFO (fault.text());
    REQUIRE (job.has_value());
    return *job;
}

HandCheck checkOf (const Job& job) { return HandCheck (job.optionConfig (job.options.front())); }

using Kind = HandVerdict::Kind;
using At = std::vector<SwitchPositions>;

const std::string fourKnobs = "\"two-humbuckers-four-knobs\"";
}

TEST_CASE ("useless and harmful moves are told before the iron is hot", "[hand]")
{
    const auto job = jobOn (fourKnobs, R"({ "selector": "bridge" })");
    const auto check = checkOf (job);

    const auto dead = check.check ({ "selector.out", "jack.tip", "" });
    CHECK (dead.kind == Kind::bad);
    CHECK (dead.silent.kind == SwitchSettings::Kind::all);
    CHECK (dead.sound == HandVerdict::Sound::none);

    const auto shorted = check.check ({ "selector.neck", "", "ground" });
    CHECK (shorted.kind == Kind::bad);
    CHECK (shorted.shorted.positions == At { { { "selector", "neck" } }, { { "selector", "both" } } });
    CHECK (shorted.silent.kind == SwitchSettings::Kind::none);

    const auto half = check.check ({ "neck-volume.2", "selector.neck", "" });
    CHECK (half.kind == Kind::bad);
    CHECK (half.silent.positions == At { { { "selector", "neck" } } });

    const auto floating = check.check ({ "jack.sleeve", "bridge-tone.case", "" });
    CHECK (floating.kind == Kind::bad);
    REQUIRE (floating.floating.size() == 2);
    CHECK (floating.floating[0].kind == TouchedMetal::Kind::potCase);
    CHECK (floating.floating[0].part == "bridge-tone");
    CHECK (floating.floating[1].kind == TouchedMetal::Kind::strings);
    CHECK (floating.live.empty());

    const auto strings = check.check ({ "bridge-tone.case", "strings", "" });
    REQUIRE (strings.floating.size() == 1);
    CHECK (strings.floating[0].kind == TouchedMetal::Kind::strings);

    const auto deaf = check.check ({ "bridge-cap.2", "bridge-tone.case", "" });
    CHECK (deaf.kind == Kind::bad);
    CHECK (deaf.uselessKnobs == std::vector<std::string> { "bridge-tone" });

    const auto same = check.check ({ "bridge-volume.3", "", "bridge-tone.1" });
    CHECK (same.kind == Kind::nothing);
    CHECK (same.nothing == HandVerdict::Nothing::joinedAlready);
    const auto moved = check.check ({ "bridge.shield", "bridge-volume.case", "bridge-volume.1" });
    CHECK (moved.kind == Kind::nothing);
    CHECK (moved.nothing == HandVerdict::Nothing::sameJoints);
    const auto back = check.check ({ "bridge-volume.2", "selector.bridge", "selector.bridge" });
    CHECK (back.kind == Kind::nothing);
    CHECK (back.nothing == HandVerdict::Nothing::backWhereItWas);

    const auto looped = check.check ({ "jack.tip", "", "jack.tip" });
    CHECK (looped.kind == Kind::refused);
    CHECK (looped.refusal.value().reason == HandRefusal::Reason::toItself);
    CHECK (check.check ({ "jack.tip", "bridge-tone.2", "" }).kind == Kind::refused); // no such wire
}

TEST_CASE ("a position that is silent whatever the other switches do is named alone", "[hand]")
{
    const auto job = jobOn (fourKnobs);
    Step fit;
    fit.kind = Step::Kind::fit;
    fit.part = "pull";
    SwitchType type;
    type.points = { "a", "b" };
    type.positions = { { "down", {} }, { "up", { { "a", "b" } } } };
    fit.as = Part { "pull", SwitchPart { type, "", "" }, "", "" };
    auto side = job.optionConfig (job.options.front());
    side.harness = applyStep (side.harness, fit);
    const auto verdict = HandCheck (side).check ({ "bridge-volume.2", "selector.bridge", "" });
    CHECK (verdict.silent.positions == At { { { "selector", "bridge" } } });
}

TEST_CASE ("a joint inside a pickup cannot be reached by hand", "[hand]")
{
    const auto job = jobOn ("\"two-humbuckers-two-lead\"");
    const auto check = checkOf (job);
    std::string inside;
    for (const auto& part : check.harness().parts())
        if (const auto* pickup = part.as<PickupPart>(); pickup != nullptr && ! pickup->pickup.inside.empty())
            inside = part.name + "." + pickup->pickup.inside.front()[0];
    REQUIRE_FALSE (inside.empty());
    const auto verdict = check.check ({ "jack.tip", "", inside });
    CHECK (verdict.kind == Kind::refused);
    CHECK (verdict.refusal.value().reason == HandRefusal::Reason::inside);
    CHECK (verdict.refusal->detail == inside);
    CHECK (jointsAt (check.harness(), inside).empty());
    const auto lit = check.targets ({ "jack.tip", "", "" });
    CHECK (std::find (lit.begin(), lit.end(), inside) == lit.end());
    CHECK (lit.size() > 5);
}

TEST_CASE ("level and peak of a lifted tone are those of the closed form", "[hand]")
{
    // Second-order low-pass, closed form: H = 1/(g + s(L/Rp + RC) + s^2 LC), g = 1 + R/Rp, peak at
    // f0 sqrt(1 - 1/(2Q^2)), f0 = sqrt(g/LC)/2pi, Q = sqrt(g L C)/(L/Rp + RC).
    const std::string one = R"({ "scale_mm": 648, "strings": ["E2","A2","D3","G3","B3","E4"],
        "parts": { "bridge": { "pickup": { "coils": { "coil": { "dcr": "6k", "inductance": 2.5, "capacitance": "110p" } } }, "bridge_mm": 44 },
                   "volume": { "pot": "500k" }, "tone": { "pot": "500k" }, "cap": { "capacitor": "22n" }, "jack": { "jack": "mono" } },
        "wires": [ ["bridge.coil.start", "volume.3", "tone.1"], ["bridge.coil.finish", "volume.case", "ground"], ["volume.1", "volume.case"],
                   ["volume.2", "jack.tip"], ["tone.2", "cap.1"], ["cap.2", "tone.case", "ground"], ["strings", "tone.case"] ] })";
    const auto job = jobOn (one);
    const auto check = checkOf (job);
    const auto lifted = check.check ({ "volume.3", "tone.1", "" });
    REQUIRE (lifted.peakHz.has_value());
    const double R = 6e3, L = 2.5, C = 610e-12, Rp = 1.0 / (1.0 / 500e3 + 1.0 / 1e6), g = 1.0 + R / Rp;
    const double f0 = std::sqrt (g / (L * C)) / (2.0 * M_PI), Q = std::sqrt (g * L * C) / (L / Rp + R * C);
    CHECK (*lifted.peakHz == Approx (f0 * std::sqrt (1.0 - 1.0 / (2.0 * Q * Q))).epsilon (2e-4));
    REQUIRE (lifted.levelDb.has_value());
    CHECK (*lifted.levelDb > 0.3); // a load less
    CHECK (*lifted.levelDb < 3.0);
    CHECK (lifted.uselessKnobs == std::vector<std::string> { "tone" });
}

TEST_CASE ("a coil shorted by hand hums and rings higher", "[hand]")
{
    // Coils wound and magnetised opposite cancel hum, one alone does not; less inductance resonates higher: closed forms.
    const auto job = jobOn (fourKnobs, R"({ "selector": "bridge" })");
    const auto check = checkOf (job);
    const auto split = check.check ({ "bridge.north.finish", "", "bridge-volume.case" });
    CHECK (split.kind == Kind::heard);
    REQUIRE (split.humPlayingDb.has_value());
    CHECK (humKind (*split.humPlayingDb) == HumKind::like);
    REQUIRE (split.peakHz.has_value());
    const auto back = checkOf (job).check ({ "bridge-tone.1", "bridge-volume.3", "bridge-volume.2" });
    REQUIRE (back.peakHz.has_value());
    CHECK (*split.peakHz > 1.2 * *back.peakHz);
    CHECK (back.kind == Kind::heard);
}

TEST_CASE ("joints at a point are those that the iron can open there", "[hand]")
{
    const auto job = jobOn (fourKnobs);
    const auto& harness = job.guitar.harness;
    const auto atThree = jointsAt (harness, "bridge-volume.3");
    REQUIRE (atThree.size() == 2);
    CHECK (atThree[0].held == "bridge.north.start");
    CHECK (atThree[1].held == "bridge-tone.1");
    REQUIRE (jointsAt (harness, "bridge.north.finish").size() == 1);
    CHECK (jointsAt (harness, "bridge.north.finish")[0].from == "bridge.south.finish");
    for (const auto& point : harness.allPoints())
        for (const auto& joint : jointsAt (harness, point))
            CHECK_NOTHROW (applyStep (harness, HandMove { joint.held, joint.from, "" }));
}
}
