// What a screen reader is told: every control has a role and a name, a value where it has one, and does what it is asked.
// The window is on the display here, since JUCE makes handlers for what has a window of its own alone.
#include "Folder.h"
#include "OffScreen.h"
#include "Windows.h"

#include "editor/TakeInSheet.h"
#include "editor/WiringView.h"
#include "editor/Words.h"
#include "session/Autosave.h"

#include <functional>

namespace accessibilityTest
{
using namespace coldiron;
using namespace windows;
using Role = juce::AccessibilityRole;

namespace
{
struct Shown
{
    Folder folder;
    Fixture fixture;
    Session& session = fixture.session;
    MainWindow window { session, false };

    explicit Shown (bool withTake = true)
    {
        if (withTake)
        {
            REQUIRE (session.takes.add (folder.take ("bridge.wav", 2)));
            REQUIRE (session.takes.add (folder.take ("neck.wav", 2)));
            session.takes.select (0);
        }
        session.monitor.hear (OptionId::A);
        window.setSize (1200, 800);
        window.addToDesktop (0);
        window.setVisible (true);
        settle();
    }

    ~Shown() { window.removeFromDesktop(); }

    void settle()
    {
        REQUIRE (session.waitUntilReported (30.0));
        window.refresh();
        window.settleDrawings (60.0);
        runFor (60);
    }
};

/** Parts of JUCE's own, spoken for by JUCE's own handlers. */
bool isJuces (const juce::Component& c)
{
    return dynamic_cast<const juce::ScrollBar*> (&c) != nullptr || dynamic_cast<const juce::TooltipWindow*> (&c) != nullptr;
}

bool isReached (const juce::Component& c)
{
    bool clicks = false, ofChildren = false;
    c.getInterceptsMouseClicks (clicks, ofChildren);
    return clicks || c.getWantsKeyboardFocus();
}

/** What is wrong with a control's handler; empty: nothing. */
std::string faultOf (juce::Component& c)
{
    auto* handler = c.getAccessibilityHandler();
    if (handler == nullptr)
        return "no handler";
    if (handler->getTitle().trim().isEmpty())
        return "no title";
    const auto role = handler->getRole();
    if (role == Role::unspecified || role == Role::ignored)
        return "no role";
    const auto* value = handler->getValueInterface();
    if (dynamic_cast<juce::Slider*> (&c) != nullptr)
        return role != Role::slider                                                       ? "a slider of another role"
               : value == nullptr || value->isReadOnly() || ! value->getRange().isValid() ? "a slider without a range to set"
                                                                                          : "";
    if (const auto* button = dynamic_cast<juce::Button*> (&c))
    {
        const auto state = handler->getCurrentState();
        if (! handler->getActions().contains (juce::AccessibilityActionType::press))
            return "a button that cannot be pressed";
        if (button->getRadioGroupId() != 0 && role != Role::radioButton)
            return "one of several that does not say so";
        if (button->isToggleable() && ! state.isCheckable() && ! state.isSelectable())
            return "a toggle that does not say whether it is on";
        return role == Role::button || role == Role::toggleButton || role == Role::radioButton || role == Role::listItem
                   ? ""
                   : "a button of another role";
    }
    if (dynamic_cast<juce::TextEditor*> (&c) != nullptr)
        return role == Role::editableText ? "" : "a field of another role";
    if (role == Role::editableText && value == nullptr)
        return "a field without a value";
    return "";
}

/** Every part that is seen and takes the mouse or the keyboard. JUCE's fields and lists are taken whole. */
void visit (juce::Component& parent, const std::function<void (juce::Component&)>& each)
{
    for (auto* child : parent.getChildren())
    {
        if (! child->isVisible() || ! child->isEnabled() || isJuces (*child))
            continue;
        if (auto* scrolled = dynamic_cast<juce::Viewport*> (child);
            scrolled != nullptr && scrolled->getViewedComponent() != nullptr)
        {
            if (isReached (*scrolled->getViewedComponent()))
                each (*scrolled->getViewedComponent());
            visit (*scrolled->getViewedComponent(), each);
            continue;
        }
        if (isReached (*child))
            each (*child);
        if (dynamic_cast<juce::TextEditor*> (child) != nullptr)
            continue;
        if (auto* list = dynamic_cast<juce::ListBox*> (child))
        {
            for (int row = 0; row < 200; ++row)
                if (auto* shown = list->getComponentForRowNumber (row))
                    each (*shown);
            continue;
        }
        visit (*child, each);
    }
}

juce::String named (juce::Component& c) { return c.getTitle().isNotEmpty() ? c.getTitle() : c.getName(); }

std::string faultsIn (MainWindow& window)
{
    std::string faults;
    int met = 0;
    const auto judge = [&] (juce::Component& c)
    {
        ++met;
        if (const auto fault = faultOf (c); ! fault.empty())
            faults += std::string (typeid (c).name()) + " \"" + named (c).toStdString() + "\" at "
                      + c.getBounds().toString().toStdString() + " in \"" + named (*c.getParentComponent()).toStdString()
                      + "\": " + fault + "\n";
    };
    judge (window);
    visit (window, judge);
    CHECK (met > 20);
    return faults;
}

/** The first control of that name whose handler has that role. */
juce::AccessibilityHandler* find (juce::Component& parent, const juce::String& title, Role role)
{
    juce::AccessibilityHandler* found = nullptr;
    const std::function<void (juce::Component&)> look = [&] (juce::Component& c)
    {
        for (auto* child : c.getChildren())
        {
            if (found != nullptr || ! child->isVisible())
                continue;
            if (auto* handler = child->getAccessibilityHandler();
                handler != nullptr && handler->getRole() == role && handler->getTitle() == title)
                found = handler;
            else
                look (*child);
        }
    };
    look (parent);
    INFO (title);
    REQUIRE (found != nullptr);
    return found;
}

template <typename T>
T* find (juce::Component& parent, const juce::String& title)
{
    for (auto* child : parent.getChildren())
    {
        if (auto* wanted = dynamic_cast<T*> (child); wanted != nullptr && wanted->getTitle() == title)
            return wanted;
        if (auto* deeper = find<T> (*child, title))
            return deeper;
    }
    return nullptr;
}

void press (juce::AccessibilityHandler* handler)
{
    REQUIRE (handler->getActions().invoke (juce::AccessibilityActionType::press));
    runFor (30);
}

bool isChecked (juce::AccessibilityHandler* handler) { return handler->getCurrentState().isChecked(); }
}

TEST_CASE ("every control has a role and a name, whatever is open", "[accessibility]")
{
    Shown shown;
    auto& [folder, fixture, session, window] = shown;
    struct State
    {
        const char* name;
        std::function<void()> open;
    };
    const auto sheet = [&] { return dynamic_cast<TakeInSheet*> (window.sheets().top()); };
    const State states[] {
        { "the window", [] {} },
        { "keys", [&] { window.sheets().showKeys (true); } },
        { "sound", [&] { window.sheets().showSound (true); } },
        { "a new option", [&] { window.sheets().showRewires (asRecorded); } },
        { "a rewire for A", [&] { window.sheets().showRewires (OptionId::A); } },
        { "a starter set", [&] { window.sheets().showStarter ("brighter"); } },
        { "notes", [&] { window.sheets().showNotes (true); } },
        { "take in", [&] { window.sheets().showTakeIn (true); } },
        { "pickups", [&] { sheet()->pickPickup ("bridge"); } },
        { "a value being typed",
          [&]
          {
              window.sheets().showKeys (false);
              window.guitarPanel().values().all().front()->startTyping();
          } },
        { "guitars",
          [&]
          {
              window.sheets().showGuitars();
              runFor (200);
          } },
        { "wiring", [&] { window.sheets().showWiring (true); } },
        { "blind setup", [&] { window.showBlindSetup(); } },
        { "work left behind",
          [&]
          {
              {
                  const Fixture before;
                  Autosave left (folder.path / "unsaved");
                  left.keep ({ before.session.jobEditor.text(), "Left", {}, folder.path });
                  REQUIRE (left.waitUntilIdle (10.0));
              }
              window.keepUnsavedIn (folder.path / "unsaved");
          } },
        { "the first minutes",
          [&]
          {
              window.sheets().showKeys (true);
              window.sheets().showKeys (false);
              window.firstMinutes().start();
          } },
        { "a word at the foot", [&] { window.tell ("Saved walnut.json."); } },
        { "a fault", [&] { session.jobEditor.edit ("/options/A/setting", "{ \"no-such-knob\": 3 }", ""); } },
        { "the smallest size", [&] { window.setSize (900, 600); } },
        { "the guitar slid over", [&] { window.showGuitar (true); } },
        { "a ranking",
          [&]
          {
              REQUIRE (session.blindTest.startRanking ({ asRecorded, OptionId::A, OptionId::B }, 1));
              window.beginBlind();
          } },
        { "its outcome",
          [&]
          {
              for (int each = 1; each <= 3; ++each)
                  session.blindTest.rank (each, RankMove::down);
              window.blindStage().turnOver();
          } },
        { "trials",
          [&]
          {
              REQUIRE (session.blindTest.startAbx (asRecorded, OptionId::A, 10, 3));
              window.beginBlind();
          } },
    };
    for (const auto& state : states)
    {
        state.open();
        shown.settle();
        INFO (state.name);
        CHECK (faultsIn (window) == "");
    }
}

TEST_CASE ("sliders are read and set by a screen reader", "[accessibility]")
{
    Shown shown;
    auto& [folder, fixture, session, window] = shown;
    const auto setTo = [&] (const juce::String& title, double value)
    {
        auto* handler = find (window, title, Role::slider);
        auto* slider = handler->getValueInterface();
        REQUIRE (slider != nullptr);
        CHECK (slider->getRange().getMinimumValue() <= value);
        CHECK (slider->getRange().getMaximumValue() >= value);
        slider->setValue (value);
        window.refresh();
        CHECK (slider->getCurrentValue() == Approx (value));
        return slider->getCurrentValueAsString();
    };
    CHECK (setTo ("Bridge tone", 4.0) == "4");
    CHECK (session.controls.setting (OptionId::A).knob ("bridge-tone") == Approx (4.0));
    CHECK (setTo ("Mains hum", -30.0) == words::db (-30.0, false, 0));
    CHECK (session.noise.humDb() == Approx (-30.0));
    find (window, "Position", Role::slider)->getValueInterface()->setValue (1.25);
    session.transport.play();
    std::vector<float> block (480);
    float* channel = block.data();
    session.audio.process (&channel, 1, static_cast<int> (block.size()), false); // sound goes on from there
    session.transport.stop();
    CHECK (find (window, "Position", Role::slider)->getValueInterface()->getCurrentValue() == Approx (1.25).margin (0.05));
    CHECK (session.transport.positionSeconds() == Approx (1.25).margin (0.05));

    session.monitor.hear (asRecorded); // of the take: one step of undo, kept at once
    window.refresh();
    setTo ("Bridge tone", 7.0);
    CHECK (session.jobEditor.job()->takes[0].setting.knob ("bridge-tone") == Approx (7.0));
    CHECK_FALSE (session.jobEditor.undoName().empty());

    session.output.setChain ({ OutputSound::amplifier, {}, 0.0 });
    window.sheets().showSound (true);
    setTo ("The field", 60.0);
    CHECK (session.noise.facingDegrees() == Approx (60.0));
    setTo ("Buzz", 0.5);
    CHECK (session.noise.buzz() == Approx (0.5));
    setTo ("Hiss", 20.0);
    CHECK (session.noise.hissGainDb() == Approx (20.0));
    setTo ("Drive", 6.0);
    CHECK (session.output.chain().driveDb == Approx (6.0));
    CHECK (setTo ("Trim", -3.0) == words::db (-3.0, true, 1));
    CHECK (session.output.trimDb() == Approx (-3.0));
    session.output.setTrimDb (0.25); // a host may set what lies between the steps
    window.refresh();
    CHECK (find (window, "Trim", Role::slider)->getValueInterface()->getCurrentValue() == Approx (0.25));
}

TEST_CASE ("toggles say whether they are on, and obey", "[accessibility]")
{
    Shown shown;
    auto& [folder, fixture, session, window] = shown;
    session.monitor.setLevelMatched (false);
    window.refresh();
    CHECK (isChecked (find (window, "True", Role::radioButton)));
    CHECK_FALSE (isChecked (find (window, "Matched", Role::radioButton)));
    press (find (window, "Matched", Role::radioButton));
    CHECK (session.monitor.levelMatched());
    CHECK (isChecked (find (window, "Matched", Role::radioButton)));
    CHECK_FALSE (isChecked (find (window, "True", Role::radioButton)));

    CHECK (session.controls.setting (OptionId::A).levers.at ("bridge-volume-pull") == "up");
    CHECK (isChecked (find (window, "up", Role::radioButton)));
    press (find (window, "down", Role::radioButton));
    CHECK (session.controls.setting (OptionId::A).levers.at ("bridge-volume-pull") == "down");
    CHECK (isChecked (find (window, "down", Role::radioButton)));

    auto* second = find (window, "B, Bridge split, north coil", Role::radioButton);
    CHECK_FALSE (isChecked (second));
    CHECK (second->getDescription().contains ("hum")); // its figures
    press (second);
    window.refresh();
    CHECK (session.monitor.heard() == OptionId::B);
    CHECK (isChecked (second));

    auto* lowest = find (window, "String E2 is played", Role::button);
    CHECK (isChecked (lowest));
    press (lowest);
    window.refresh();
    CHECK (session.jobEditor.job()->takes[0].strings.size() == session.jobEditor.job()->guitar.strings.size() - 1);
    CHECK_FALSE (isChecked (find (window, "String E2 is played", Role::button)));

    CHECK (isChecked (find (window, "Take 1, bridge.wav", Role::radioButton)));
    press (find (window, "Take 2, neck.wav", Role::radioButton));
    CHECK (session.takes.playing() == 1);

    window.showBlindSetup();
    auto* ranked = find (window, "B is ranked", Role::button);
    CHECK (isChecked (ranked));
    press (ranked);
    CHECK_FALSE (isChecked (ranked));
}

TEST_CASE ("what is only drawn is told in words", "[accessibility]")
{
    Shown shown;
    auto& [folder, fixture, session, window] = shown;
    CHECK (find (window, "Curves", Role::image)->getDescription().contains ("A, heard: "));
    CHECK (find (window, "Decide", Role::group)->getDescription().contains ("At the jack"));
    CHECK (find (window, "Guitar", Role::group)->getDescription().contains ("mm from the bridge"));
    CHECK (find (window, "Take", Role::group)->getDescription().contains ("bridge.wav"));
    CHECK (find (window, "The job", Role::group)->getDescription().contains ("Walnut two-humbucker"));

    auto* ohms = find (window, "Bridge pickup", Role::editableText);
    CHECK (ohms->getDescription() == "assumed");
    ohms->getValueInterface()->setValueAsString ("8.2k");
    window.refresh();
    CHECK (find (window, "Bridge pickup", Role::editableText)->getValueInterface()->getCurrentValueAsString()
           == words::ohms (8200.0));
    CHECK (session.jobEditor.job()->guitar.harness.find ("bridge")->as<PickupPart>()->pickup.known == Provenance::fromOhms);

    window.sheets().showWiring (true);
    shown.settle();
    auto* wiring = find (window, "Wiring", Role::group);
    const auto cursor = [&] { return wiring->getValueInterface()->getCurrentValueAsString(); };
    CHECK (cursor() == "No point yet");
    auto* view = window.sheets().top();
    REQUIRE (view->keyPressed (key ("tab")));
    const auto first = cursor();
    CHECK (first != "No point yet");
    REQUIRE (view->keyPressed (key ("tab")));
    CHECK (cursor() != first);
    for (int i = 0; i < 200 && ! cursor().startsWith ("Bridge volume, lug 2"); ++i)
        view->keyPressed (key ("tab"));
    CHECK (cursor().contains ("joint"));
    REQUIRE (view->keyPressed (juce::KeyPress ('u', {}, 'u')));
    CHECK (cursor().contains (words::from (dynamic_cast<WiringView*> (view)->hand().verdictWords())));
    CHECK (cursor().length() > 20);
}

TEST_CASE ("nothing that is told gives away what is behind a number", "[accessibility]")
{
    const auto told = [] (uint64_t seed)
    {
        Shown shown;
        auto& [folder, fixture, session, window] = shown;
        REQUIRE (session.blindTest.startRanking ({ asRecorded, OptionId::A, OptionId::B }, seed));
        window.beginBlind();
        session.blindTest.hear (1);
        shown.settle();
        juce::String all;
        visit (window,
               [&] (juce::Component& c)
               {
                   if (auto* handler = c.getAccessibilityHandler())
                       all << handler->getTitle() << "|" << handler->getDescription() << "|" << handler->getHelp() << "|"
                           << (handler->getValueInterface() != nullptr ? handler->getValueInterface()->getCurrentValueAsString()
                                                                       : juce::String())
                           << "\n";
               });
        for (int each = 1; each <= 3; ++each)
            session.blindTest.rank (each, RankMove::down);
        const auto outcome = session.blindTest.reveal();
        REQUIRE (outcome);
        return std::make_pair (all, outcome->behind[0]);
    };
    const auto [first, behindFirst] = told (1);
    CHECK (first.contains ("Rank 1 up"));
    bool others = false;
    for (uint64_t seed = 2; seed < 6; ++seed)
    {
        const auto [words, behind] = told (seed);
        others = others || behind != behindFirst;
        CHECK (words == first);
    }
    CHECK (others);
}

TEST_CASE ("Tab goes through the window in the order of the job, and stays within a sheet", "[accessibility]")
{
    Fixture fixture;
    MainWindow window (fixture.session, false);
    offscreen::Frame frame (window, 1200, 800);
    std::vector<juce::Component*> areas; // each child of the window as Tab comes to it
    for (auto* stop : juce::KeyboardFocusTraverser().getAllComponents (&window))
    {
        while (stop->getParentComponent() != &window)
            stop = stop->getParentComponent();
        if (areas.empty() || areas.back() != stop)
            areas.push_back (stop);
    }
    std::vector<juce::String> names;
    for (auto* area : areas)
        names.push_back (area->getTitle());
    CHECK (names == std::vector<juce::String> { "The job", "Take", "Options", "Listen", "Look", "Decide", "Guitar" });

    window.sheets().showSound (true);
    for (int i = 0; i < 40; ++i)
    {
        frame.press (key ("tab"));
        REQUIRE (window.sheets().top()->hasKeyboardFocus (true));
    }
    window.sheets().showSound (false);

    // One stop for each group: arrows go along it, the keyboard with them.
    fixture.session.monitor.setLevelMatched (false);
    window.refresh();
    auto* level = find<Segments> (window, "Level");
    level->grabKeyboardFocus();
    auto* stop = juce::Component::getCurrentlyFocusedComponent();
    REQUIRE (stop != nullptr);
    CHECK (stop->getTitle() == "True");
    frame.press (key ("cursor right"));
    CHECK (fixture.session.monitor.levelMatched());
    CHECK (juce::Component::getCurrentlyFocusedComponent()->getTitle() == "Matched");
    frame.press (key ("tab"));
    CHECK (juce::Component::getCurrentlyFocusedComponent()->getTitle() == "Mains hum");
}
}
