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
        session.prepare (48000.0);
        REQUIRE (session.setJobText (R"({ "coldiron": "job 1", "title": "By hand", "guitar": "two-humbuckers-four-knobs",
            "options": { "A": { "name": "As it is", "setting": { "selector": "bridge" } },
                         "B": { "name": "Independent", "rewires": [ { "use": "independent-volumes", "pot": "bridge-volume" } ] } } })"));
        session.hear (heard);
        made = std::make_unique<MainWindow> (session, false);
        made->setSize (1200, 800);
        made->setVisible (true);
        made->showWiring (true);
    }
};

struct HandBench : Opened, WiringHands
{
    explicit HandBench (OptionId heard) : Opened (heard), WiringHands (*made) { REQUIRE (view != nullptr); }
    const Harness& harness (OptionId id) const { return session.job()->find (letterOf (id))->harness; }
};
}

TEST_CASE ("independent volumes by keys alone is the preset's wiring", "[wiring]")
{
    HandBench bench (asRecorded);
    const auto steps = bench.session.undoName();

    // The coil's lead, then the tone's wire, from lug 3 to lug 2; the first makes an option of Now.
    REQUIRE (bench.walkTo ("bridge-volume.3"));
    bench.press (U'u');
    REQUIRE (bench.view->hand().isHolding());
    CHECK (bench.view->hand().move().held == "bridge.north.start");
    bench.press (U's');
    bench.type ("bridge volume lug 2");
    CHECK (bench.view->hand().move().to == "bridge-volume.2");
    bench.press ("return");
    bench.waitUntilIdle();
    REQUIRE (bench.session.ids() == std::vector<OptionId> { OptionId::A, OptionId::B, OptionId::C });
    CHECK (bench.session.heard() == OptionId::C);

    REQUIRE (bench.walkTo ("bridge-volume.3"));
    bench.press (U'u');
    CHECK (bench.view->hand().move().held == "bridge-tone.1");
    REQUIRE (bench.walkTo ("bridge-volume.2"));
    CHECK (bench.view->hand().move().to == "bridge-volume.2");
    bench.press ("return");
    bench.waitUntilIdle();

    // Three are on lug 2 now; U goes through them to the selector's wire.
    REQUIRE (bench.walkTo ("bridge-volume.2"));
    bench.press (U'u');
    for (int i = 0; i < 4 && bench.view->hand().move().held != "selector.bridge"; ++i)
        bench.press (U'u');
    REQUIRE (bench.view->hand().move().held == "selector.bridge");
    CHECK (wording::handVerdict (bench.view->hand().verdict(), bench.view->hand().harness()).find ("o sound at")
           != std::string::npos); // let go here: off
    bench.press (U's');
    bench.type ("bridge volume lug 3");
    bench.press ("return");
    bench.waitUntilIdle();

    CHECK (bench.harness (OptionId::C).sameAs (bench.harness (OptionId::B)));
    REQUIRE (bench.session.rewires (OptionId::C).size() == 1);
    CHECK (bench.session.rewires (OptionId::C)[0].preset == "(in line)");
    for (int i = 0; i < 3; ++i)
    {
        CHECK (bench.session.undoName() == "Rewire C by hand");
        bench.press ("ctrl + Z");
    }
    CHECK (bench.session.undoName() == steps);
    CHECK (bench.session.ids() == std::vector<OptionId> { OptionId::A, OptionId::B });
}

TEST_CASE ("Escape puts back what is in the hand, and closes an empty one", "[wiring]")
{
    HandBench bench (OptionId::A);
    const auto before = bench.session.jobText();
    REQUIRE (bench.walkTo ("jack.tip"));
    bench.press (U'u');
    REQUIRE (bench.view->hand().isHolding());
    CHECK (wording::handVerdict (bench.view->hand().verdict(), bench.view->hand().harness()) == "No sound in any position");
    bench.press ("escape");
    CHECK_FALSE (bench.view->hand().isHolding());
    CHECK (bench.session.jobText() == before);
    bench.press ("escape");
    bench.runFor (50);
    bench.waitUntilIdle();
    CHECK (bench.view == nullptr);
}

