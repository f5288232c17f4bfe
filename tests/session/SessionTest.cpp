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

TEST_CASE ("a job opens, and its options, controls and settings are there")
{
    Session session (shippedPresets());
    REQUIRE (session.jobEditor.setText (twoOptions));
    CHECK (session.jobEditor.job()->title == "Two options");
    CHECK (session.options.ids() == std::vector<OptionId> { OptionId::A, OptionId::C });
    CHECK (session.controls.setting (OptionId::A).levers.at ("selector") == "bridge");
    CHECK (session.controls.setting (OptionId::C).levers.at ("bridge-volume-pull") == "up");

    // The push-pull is the rewire's: option A has none, and the guitar's own controls keep the first places.
    const auto plain = session.controls.of (OptionId::A), rewired = session.controls.of (OptionId::C);
    CHECK (rewired.size() == plain.size() + 1);
    for (const PanelControl& control : plain)
        for (const PanelControl& same : rewired)
            if (control.name == same.name)
                CHECK (control.place == same.place);
}

TEST_CASE ("a broken text changes nothing and says why")
{
    Session session (shippedPresets());
    REQUIRE (session.jobEditor.setText (twoOptions));
    const std::string before = session.jobEditor.text();
    for (const char* broken : { "", "{", "{}", "[1,2]", R"({ "coldiron": "job 1", "guitar": "no-such-guitar" })" })
    {
        CHECK_FALSE (session.jobEditor.setText (broken));
        CHECK_FALSE (session.diagnostics().empty());
        CHECK (session.jobEditor.text() == before);
    }
    CHECK_FALSE (session.jobEditor.edit ("/options/A/setting/no-such-knob", "3", ""));
    CHECK_FALSE (session.jobEditor.edit ("/options/A/name", "{", ""));
    CHECK (session.jobEditor.text() == before);
    CHECK (session.options.rename (OptionId::A, "Still works"));
    CHECK (session.diagnostics().empty());
}

TEST_CASE ("edits of the job can be undone and redone")
{
    Session session (shippedPresets());
    REQUIRE (session.jobEditor.setText (twoOptions));
    const std::string before = session.jobEditor.text();

    const OptionId added = session.options.add ("Neck");
    CHECK (added == OptionId::B);
    CHECK (session.jobEditor.undoName() == "Add option B");
    CHECK (session.options.setRewires (added, { { "series-parallel", { { "pickup", "neck" }, { "pot", "neck-volume" } } } }));
    CHECK (session.options.rewires (added).size() == 1);
    CHECK (session.options.move (added, 0));
    CHECK (session.options.ids() == std::vector<OptionId> { OptionId::B, OptionId::A, OptionId::C });
    CHECK (session.options.rename (added, "Neck in parallel"));
    CHECK (session.options.duplicate (added) == OptionId::D);
    CHECK (session.options.remove (OptionId::C));
    const std::string after = session.jobEditor.text();

    for (int i = 0; i < 6; ++i)
        CHECK (session.jobEditor.undo());
    // The first step put the text itself in place.
    CHECK (parseJobTree (session.jobEditor.text()) == parseJobTree (before));
    for (int i = 0; i < 6; ++i)
        CHECK (session.jobEditor.redo());
    CHECK_FALSE (session.jobEditor.redo());
    CHECK (session.jobEditor.text() == after);

    const auto refusal =
        session.options.whyNot (added, { "series-parallel", { { "pickup", "nobody" }, { "pot", "neck-volume" } } });
    CHECK_FALSE (refusal.empty());
}

TEST_CASE ("a turn of a knob is one step of undo, however many moves it had")
{
    Session session (shippedPresets());
    REQUIRE (session.jobEditor.setText (twoOptions));
    const std::string name = session.jobEditor.undoName();
    session.controls.beginGesture (OptionId::A, "bridge-tone");
    for (double value : { 9.0, 7.5, 4.2 })
        session.controls.setKnob (OptionId::A, "bridge-tone", value);
    session.controls.endGesture (OptionId::A, "bridge-tone");
    CHECK (session.controls.setting (OptionId::A).knob ("bridge-tone") == Approx (4.2));
    CHECK (session.jobEditor.undoName() == "Turn bridge-tone");
    CHECK (session.jobEditor.text().find ("4.2") != std::string::npos);
    REQUIRE (session.jobEditor.undo());
    CHECK (session.controls.setting (OptionId::A).knob ("bridge-tone") == 10.0);
    CHECK (session.jobEditor.undoName() == name);
    REQUIRE (session.jobEditor.redo());
    CHECK (session.controls.setting (OptionId::A).knob ("bridge-tone") == Approx (4.2));
}

TEST_CASE ("what is heard is what the offline computation gives")
{
    for (double rate : { 44100.0, 96000.0 })
        for (OptionId id : { OptionId::A, OptionId::C })
        {
            Session session (shippedPresets());
            REQUIRE (session.jobEditor.setText (twoOptions));
            session.monitor.hear (id);
            session.audio.prepare (rate);
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
    REQUIRE (session.jobEditor.setText (twoOptions));
    session.monitor.hear (OptionId::C);
    session.audio.prepare (48000.0);
    const int place = session.controls.map().find ("bridge-tone")->place;

    double worst = 0.0, total = 0.0;
    const int rounds = 50;
    for (int i = 0; i < rounds; ++i)
    {
        const auto began = std::chrono::steady_clock::now();
        session.automation.hostMoved (ParameterKind::knob, place, 10.0 * (i % 10) / 10.0);
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
    REQUIRE (session.jobEditor.setText (twoOptions));
    session.audio.prepare (48000.0);
    REQUIRE (session.waitUntilReported (60.0));
    const auto now = session.reports.report (asRecorded), parallel = session.reports.report (OptionId::C);
    REQUIRE (now != nullptr);
    REQUIRE (parallel != nullptr);
    for (double db : now->curve.changeDb)
        REQUIRE (std::abs (db) < 1e-9);
    CHECK (parallel->curve.lowDb.size() == parallel->curve.hz.size());
    CHECK (parallel->complete);
    // What parallel takes away, the hot pickup's turns nearly give back against the neck's: matching adds the rest.
    CHECK (parallel->matchDb > 0.05);
    CHECK (parallel->figures.confidence.playing == Similarity::fair); // without a take: from the guitar at rest, its neck pickup

    session.monitor.hear (OptionId::C);
    session.monitor.setLevelMatched (true);
    REQUIRE (session.waitUntilIdle (5.0));
    const auto x = noise (48000);
    auto expected = offline (session, OptionId::C, 48000.0, x);
    for (float& sample : expected)
        sample *= static_cast<float> (std::pow (10.0, parallel->matchDb / 20.0));
    session.audio.prepare (48000.0);
    CHECK (residualDb (played (session, x), expected) < -90.0);

    session.reports.wantSweep (OptionId::C, "bridge-tone");
    for (int i = 0; i < 500 && session.reports.sweep().size() < 5; ++i)
        std::this_thread::sleep_for (std::chrono::milliseconds (10));
    REQUIRE (session.reports.sweep().size() == 5);
    CHECK (session.reports.sweep()[4].changeDb[200]
           < session.reports.sweep()[0].changeDb[200]); // the tone at 0 is darker than at 8
}
}
