// Judging blind on screen: nothing shown tells what is behind a number, the keyboard does it all, and agreeing asks for
// true level first.

#include "editor/MainWindow.h"
#include "session/Session.h"

#include <catch2/catch.hpp>

#include <filesystem>

namespace blindWindowTest
{
using namespace coldiron;

namespace
{
struct Fixture
{
    Session session { PresetFolders { { std::filesystem::path (COLDIRON_SOURCE) / "presets" } } };

    Fixture()
    {
        session.audio.prepare (48000.0);
        REQUIRE (session.jobEditor.setText (R"({ "coldiron": "job 1", "title": "Walnut", "guitar": "two-humbuckers-four-knobs",
            "options": { "A": { "name": "Bridge", "setting": { "selector": "bridge" } },
                         "B": { "name": "Neck", "setting": { "selector": "neck" } },
                         "C": { "name": "Both", "setting": { "selector": "both" } } } })"));
        REQUIRE (session.waitUntilReported (30.0));
    }
};

juce::KeyPress key (const char* words) { return juce::KeyPress::createFromDescription (words); }
void runFor (int milliseconds) { juce::MessageManager::getInstance()->runDispatchLoopUntil (milliseconds); }

juce::Image pictureOf (MainWindow& window)
{
    window.refresh();
    window.createComponentSnapshot (window.getLocalBounds(), true, 0.2f); // asks for the drawings
    window.settleDrawings (30.0);
    runFor (700); // the tags have turned
    window.refresh();
    return window.createComponentSnapshot (window.getLocalBounds(), true, 1.0f);
}

bool same (const juce::Image& a, const juce::Image& b)
{
    if (a.getBounds() != b.getBounds())
        return false;
    for (int y = 0; y < a.getHeight(); ++y)
        for (int x = 0; x < a.getWidth(); ++x)
            if (a.getPixelAt (x, y) != b.getPixelAt (x, y))
                return false;
    return true;
}

/** Words that did not fit, over the whole window. */
std::string cutOff (MainWindow& window)
{
    juce::Image image (juce::Image::ARGB, window.getWidth(), window.getHeight(), true);
    juce::Graphics g (image);
    juce::StringArray cut;
    type::cutOff = &cut;
    window.paintEntireComponent (g, true);
    type::cutOff = nullptr;
    return cut.joinIntoString ("; ").toStdString();
}

juce::Button* buttonNamed (juce::Component& parent, const juce::String& name)
{
    for (auto* child : parent.getChildren())
    {
        if (auto* button = dynamic_cast<juce::Button*> (child);
            button != nullptr && button->isVisible() && button->getName() == name)
            return button;
        if (auto* found = child->isVisible() ? buttonNamed (*child, name) : nullptr)
            return found;
    }
    return nullptr;
}
}

TEST_CASE ("whatever is behind a number, the window looks the same", "[blind]")
{
    Fixture fixture;
    fixture.session.monitor.hear (OptionId::B);
    MainWindow window (fixture.session, false);
    window.setSize (1200, 800);
    window.setVisible (true);
    runFor (100);
    window.settleDrawings (30.0);
    const auto faceUp = pictureOf (window);
    const auto blindPicture = [&] (uint64_t seed, int number)
    {
        REQUIRE (fixture.session.blindTest.startRanking ({ asRecorded, OptionId::A, OptionId::B, OptionId::C }, seed));
        window.beginBlind();
        fixture.session.blindTest.hear (number);
        fixture.session.waitUntilIdle (20.0);
        const auto picture = pictureOf (window);
        for (int each = 1; each <= 4; ++each)
            fixture.session.blindTest.rank (each, RankMove::down);
        const auto outcome = fixture.session.blindTest.reveal();
        REQUIRE (outcome);
        REQUIRE (fixture.session.jobEditor.undo());
        REQUIRE (fixture.session.waitUntilReported (30.0));
        return std::make_pair (picture, outcome->behind[static_cast<size_t> (number - 1)]);
    };
    const auto [first, behindFirst] = blindPicture (1, 1);
    CHECK_FALSE (same (first, faceUp));
    int others = 0;
    for (uint64_t seed = 2; seed < 8; ++seed)
    {
        const auto [picture, behind] = blindPicture (seed, 1);
        others += behind != behindFirst;
        CHECK (same (first, picture));
    }
    CHECK (others > 0);
    CHECK_FALSE (same (first, blindPicture (1, 2).first)); // the number heard does show
}

TEST_CASE ("a preference run goes by the keyboard", "[blind]")
{
    Fixture fixture;
    MainWindow window (fixture.session, false);
    window.setSize (1200, 800);
    CHECK (window.keyPressed (key ("ctrl + B")));
    REQUIRE (buttonNamed (window, "Rank them") != nullptr);
    CHECK (cutOff (window) == "");
    buttonNamed (window, "Rank them")->onClick();
    runFor (50);
    REQUIRE (fixture.session.blindTest.view().isRunning);
    CHECK (fixture.session.blindTest.view().versions == 4);
    CHECK (buttonNamed (window, "Rank them") == nullptr); // the sheet is gone
    CHECK (buttonNamed (window, "Turn over") != nullptr);

    const auto before = fixture.session.jobEditor.text();
    CHECK (window.keyPressed (key ("3")));
    CHECK (fixture.session.blindTest.view().heard == 3);
    CHECK (window.keyPressed (key ("B"))); // no letter is heard
    CHECK (window.keyPressed (key ("M")));
    CHECK (window.keyPressed (key ("W")));
    CHECK (window.keyPressed (key ("ctrl + Z")));
    CHECK (fixture.session.blindTest.view().heard == 3);
    CHECK (window.keyPressed (juce::KeyPress (juce::KeyPress::upKey)));
    CHECK (fixture.session.blindTest.view().places[2] == 0);
    CHECK (window.keyPressed (juce::KeyPress (juce::KeyPress::returnKey)));
    CHECK (fixture.session.blindTest.view().isRunning); // three are not ranked
    for (const char* number : { "1", "2", "4" })
    {
        window.keyPressed (key (number));
        window.keyPressed (juce::KeyPress (juce::KeyPress::downKey));
    }
    window.keyPressed (key ("="));
    CHECK (fixture.session.blindTest.view().tied[3]);
    CHECK (fixture.session.jobEditor.text() == before);
    CHECK (window.keyPressed (juce::KeyPress (juce::KeyPress::returnKey)));
    CHECK_FALSE (fixture.session.blindTest.view().isRunning);
    REQUIRE (fixture.session.jobEditor.job()->blind.size() == 1);
    CHECK (fixture.session.jobEditor.job()->blind.front().ranking.size() == 3);
    CHECK (fixture.session.jobEditor.job()->blind.front().date.size() == 10);
    REQUIRE (buttonNamed (window, "Close") != nullptr);
    CHECK (cutOff (window) == "");
    buttonNamed (window, "Close")->onClick();
    CHECK (buttonNamed (window, "Close") == nullptr);
    CHECK (window.keyPressed (key ("B"))); // and letters hear again
    CHECK (fixture.session.monitor.heard() == OptionId::B);
}

TEST_CASE ("trials go by the keyboard, and Escape twice ends them", "[blind]")
{
    Fixture fixture;
    MainWindow window (fixture.session, false);
    window.setSize (960, 600);
    REQUIRE (fixture.session.blindTest.startAbx (asRecorded, OptionId::A, 10, 3));
    window.beginBlind();
    CHECK (window.keyPressed (juce::KeyPress (juce::KeyPress::leftKey)));
    CHECK (fixture.session.blindTest.view().answered == 0); // X was not heard yet
    window.keyPressed (key ("X"));
    CHECK (fixture.session.blindTest.view().heard == 3);
    for (int i = 0; i < 9; ++i)
        window.keyPressed (juce::KeyPress (i % 2 == 0 ? juce::KeyPress::leftKey : juce::KeyPress::rightKey));
    CHECK (fixture.session.blindTest.view().answered == 9);
    window.refresh();
    CHECK (cutOff (window) == "");
    window.keyPressed (juce::KeyPress (juce::KeyPress::escapeKey));
    CHECK (fixture.session.blindTest.view().isRunning);
    window.keyPressed (juce::KeyPress (juce::KeyPress::escapeKey));
    CHECK_FALSE (fixture.session.blindTest.view().isRunning);
    CHECK (fixture.session.jobEditor.job()->blind.empty());

    REQUIRE (fixture.session.blindTest.startAbx (asRecorded, OptionId::A, 5, 3));
    window.beginBlind();
    window.keyPressed (key ("3"));
    for (int i = 0; i < 5; ++i)
        window.keyPressed (juce::KeyPress (juce::KeyPress::leftKey));
    window.keyPressed (juce::KeyPress (juce::KeyPress::returnKey));
    REQUIRE (fixture.session.jobEditor.job()->blind.size() == 1);
    CHECK (fixture.session.jobEditor.job()->blind.front().trials == 5);
    CHECK (cutOff (window) == "");
}

TEST_CASE ("no words are cut off while tags are face down, nine at the smallest size", "[blind]")
{
    Fixture fixture;
    while (fixture.session.options.add ("One more") != asRecorded) {}
    REQUIRE (fixture.session.waitUntilReported (60.0));
    REQUIRE (fixture.session.blindTest.startRanking (
        { asRecorded, OptionId::A, OptionId::B, OptionId::C, OptionId::D, OptionId::E, OptionId::F, OptionId::G, OptionId::H },
        1));
    for (int number = 1; number <= 8; ++number)
        fixture.session.blindTest.rank (number, RankMove::down);
    struct Size
    {
        int width, height;
    };
    for (const auto size : { Size { 900, 600 }, Size { 1200, 800 }, Size { 1920, 1200 } })
    {
        MainWindow window (fixture.session, false);
        window.setSize (size.width, size.height);
        window.beginBlind();
        runFor (300);
        INFO (size.width);
        CHECK (cutOff (window) == "");
    }
}

TEST_CASE ("the agreement asks for true level first, and its click gives it", "[blind]")
{
    Fixture fixture;
    MainWindow window (fixture.session, false);
    window.setSize (900, 600);
    fixture.session.monitor.setLevelMatched (true);
    fixture.session.monitor.hear (OptionId::B);
    window.refresh();
    auto* ask = buttonNamed (window, "Hear B at true level first");
    REQUIRE (ask != nullptr);
    CHECK (cutOff (window) == "");
    ask->onClick();
    CHECK_FALSE (fixture.session.monitor.levelMatched());
    CHECK (fixture.session.jobEditor.job()->agreed.empty());
    std::vector<float> live (48000 + 4800);
    for (size_t i = 0; i < live.size(); ++i)
        live[i] = 0.2f * static_cast<float> (std::sin (0.02 * static_cast<double> (i)));
    float* channel = live.data();
    fixture.session.audio.process (&channel, 1, static_cast<int> (live.size()), false);
    window.refresh();
    auto* agree = buttonNamed (window, "Agree on B");
    REQUIRE (agree != nullptr);
    agree->onClick();
    CHECK (fixture.session.jobEditor.job()->agreed == "B");
    CHECK (fixture.session.jobEditor.job()->heard == std::vector<std::string> { "B" });
    window.refresh();
    CHECK (buttonNamed (window, "Agreed on B") != nullptr);
}

TEST_CASE ("one string alone is chosen beside the curves of an estimate", "[blind]")
{
    Fixture fixture;
    MainWindow window (fixture.session, false);
    window.setSize (1200, 800);
    UiContext ui (fixture.session);
    StringChoice choice (ui);
    fixture.session.monitor.hear (OptionId::A); // the bridge against the guitar at rest, its neck pickup
    const auto now = fixture.session.revisions();
    choice.sessionChanged (now, now);
    CHECK (choice.isVisible());
    choice.setSize (choice.idealWidth (400), 30);
    CHECK (choice.keyPressed (juce::KeyPress (juce::KeyPress::rightKey)));
    CHECK (fixture.session.monitor.onlyString() == 0);
    window.refresh();
    CHECK (cutOff (window) == "");
    choice.sessionChanged (now, now);
    CHECK (choice.keyPressed (juce::KeyPress (juce::KeyPress::leftKey)));
    CHECK (fixture.session.monitor.onlyString() == -1);
    REQUIRE (fixture.session.waitUntilReported (30.0));
    fixture.session.monitor.hear (OptionId::B); // the neck as it is
    choice.sessionChanged (now, now);
    CHECK_FALSE (choice.isVisible());
}
}
