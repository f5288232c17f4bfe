// The wiring view, rewired by hand: with the mouse, and by keys alone; the result is the preset rewire's wiring.

#include "WiringHands.h"
#include "session/HandRewire.h"
#include "session/Session.h"
#include "wording/HandWords.h"

#include <catch2/catch.hpp>

namespace wiringTest
{
using namespace coldiron;

namespace
{
/** A session with a window on it, as a base so that it is there before the hands. */
struct Opened
{
    Session session { PresetFolders { { std::filesystem::path (COLDIRON_SOURCE) / "presets" } } };
    std::unique_ptr<MainWindow> made;

    explicit Opened (OptionId heard)
    {
        session.audio.prepare (48000.0);
        REQUIRE (session.jobEditor.setText (R"({ "coldiron": "job 1", "title": "By hand", "guitar": "two-humbuckers-four-knobs",
            "options": { "A": { "name": "As it is", "setting": { "selector": "bridge" } },
                         "B": { "name": "Independent", "rewires": [ { "use": "independent-volumes", "pot": "bridge-volume" } ] } } })"));
        session.monitor.hear (heard);
        made = std::make_unique<MainWindow> (session, false);
        made->setSize (1200, 800);
        made->setVisible (true);
        made->sheets().showWiring (true);
    }
};

struct HandFixture : Opened, WiringHands
{
    explicit HandFixture (OptionId heard) : Opened (heard), WiringHands (*made) { REQUIRE (view != nullptr); }
    const Harness& harness (OptionId id) const { return session.jobEditor.job()->find (letterOf (id))->harness; }
};
}

TEST_CASE ("independent volumes by keys alone is the preset's wiring", "[wiring]")
{
    HandFixture fixture (asRecorded);
    const auto steps = fixture.session.jobEditor.undoName();

    // The coil's lead, then the tone's wire, from lug 3 to lug 2; the first makes an option of Now.
    REQUIRE (fixture.walkTo ("bridge-volume.3"));
    fixture.press (U'u');
    REQUIRE (fixture.view->hand().isHolding());
    CHECK (fixture.view->hand().move().held == "bridge.north.start");
    fixture.press (U's');
    fixture.type ("bridge volume lug 2");
    CHECK (fixture.view->hand().move().to == "bridge-volume.2");
    fixture.press ("return");
    fixture.waitUntilIdle();
    REQUIRE (fixture.session.options.ids() == std::vector<OptionId> { OptionId::A, OptionId::B, OptionId::C });
    CHECK (fixture.session.monitor.heard() == OptionId::C);

    REQUIRE (fixture.walkTo ("bridge-volume.3"));
    fixture.press (U'u');
    CHECK (fixture.view->hand().move().held == "bridge-tone.1");
    REQUIRE (fixture.walkTo ("bridge-volume.2"));
    CHECK (fixture.view->hand().move().to == "bridge-volume.2");
    fixture.press ("return");
    fixture.waitUntilIdle();

    // Three are on lug 2 now; U goes through them to the selector's wire.
    REQUIRE (fixture.walkTo ("bridge-volume.2"));
    fixture.press (U'u');
    for (int i = 0; i < 4 && fixture.view->hand().move().held != "selector.bridge"; ++i)
        fixture.press (U'u');
    REQUIRE (fixture.view->hand().move().held == "selector.bridge");
    CHECK (wording::handVerdict (fixture.view->hand().verdict(), fixture.view->hand().harness()).find ("o sound at")
           != std::string::npos); // let go here: off
    fixture.press (U's');
    fixture.type ("bridge volume lug 3");
    fixture.press ("return");
    fixture.waitUntilIdle();

    CHECK (fixture.harness (OptionId::C).sameAs (fixture.harness (OptionId::B)));
    REQUIRE (fixture.session.options.rewires (OptionId::C).size() == 1);
    CHECK (fixture.session.options.rewires (OptionId::C)[0].preset == "(in line)");
    for (int i = 0; i < 3; ++i)
    {
        CHECK (fixture.session.jobEditor.undoName() == "Rewire C by hand");
        fixture.press ("ctrl + Z");
    }
    CHECK (fixture.session.jobEditor.undoName() == steps);
    CHECK (fixture.session.options.ids() == std::vector<OptionId> { OptionId::A, OptionId::B });
}

TEST_CASE ("Escape puts back what is in the hand, and closes an empty one", "[wiring]")
{
    HandFixture fixture (OptionId::A);
    const auto before = fixture.session.jobEditor.text();
    REQUIRE (fixture.walkTo ("jack.tip"));
    fixture.press (U'u');
    REQUIRE (fixture.view->hand().isHolding());
    CHECK (wording::handVerdict (fixture.view->hand().verdict(), fixture.view->hand().harness()) == "No sound in any position");
    fixture.press ("escape");
    CHECK_FALSE (fixture.view->hand().isHolding());
    CHECK (fixture.session.jobEditor.text() == before);
    fixture.press ("escape");
    fixture.runFor (50);
    fixture.waitUntilIdle();
    CHECK (fixture.view == nullptr);
}

TEST_CASE ("a wire's end is pulled to another lug, left off, and a new one drawn with the mouse", "[wiring]")
{
    HandFixture fixture (OptionId::A);
    const auto at = [&] (const char* point) { return fixture.at (point); };
    const Harness start = fixture.harness (OptionId::A);

    // Pull the tone's wire at the tone's lug 1 over to its lug 3: the tone's track and no wiper then.
    fixture.drag (at ("bridge-tone.1"), at ("bridge-tone.3"));
    fixture.waitUntilIdle();
    CHECK (fixture.harness (OptionId::A)
               .sameAs (applyStep (start, HandMove { "bridge-volume.3", "bridge-tone.1", "bridge-tone.3" })));
    REQUIRE (fixture.session.jobEditor.undo());
    fixture.waitUntilIdle();

    // Let go on paper: it is off.
    fixture.drag (at ("bridge-tone.1"),
                  fixture.view->getLocalBounds().toFloat().getBottomRight() - juce::Point<float> (60.0f, 60.0f));
    fixture.waitUntilIdle();
    CHECK (fixture.harness (OptionId::A).sameAs (applyStep (start, HandMove { "bridge-volume.3", "bridge-tone.1", "" })));

    // Drawn out of the bare lug again.
    fixture.drag (at ("bridge-tone.1"), at ("bridge-volume.3"));
    fixture.waitUntilIdle();
    CHECK (fixture.harness (OptionId::A).sameAs (start));
    CHECK (fixture.session.options.rewires (OptionId::A).empty());

    // Let go where it was: nothing, and no step of undo.
    const auto name = fixture.session.jobEditor.undoName();
    const auto text = fixture.session.jobEditor.text();
    fixture.drag (at ("bridge-tone.1"), at ("bridge-tone.1") + juce::Point<float> (6.0f, 2.0f));
    CHECK (fixture.session.jobEditor.text() == text);
    CHECK (fixture.session.jobEditor.undoName() == name);

    // The end nearer to the hand comes off when a wire is taken by its middle.
    fixture.waitUntilIdle();
    const auto drawing = fixture.view->hand().isReady();
    REQUIRE (drawing);
    fixture.drag (at ("jack.tip"), at ("jack.sleeve"), false);
    CHECK (fixture.view->hand().move().from == "jack.tip");
    CHECK (wording::handVerdict (fixture.view->hand().verdict(), fixture.view->hand().harness()).find ("in any position")
           != std::string::npos);
    CHECK_FALSE (fixture.view->hand().targets().empty());
}

TEST_CASE ("a capacitor is fitted between two points and a part removed by keys", "[wiring]")
{
    HandFixture fixture (OptionId::A);
    const Harness start = fixture.harness (OptionId::A);
    REQUIRE (fixture.walkTo ("bridge-volume.3"));
    fixture.press (U'p');
    fixture.type ("1n");
    fixture.press ("return");
    REQUIRE (fixture.view->hand().holding() == WiringHand::Holding::part);
    REQUIRE (fixture.walkTo ("bridge-volume.2"));
    fixture.press ("return");
    fixture.waitUntilIdle();
    const auto* part = fixture.harness (OptionId::A).find ("cap-1");
    REQUIRE (part != nullptr);
    CHECK (part->as<CapacitorPart>()->farads == Approx (1e-9));
    CHECK (fixture.harness (OptionId::A).landings().at ("cap-1.1").lug == "bridge-volume.3");
    CHECK (fixture.harness (OptionId::A).landings().at ("cap-1.2").lug == "bridge-volume.2");

    REQUIRE (fixture.walkTo ("cap-1.1"));
    fixture.press ("delete");
    REQUIRE (fixture.view->hand().holding() == WiringHand::Holding::removal);
    fixture.press ("return");
    fixture.waitUntilIdle();
    CHECK (fixture.harness (OptionId::A).sameAs (start));
    CHECK (fixture.session.options.rewires (OptionId::A).empty());
}

TEST_CASE ("every point of the drawing can be reached by keys and is on screen", "[wiring]")
{
    HandFixture fixture (OptionId::A);
    std::set<std::string> reached;
    for (int i = 0; i < 120; ++i)
    {
        fixture.press ("tab");
        reached.insert (fixture.view->cursor());
        CHECK (fixture.view->getLocalBounds().toFloat().contains (fixture.view->placeOf (fixture.view->cursor())));
    }
    CHECK (reached.size() == fixture.harness (OptionId::A).allPoints().size());
    CHECK (reached.count ("strings") == 1);
    REQUIRE (fixture.walkTo ("bridge-volume.2"));
    fixture.press ("cursor left");
    CHECK (fixture.view->cursor() == "bridge-volume.3");
    fixture.press ("cursor right");
    CHECK (fixture.view->cursor() == "bridge-volume.2");
}

TEST_CASE ("no words of the wiring view are cut off while something is in the hand", "[wiring]")
{
    HandFixture fixture (OptionId::A);
    for (const int width : { 900, 1200 })
    {
        INFO (width);
        fixture.window.setSize (width, width == 900 ? 600 : 800);
        juce::Image image (juce::Image::ARGB, width, 800, true);
        juce::StringArray shortened;
        const auto paint = [&]
        {
            juce::Graphics g (image);
            type::cutOff = &shortened;
            fixture.view->paintEntireComponent (g, true);
            type::cutOff = nullptr;
        };
        paint();
        REQUIRE (fixture.walkTo ("bridge-volume.3"));
        paint();
        fixture.press (U'u');
        REQUIRE (fixture.view->hand().isHolding());
        paint();
        fixture.press ("escape");
        fixture.drag (fixture.at ("bridge-tone.1"), fixture.at ("bridge-tone.3"), false);
        REQUIRE (fixture.view->hand().isHolding());
        paint();
        fixture.press ("escape");
        CHECK (shortened.joinIntoString ("; ").toStdString() == "");
    }
}
}
