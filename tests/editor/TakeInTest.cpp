// Taking a guitar in as a person does: values typed where they stand, pickups chosen and brought up the ladder, a new job by
// its guitar's picture, hum asked about first. Keys go to the component that has them, the event loop runs.

#include "OffScreen.h"
#include "Windows.h"

#include "editor/FirstLine.h"
#include "editor/GuitarPictures.h"
#include "editor/TakeInSheet.h"
#include "session/TypedOhms.h"

#include <fstream>

namespace takeInTest
{
using namespace coldiron;
using namespace windows;

namespace
{
using Kind = GuitarValue::Kind;

struct Shown
{
    Fixture fixture;
    MainWindow window { fixture.session, false };
    offscreen::Frame frame;

    explicit Shown (int width = 1200, int height = 800) : frame (window, width, height)
    {
        window.grabKeyboardFocus();
        waitUntilIdle();
    }

    void waitUntilIdle()
    {
        runFor (80);
        window.refresh();
        runFor (40);
    }

    void press (const juce::KeyPress& pressed)
    {
        frame.press (pressed);
        waitUntilIdle();
    }

    void press (const char* words) { press (key (words)); }

    void type (const juce::String& text)
    {
        for (const auto c : text)
            press (juce::KeyPress ((int)c, juce::ModifierKeys(), c));
    }