TEST_CASE ("a wire's end is pulled to another lug, left off, and a new one drawn with the mouse", "[wiring]")
{
    HandBench bench (OptionId::A);
    const auto at = [&] (const char* point) { return bench.at (point); };
    const Harness start = bench.harness (OptionId::A);

    // Pull the tone's wire at the tone's lug 1 over to its lug 3: the tone's track and no wiper then.
    bench.drag (at ("bridge-tone.1"), at ("bridge-tone.3"));
    bench.waitUntilIdle();
    CHECK (
        bench.harness (OptionId::A).sameAs (applyStep (start, HandMove { "bridge-volume.3", "bridge-tone.1", "bridge-tone.3" })));
    REQUIRE (bench.session.undo());
    bench.waitUntilIdle();

    // Let go on paper: it is off.
    bench.drag (at ("bridge-tone.1"),
                bench.view->getLocalBounds().toFloat().getBottomRight() - juce::Point<float> (60.0f, 60.0f));
    bench.waitUntilIdle();
    CHECK (bench.harness (OptionId::A).sameAs (applyStep (start, HandMove { "bridge-volume.3", "bridge-tone.1", "" })));

    // Drawn out of the bare lug again.
    bench.drag (at ("bridge-tone.1"), at ("bridge-volume.3"));
    bench.waitUntilIdle();
    CHECK (bench.harness (OptionId::A).sameAs (start));
    CHECK (bench.session.rewires (OptionId::A).empty());

    // Let go where it was: nothing, and no step of undo.
    const auto name = bench.session.undoName();
    const auto text = bench.session.jobText();
    bench.drag (at ("bridge-tone.1"), at ("bridge-tone.1") + juce::Point<float> (6.0f, 2.0f));
    CHECK (bench.session.jobText() == text);
    CHECK (bench.session.undoName() == name);

    // The end nearer to the hand comes off when a wire is taken by its middle.
    bench.waitUntilIdle();
    const auto drawing = bench.view->hand().isReady();
    REQUIRE (drawing);
    bench.drag (at ("jack.tip"), at ("jack.sleeve"), false);
    CHECK (bench.view->hand().move().from == "jack.tip");
    CHECK (wording::handVerdict (bench.view->hand().verdict(), bench.view->hand().harness()).find ("in any position")
           != std::string::npos);
    CHECK_FALSE (bench.view->hand().targets().empty());
}

TEST_CASE ("a capacitor is fitted between two points and a part removed by keys", "[wiring]")
{
    HandBench bench (OptionId::A);
    const Harness start = bench.harness (OptionId::A);
    REQUIRE (bench.walkTo ("bridge-volume.3"));
    bench.press (U'p');
    bench.type ("1n");
    bench.press ("return");
    REQUIRE (bench.view->hand().holding() == WiringHand::Holding::part);
    REQUIRE (bench.walkTo ("bridge-volume.2"));
    bench.press ("return");
    bench.waitUntilIdle();
    const auto* part = bench.harness (OptionId::A).find ("cap-1");
    REQUIRE (part != nullptr);
    CHECK (part->as<CapacitorPart>()->farads == Approx (1e-9));
    CHECK (bench.harness (OptionId::A).landings().at ("cap-1.1").lug == "bridge-volume.3");
    CHECK (bench.harness (OptionId::A).landings().at ("cap-1.2").lug == "bridge-volume.2");

    REQUIRE (bench.walkTo ("cap-1.1"));
    bench.press ("delete");
    REQUIRE (bench.view->hand().holding() == WiringHand::Holding::removal);
    bench.press ("return");
    bench.waitUntilIdle();
    CHECK (bench.harness (OptionId::A).sameAs (start));
    CHECK (bench.session.rewires (OptionId::A).empty());
}

TEST_CASE ("every point of the drawing can be reached by keys and is on screen", "[wiring]")
{
    HandBench bench (OptionId::A);
    std::set<std::string> reached;
    for (int i = 0; i < 120; ++i)
    {
        bench.press ("tab");
        reached.insert (bench.view->cursor());
        CHECK (bench.view->getLocalBounds().toFloat().contains (bench.view->placeOf (bench.view->cursor())));
    }
    CHECK (reached.size() == bench.harness (OptionId::A).allPoints().size());
    CHECK (reached.count ("strings") == 1);
    REQUIRE (bench.walkTo ("bridge-volume.2"));
    bench.press ("cursor left");
    CHECK (bench.view->cursor() == "bridge-volume.3");
    bench.press ("cursor right");
    CHECK (bench.view->cursor() == "bridge-volume.2");
}

TEST_CASE ("no words of the wiring view are cut off while something is in the hand", "[wiring]")
{
    HandBench bench (OptionId::A);
    for (const int width : { 900, 1200 })
    {
        INFO (width);
        bench.window.setSize (width, width == 900 ? 600 : 800);
        juce::Image image (juce::Image::ARGB, width, 800, true);
        juce::StringArray shortened;
        const auto paint = [&]
        {
            juce::Graphics g (image);
            type::cutOff = &shortened;
            bench.view->paintEntireComponent (g, true);
            type::cutOff = nullptr;
        };
        paint();
        REQUIRE (bench.walkTo ("bridge-volume.3"));
        paint();
        bench.press (U'u');
        REQUIRE (bench.view->hand().isHolding());
        paint();
        bench.press ("escape");
        bench.drag (bench.at ("bridge-tone.1"), bench.at ("bridge-tone.3"), false);
        REQUIRE (bench.view->hand().isHolding());
        paint();
        bench.press ("escape");
        CHECK (shortened.joinIntoString ("; ").toStdString() == "");
    }
}
}
