// The plugin without its host: the job in memory, edits, states, the newest setting in the engine.
#include "Sessions.h"
#include "support/WholeRender.h"

#include <catch2/catch.hpp>

#include <chrono>
#include <cstdio>
#include <thread>

namespace sessionTest
{
using namespace coldiron;
using namespace sessions;

TEST_CASE ("a job opens, and its options, controls and settings are on the bench")
{
    Session session (shippedPresets());
    REQUIRE (session.setJobText (twoOptions));
    CHECK (session.job()->title == "Two options");
    CHECK (session.ids() == std::vector<OptionId> { OptionId::A, OptionId::C });
    CHECK (session.setting (OptionId::A).levers.at ("selector") == "bridge");
    CHECK (session.setting (OptionId::C).levers.at ("bridge-volume-pull") == "up");

    // The push-pull is the rewire's: option A has none, and the guitar's own controls keep the first places.
    const auto plain = session.controls (OptionId::A), rewired = session.controls (OptionId::C);
    CHECK (rewired.size() == plain.size() + 1);
    for (const PanelControl& control : plain)
        for (const PanelControl& same : rewired)
            if (control.name == same.name)
                CHECK (control.place == same.place);
}

TEST_CASE ("a broken text changes nothing and says why")
{
    Session session (shippedPresets());
    REQUIRE (session.setJobText (twoOptions));
    const std::string before = session.jobText();
    for (const char* broken : { "", "{", "{}", "[1,2]", R"({ "coldiron": "job 1", "guitar": "no-such-guitar" })" })
    {
        CHECK_FALSE (session.setJobText (broken));
        CHECK_FALSE (session.diagnostics().empty());
        CHECK (session.jobText() == before);
    }
    CHECK_FALSE (session.edit ("/options/A/setting/no-such-knob", "3", ""));
    CHECK_FALSE (session.edit ("/options/A/name", "{", ""));
    CHECK (session.jobText() == before);
    CHECK (session.renameOption (OptionId::A, "Still works"));
    CHECK (session.diagnostics().empty());
}

TEST_CASE ("edits of the job can be undone and redone")
{
    Session session (shippedPresets());
    REQUIRE (session.setJobText (twoOptions));
    const std::string before = session.jobText();

    const OptionId added = session.addOption ("Neck");
    CHECK (added == OptionId::B);
    CHECK (session.undoName() == "Add option B");
    CHECK (session.setRewires (added, { { "series-parallel", { { "pickup", "neck" }, { "pot", "neck-volume" } } } }));
    CHECK (session.rewires (added).size() == 1);
    CHECK (session.moveOption (added, 0));
    CHECK (session.ids() == std::vector<OptionId> { OptionId::B, OptionId::A, OptionId::C });
    CHECK (session.renameOption (added, "Neck in parallel"));
    CHECK (session.duplicateOption (added) == OptionId::D);
    CHECK (session.removeOption (OptionId::C));
    const std::string after = session.jobText();

    for (int i = 0; i < 6; ++i)
        CHECK (session.undo());
    // The first step put the text itself in place.
    CHECK (parseJobTree (session.jobText()) == parseJobTree (before));
    for (int i = 0; i < 6; ++i)
        CHECK (session.redo());
    CHECK_FALSE (session.redo());
    CHECK (session.jobText() == after);

    const auto refusal = session.whyNot (added, { "series-parallel", { { "pickup", "nobody" }, { "pot", "neck-volume" } } });
    CHECK_FALSE (refusal.empty());
}

TEST_CASE ("a turn of a knob is one step of undo, however many moves it had")
{
    Session session (shippedPresets());
    REQUIRE (session.setJobText (twoOptions));
    const std::string name = session.undoName();
    session.beginGesture (OptionId::A, "bridge-tone");
    for (double value : { 9.0, 7.5, 4.2 })
        session.setKnob (OptionId::A, "bridge-tone", value);
    session.endGesture (OptionId::A, "bridge-tone");
    CHECK (session.setting (OptionId::A).knob ("bridge-tone") == Approx (4.2));
    CHECK (session.undoName() == "Turn bridge-tone");
    CHECK (session.jobText().find ("4.2") != std::string::npos);
    REQUIRE (session.undo());
    CHECK (session.setting (OptionId::A).knob ("bridge-tone") == 10.0);
    CHECK (session.undoName() == name);
    REQUIRE (session.redo());
    CHECK (session.setting (OptionId::A).knob ("bridge-tone") == Approx (4.2));
}

TEST_CASE ("what is heard is what the offline computation gives")
{
    for (double rate : { 44100.0, 96000.0 })
        for (OptionId id : { OptionId::A, OptionId::C })
        {
            Session session (shippedPresets());
            REQUIRE (session.setJobText (twoOptions));
            session.hear (id);
            session.prepare (rate);
            const auto x = noise (static_cast<size_t> (rate));
            CHECK (residualDb (played (session, x), offline (session, id, rate, x)) < -90.0);
            // The check can fail: the other option is far off.
            CHECK (residualDb (played (session, x), offline (session, id == OptionId::A ? OptionId::C : OptionId::A, rate, x))
                   > -60.0);
        }
}

TEST_CASE ("a knob moved on the audio thread is in the engine within 20 ms")
{
    Session session (shippedPresets());
    REQUIRE (session.setJobText (twoOptions));
    session.hear (OptionId::C);
    session.prepare (48000.0);
    const int place = session.controlMap().find ("bridge-tone")->place;

    double worst = 0.0, total = 0.0;
    const int rounds = 50;
    for (int i = 0; i < rounds; ++i)
    {
        const auto began = std::chrono::steady_clock::now();
        session.hostMoved (ParameterKind::knob, place, 10.0 * (i % 10) / 10.0);
        REQUIRE (session.waitUntilIdle (1.0));
        total += std::chrono::duration<double> (std::chrono::steady_clock::now() - began).count();
        worst = std::max (worst, session.designSeconds());
    }
    std::printf ("knob to engine: %.2f ms on average with waking, the slowest design %.2f ms\n", 1e3 * total / rounds,
                 1e3 * worst);
    CHECK (total / rounds < 0.020);
}

TEST_CASE ("reports carry curve, band and figures; matching adds what makes the option as loud")
{
    Session session (shippedPresets());
    REQUIRE (session.setJobText (twoOptions));
    session.prepare (48000.0);
    REQUIRE (session.waitUntilReported (60.0));
    const auto now = session.report (asRecorded), parallel = session.report (OptionId::C);
    REQUIRE (now != nullptr);
    REQUIRE (parallel != nullptr);
    for (double db : now->curve.changeDb)
        REQUIRE (std::abs (db) < 1e-9);
    CHECK (parallel->curve.lowDb.size() == parallel->curve.hz.size());
    CHECK (parallel->complete);
    // What parallel takes away, the hot pickup's turns nearly give back against the neck's: matching adds the rest.
    CHECK (parallel->matchDb > 0.05);
    CHECK (parallel->figures.confidence.playing == Similarity::fair); // without a take: from the guitar at rest, its neck pickup

    session.hear (OptionId::C);
    session.setLevelMatched (true);
    REQUIRE (session.waitUntilIdle (5.0));
    const auto x = noise (48000);
    auto expected = offline (session, OptionId::C, 48000.0, x);
    for (float& sample : expected)
        sample *= static_cast<float> (std::pow (10.0, parallel->matchDb / 20.0));
    session.prepare (48000.0);
    CHECK (residualDb (played (session, x), expected) < -90.0);

    session.wantSweep (OptionId::C, "bridge-tone");
    for (int i = 0; i < 500 && session.sweep().size() < 5; ++i)
        std::this_thread::sleep_for (std::chrono::milliseconds (10));
    REQUIRE (session.sweep().size() == 5);
    CHECK (session.sweep()[4].changeDb[200] < session.sweep()[0].changeDb[200]); // the tone at 0 is darker than at 8
}
}
