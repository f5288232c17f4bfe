// Rewiring by hand: the result is an option like any other, and what is heard is the edited harness.
#include "Sessions.h"

#include "session/HandRewire.h"

#include <catch2/catch.hpp>

namespace handRewireTest
{
using namespace coldiron;
using namespace sessions;

namespace
{
Harness stepped (Harness harness, const std::vector<std::pair<Step::Kind, std::vector<PointName>>>& list)
{
    for (const auto& [kind, points] : list)
    {
        Step step;
        step.kind = kind;
        step.points = points;
        if (kind == Step::Kind::remove)
            step.part = points[0].text();
        harness = applyStep (harness, step);
    }
    return harness;
}

constexpr auto off = Step::Kind::unsolder, on = Step::Kind::solder;

const Harness& harnessOf (const Session& session, OptionId id) { return session.jobEditor.job()->find (letterOf (id))->harness; }
size_t rewiresOf (const Session& session, OptionId id) { return session.options.rewires (id).size(); }
}

TEST_CASE ("steps by hand gather in one rewire, each a step of undo")
{
    Session session (shippedPresets());
    REQUIRE (session.jobEditor.setText (twoOptions));
    const Harness start = harnessOf (session, OptionId::C);

    const auto first = stepped (start, { { off, { "bridge-tone.1", "bridge-volume.3" } } });
    const auto done = rewireByHand (session.jobEditor, OptionId::C, first);
    REQUIRE (done.done);
    CHECK (done.option == OptionId::C);
    CHECK_FALSE (done.isNew);
    CHECK (rewiresOf (session, OptionId::C) == 2);
    CHECK (harnessOf (session, OptionId::C).sameAs (first));
    CHECK (session.jobEditor.undoName() == "Rewire C by hand");

    const auto second = stepped (first, { { on, { "bridge-tone.1", "bridge-volume.2" } } });
    REQUIRE (rewireByHand (session.jobEditor, OptionId::C, second).done);
    CHECK (rewiresOf (session, OptionId::C) == 2);
    CHECK (harnessOf (session, OptionId::C).sameAs (second));

    REQUIRE (session.jobEditor.undo());
    CHECK (harnessOf (session, OptionId::C).sameAs (first));
    REQUIRE (session.jobEditor.redo());

    // Put back by hand: no rewire is left of it.
    REQUIRE (rewireByHand (session.jobEditor, OptionId::C, start).done);
    CHECK (rewiresOf (session, OptionId::C) == 1);
    CHECK (harnessOf (session, OptionId::C).sameAs (start));
}

TEST_CASE ("a rewire put on later stays, and by hand moves behind it")
{
    Session session (shippedPresets());
    REQUIRE (session.jobEditor.setText (twoOptions));
    REQUIRE (rewireByHand (session.jobEditor, OptionId::A,
                           stepped (harnessOf (session, OptionId::A), { { off, { "neck-volume.2", "selector.neck" } } }))
                 .done);
    auto choices = session.options.rewires (OptionId::A);
    choices.push_back ({ "series-parallel", { { "pickup", "bridge" }, { "pot", "bridge-volume" } } });
    REQUIRE (session.options.setRewires (OptionId::A, choices));
    const auto wanted = stepped (harnessOf (session, OptionId::A), { { on, { "neck-volume.3", "selector.neck" } } });
    REQUIRE (rewireByHand (session.jobEditor, OptionId::A, wanted).done);
    CHECK (harnessOf (session, OptionId::A).sameAs (wanted));
    REQUIRE (rewiresOf (session, OptionId::A) == 2);
    CHECK (session.options.rewires (OptionId::A)[0].preset == "series-parallel");
    CHECK (session.options.rewires (OptionId::A)[1].preset == "(in line)");
}

TEST_CASE ("as recorded and the agreed option stay, and a new option is made")
{
    Session session (shippedPresets());
    REQUIRE (session.jobEditor.setText (twoOptions));
    const Harness guitar = session.jobEditor.job()->guitar.harness;
    const auto wanted = stepped (guitar, { { off, { "neck-cap.1", "neck-tone.2" } } });
    const auto made = rewireByHand (session.jobEditor, asRecorded, wanted);
    REQUIRE (made.done);
    CHECK (made.isNew);
    CHECK (made.option == OptionId::B);
    CHECK (made.words == "Now stays as it came in. This is option B.");
    CHECK (session.jobEditor.job()->guitar.harness.sameAs (guitar));
    CHECK (harnessOf (session, OptionId::B).sameAs (wanted));
    REQUIRE (session.jobEditor.undo());
    CHECK (session.options.ids() == std::vector<OptionId> { OptionId::A, OptionId::C });

    REQUIRE (session.jobEditor.edit ("/agreed", "\"C\"", "Agree on C"));
    CHECK_FALSE (mayBeRewired (session.jobEditor, OptionId::C));
    CHECK (mayBeRewired (session.jobEditor, OptionId::A));
    const Harness agreed = harnessOf (session, OptionId::C);
    const auto beside =
        rewireByHand (session.jobEditor, OptionId::C, stepped (agreed, { { off, { "neck-cap.1", "neck-tone.2" } } }));
    REQUIRE (beside.done);
    CHECK (beside.isNew);
    CHECK (harnessOf (session, OptionId::C).sameAs (agreed));
    CHECK_FALSE (harnessOf (session, beside.option).sameAs (agreed));
    CHECK (session.options.rewires (beside.option).size() == 2);

    while (session.options.add ("more") != asRecorded) {}
    const auto full = rewireByHand (session.jobEditor, asRecorded, wanted);
    CHECK_FALSE (full.done);
    CHECK (full.words.find ("eight") != std::string::npos);
}

TEST_CASE ("a part is fitted and removed by hand, and its knob's setting goes with it")
{
    Session session (shippedPresets());
    REQUIRE (session.jobEditor.setText (twoOptions));
    Step fit;
    fit.kind = Step::Kind::fit;
    fit.part = "bleed";
    Part part { "bleed", CapacitorPart { 1e-9 }, "", "" };
    fit.as = part;
    auto wanted = applyStep (harnessOf (session, OptionId::A), fit);
    wanted = stepped (wanted, { { on, { "bleed.1", "bridge-volume.2" } }, { on, { "bleed.2", "bridge-volume.3" } } });
    REQUIRE (rewireByHand (session.jobEditor, OptionId::A, wanted).done);
    CHECK (harnessOf (session, OptionId::A).sameAs (wanted));

    session.controls.setKnob (OptionId::A, "bridge-tone", 4.0);
    wanted = stepped (wanted, { { Step::Kind::remove, { "bridge-tone" } } });
    REQUIRE (rewireByHand (session.jobEditor, OptionId::A, wanted).done);
    CHECK (harnessOf (session, OptionId::A).find ("bridge-tone") == nullptr);
    CHECK (harnessOf (session, OptionId::A).find ("bleed") != nullptr);
}

TEST_CASE ("what is heard after a step by hand is the edited harness")
{
    Session session (shippedPresets());
    REQUIRE (session.jobEditor.setText (twoOptions));
    session.monitor.hear (OptionId::A);
    session.audio.prepare (48000.0);
    const auto x = noise (48000);
    const auto before = offline (session, OptionId::A, 48000.0, x);
    // The bridge pickup's south coil is shorted: a wire from the middle joint to ground.
    const auto wanted = stepped (harnessOf (session, OptionId::A), { { on, { "bridge.north.finish", "bridge-volume.case" } } });
    REQUIRE (rewireByHand (session.jobEditor, OptionId::A, wanted).done);
    REQUIRE (session.waitUntilIdle (5.0));
    session.audio.prepare (48000.0);
    const auto heard = played (session, x);
    CHECK (residualDb (heard, offline (session, OptionId::A, 48000.0, x)) < -90.0);
    CHECK (residualDb (heard, before) > -30.0);

    // The same by the functions alone, from the harness that was asked for.
    const auto job = session.jobEditor.job();
    CircuitConfig config = job->optionConfig (*job->find ("A"));
    config.harness = wanted;
    const GuitarResponse recorded = job->recordedConfig (-1).response(), edited = config.response();
    const TransferFunction transfer (recorded, edited);
    const auto report = [&]
    {
        REQUIRE (session.waitUntilReported (30.0));
        return session.reports.report (OptionId::A);
    }();
    for (size_t i = 0; i < report->curve.hz.size(); i += 20)
        CHECK (report->curve.changeDb[i] == Approx (20.0 * std::log10 (transfer.gain (report->curve.hz[i]))).margin (1e-6));
}
}