    TakeInSheet* sheet() { return dynamic_cast<TakeInSheet*> (window.sheets().top()); }
    double potOhms (const char* name) { return fixture.session.jobEditor.job()->guitar.harness.find (name)->as<PotPart>()->ohms; }
};
}

TEST_CASE ("a value is typed by keyboard alone, heard as a step of undo, and undone to the same text", "[take-in]")
{
    Shown shown;
    const auto before = shown.fixture.session.jobEditor.text();
    shown.press ("V");
    auto* row = shown.window.guitarPanel().values().rowOf (Kind::pot, "neck-volume");
    REQUIRE (row != nullptr);
    for (int i = 0; i < 20 && ! row->hasKeyboardFocus (true); ++i)
        shown.press ("cursor down");
    REQUIRE (row->hasKeyboardFocus (true));
    shown.press ("return");
    REQUIRE (row->isTyping());
    shown.press ("cursor down"); // 500k to 250k: usual pots, common practice of the trade, no source
    CHECK (row->editor()->getText() == "250k log-15");
    CHECK (shown.potOhms ("neck-volume") == 500e3); // not before it is whole
    shown.press ("return");
    CHECK_FALSE (row->isTyping());
    CHECK (shown.potOhms ("neck-volume") == 250e3);
    CHECK (row->hasKeyboardFocus (true)); // the keyboard stays where it was
    CHECK (shown.fixture.session.jobEditor.text() != before);
    shown.press ("ctrl + Z");
    CHECK (shown.potOhms ("neck-volume") == 500e3);
    CHECK (shown.fixture.session.jobEditor.text() == before);
    shown.press ("ctrl + shift + Z");
    CHECK (shown.potOhms ("neck-volume") == 250e3);
}

TEST_CASE ("what is out of range stays in the field with words under it; Escape leaves the last good one", "[take-in]")
{
    Shown shown;
    auto* row = shown.window.guitarPanel().values().rowOf (Kind::capacitor, "bridge-cap");
    REQUIRE (row != nullptr);
    const auto before = shown.fixture.session.jobEditor.text();
    row->grabKeyboardFocus();
    shown.type ("22");
    shown.press ("return");
    REQUIRE (row->isTyping());
    CHECK (row->wordsUnder().contains ("Write it like 22n"));
    CHECK (row->getHeight() > ValueRow::height);
    CHECK (shown.fixture.session.jobEditor.text() == before);
    shown.press ("escape");
    CHECK_FALSE (row->isTyping());
    CHECK (row->getHeight() == ValueRow::height);
    CHECK (shown.fixture.session.jobEditor.text() == before);
    shown.press ("return");
    shown.type ("4n7"); // over what was marked
    shown.press ("return");
    CHECK (shown.fixture.session.jobEditor.job()->guitar.harness.find ("bridge-cap")->as<CapacitorPart>()->farads == 4.7e-9);
}

TEST_CASE ("the keyboard going elsewhere keeps what is whole and leaves what is not", "[take-in]")
{
    Shown shown;
    auto* row = shown.window.guitarPanel().values().rowOf (Kind::pot, "neck-tone");
    REQUIRE (row != nullptr);
    row->startTyping ("250k");
    shown.window.grabKeyboardFocus();
    shown.waitUntilIdle();
    CHECK (shown.potOhms ("neck-tone") == 250e3);
    row->startTyping ("5");
    shown.window.grabKeyboardFocus();
    shown.waitUntilIdle();
    CHECK_FALSE (row->isTyping());
    CHECK (shown.potOhms ("neck-tone") == 250e3);
}

TEST_CASE ("ohms typed in the sheet bring a pickup up a rung, a file to measured, another pickup back down", "[take-in]")
{
    Shown shown;
    shown.press ("U");
    REQUIRE (shown.sheet() != nullptr);
    auto* card = shown.sheet()->card ("bridge");
    REQUIRE (card != nullptr);
    const auto known = [&]
    { return shown.fixture.session.jobEditor.job()->guitar.harness.find ("bridge")->as<PickupPart>()->pickup.known; };
    REQUIRE (known() == Provenance::assumed);
    auto* row = card->values().rowOf (Kind::jackOhms, "bridge");
    REQUIRE (row != nullptr);
    row->startTyping ("7.874k"); // 8k beside a volume of 500k: R_pickup parallel R_volume, closed form
    row->editor()->onReturnKey();
    shown.waitUntilIdle();
    CHECK (known() == Provenance::fromOhms);
    double ohms = 0.0;
    const auto job = shown.fixture.session.jobEditor.job();
    for (const auto& coil : job->guitar.harness.find ("bridge")->as<PickupPart>()->pickup.coils)
        ohms += coil.dcrOhms;
    CHECK (ohms == Approx (8000.0).epsilon (3e-3));

    const auto file = std::filesystem::temp_directory_path() / "coldiron-take-in.json";
    std::ofstream (file) << R"({ "coldiron": "pickup 1", "like": "humbucker-hot", "known": "measured" })";
    shown.window.filesDropped ({ juce::String (file.string()) }, shown.sheet()->getX() + 60, shown.sheet()->getY() + 120);
    shown.waitUntilIdle();
    std::filesystem::remove (file);
    const auto neck = shown.fixture.session.jobEditor.job()->guitar.harness.find ("neck")->as<PickupPart>()->pickup.known;
    CHECK ((known() == Provenance::measured || neck == Provenance::measured)); // the card it was dropped on

    shown.sheet()->pickPickup ("bridge");
    shown.waitUntilIdle();
    shown.type ("mini");
    shown.press ("return");
    CHECK (shown.fixture.session.jobEditor.job()->guitar.harness.find ("bridge")->preset == "mini-humbucker");
    CHECK (known() == Provenance::assumed);
    CHECK_FALSE (shown.sheet()->pickups().isVisible());
}

TEST_CASE ("hum is asked about before options and the answer is the job's", "[take-in]")
{
    Shown shown;
    shown.press ("U");
    REQUIRE (shown.sheet() != nullptr);
    auto& touched = shown.sheet()->recorded().question (1);
    CHECK (touched.chosen() == 0);
    touched.keyPressed (key ("cursor right"));
    touched.keyPressed (key ("cursor right"));
    shown.waitUntilIdle();
    CHECK (shown.fixture.session.jobEditor.job()->hum.touched == HumAnswers::Touch::falls);
    CHECK (shown.fixture.session.jobEditor.text().find ("\"touched\": \"falls\"") != std::string::npos);
    shown.press ("ctrl + Z");
    shown.press ("ctrl + Z");
    CHECK_FALSE (shown.fixture.session.jobEditor.job()->hum.touched);
    CHECK (touched.chosen() == 0);
}

TEST_CASE ("a new job begins with a guitar's picture, by keyboard", "[take-in]")
{
    Shown shown;
    const auto file = std::filesystem::temp_directory_path() / "coldiron-pictures.json";
    REQUIRE (shown.fixture.session.jobEditor.save (file)); // nothing that would be lost
    std::filesystem::remove (file);
    shown.window.sheets().showGuitars();
    shown.waitUntilIdle();
    auto* pictures = dynamic_cast<GuitarPictures*> (shown.window.sheets().top());
    REQUIRE (pictures != nullptr);
    const auto first = pictures->marked();
    shown.press ("cursor right");
    CHECK (pictures->marked() != first);
    shown.press ("cursor down");
    shown.type ("bass blend");
    CHECK (pictures->marked() == "bass-blend");
    shown.press ("return");
    shown.waitUntilIdle();
    CHECK (shown.fixture.session.jobEditor.job()->guitar.preset == "bass-blend");
    CHECK (shown.sheet() != nullptr); // and goes on to take it in
}

TEST_CASE ("nothing is cut off or overlaps while a guitar is taken in", "[take-in]")
{
    struct Size
    {
        int width, height;
    };
    for (const auto size : { Size { 960, 600 }, Size { 1200, 800 }, Size { 1920, 1200 } })
        for (const char* guitar : { "two-humbuckers-four-knobs", "three-single-coils", "bass-two-single-coils" })
        {
            INFO (guitar << " " << size.width << " x " << size.height);
            Shown shown (size.width, size.height);
            REQUIRE (shown.fixture.session.jobEditor.newJob (guitar));
            REQUIRE (shown.fixture.session.jobEditor.edit ("/hum/touched", "true", "Hum"));
            shown.waitUntilIdle();
            shown.press ("U");
            REQUIRE (shown.sheet() != nullptr);
            checkTree (*shown.sheet());
            juce::StringArray shortened;
            type::cutOff = &shortened;
            shown.window.createComponentSnapshot (shown.window.getLocalBounds(), true, 1.0f);
            type::cutOff = nullptr;
            CHECK (shortened.joinIntoString ("; ").toStdString() == "");
            shown.sheet()->pickPickup (guitar == std::string ("bass-two-single-coils") ? "bridge" : "neck");
            checkTree (*shown.sheet());
            shown.window.sheets().showGuitars();
            shown.waitUntilIdle();
            REQUIRE (shown.window.sheets().top() != nullptr);
            checkTree (*shown.window.sheets().top());
        }
}

TEST_CASE ("the line of the first steps goes with the person, from the guitar's picture to a take", "[take-in]")
{
    Shown shown;
    shown.window.firstMinutes().start();
    shown.waitUntilIdle();
    auto* line = shown.window.firstMinutes().line();
    REQUIRE (line != nullptr);
    REQUIRE (line->steps()->step() == FirstSteps::Step::pickGuitar); // no take: nothing to hear yet
    for (auto* child : shown.window.getChildren())                   // it lies over nothing
        if (child->isVisible() && child != line && dynamic_cast<juce::TooltipWindow*> (child) == nullptr)
            CHECK_FALSE (child->getBounds().reduced (4).intersects (line->getBounds()));
    const auto file = std::filesystem::temp_directory_path() / "coldiron-first-line.json";
    REQUIRE (shown.fixture.session.jobEditor.save (file));
    std::filesystem::remove (file);
    line->actButton().onClick();
    shown.waitUntilIdle();
    REQUIRE (dynamic_cast<GuitarPictures*> (shown.window.sheets().top()) != nullptr);
    shown.type ("one humbucker left");
    shown.press ("return");
    shown.waitUntilIdle();
    CHECK (line->steps()->step() == FirstSteps::Step::typeOhms);
    REQUIRE (shown.sheet() != nullptr);
    auto* row = shown.sheet()->card ("bridge")->values().rowOf (Kind::pickupOhms, "bridge");
    row->startTyping ("8.3k");
    row->editor()->onReturnKey();
    shown.waitUntilIdle();
    CHECK (line->steps()->step() == FirstSteps::Step::dropTake);
    bool ended = false;
    shown.window.firstMinutes().onEnd = [&ended] { ended = true; };
    line->onEnd();
    shown.waitUntilIdle();
    CHECK (ended);
    CHECK (shown.window.firstMinutes().line() == nullptr);
    CHECK (shown.window.places().firstLine.isEmpty());
}
}
