// The first minutes as a person lives them, through the window's peer: mouse, keys, a file let go over it. How long a
// practised person needs is counted from the actions, not timed.
#include "Folder.h"
#include "OffScreen.h"
#include "Windows.h"

#include "editor/FirstLine.h"
#include "editor/GuitarPictures.h"
#include "editor/RewireList.h"
#include "editor/TakeInSheet.h"

#include <cmath>
#include <map>

namespace firstMinutesTest
{
using namespace coldiron;
using namespace windows;

namespace
{
/** Counts what a person does, in the operators of the keystroke-level model: Card, Moran and Newell, "The keystroke-level
    model for user performance time with interactive systems", Communications of the ACM 23 (7), 1980: K 0.28 s (average
    typist who is no secretary), button 0.2 s, P 1.1 s, H 0.4 s, M 1.35 s before each unit of thought. */
class Person
{
public:
    Person (MainWindow& w, offscreen::Frame& f) : window (w), frame (f) {}

    double seconds = 0.0;

    void click (const juce::Component& part)
    {
        seconds += think + hands (false) + point + button;
        frame.click (part);
        wait ([] { return false; }, 120);
    }

    void type (const juce::String& text)
    {
        seconds += think + hands (true) + key * text.length();
        for (const auto c : text)
            frame.press (juce::KeyPress ((int)c, juce::ModifierKeys(), c));
        wait ([] { return false; }, 60);
    }

    void press (const char* words, bool thinks = false)
    {
        seconds += (thinks ? think : 0.0) + hands (true) + key * (juce::String (words).contains ("+") ? 2 : 1);
        frame.press (windows::key (words));
        wait ([] { return false; }, 120);
    }

    /** From a folder beside the window. */
    void drop (const std::filesystem::path& file, juce::Point<int> at)
    {
        seconds += think + hands (false) + 2 * (point + button);
        REQUIRE (frame.drop (juce::String (file.string()), at));
        wait ([] { return false; }, 60);
    }

    /** Lets the event loop run. @returns whether it came true within the time */
    template <typename Condition>
    bool wait (Condition condition, int milliseconds)
    {
        for (int waited = 0; waited < milliseconds && ! condition(); waited += 30)
        {
            runFor (30);
            window.refresh();
        }
        return condition();
    }

private:
    static constexpr double key = 0.28, button = 0.2, point = 1.1, home = 0.4, think = 1.35;
    MainWindow& window;
    offscreen::Frame& frame;
    bool onKeyboard = false;

    double hands (bool keyboard) { return std::exchange (onKeyboard, keyboard) != keyboard ? home : 0.0; }
};

/** What a sine at hz comes out as through the session [dB], once it is all at rest. */
double heardDb (Session& session, double hz)
{
    REQUIRE (session.waitUntilIdle (20.0));
    constexpr int block = 480, blocks = 100; // whole cycles of multiples of 100 Hz in each block, at 48 kHz
    double in = 0.0, out = 0.0;
    int frame = 0;
    for (int b = 0; b < blocks; ++b)
    {
        std::vector<float> samples (block);
        double blockIn = 0.0, blockOut = 0.0;
        for (auto& x : samples)
        {
            x = 0.1f * static_cast<float> (std::sin (2.0 * juce::MathConstants<double>::pi * hz / 48000.0 * (frame++ % 480)));
            blockIn += static_cast<double> (x) * x;
        }
        float* channels[] = { samples.data() };
        session.audio.process (channels, 1, block, false);
        for (float x : samples)
            blockOut += static_cast<double> (x) * x;
        if (b >= blocks / 2)
        {
            in += blockIn;
            out += blockOut;
        }
    }
    return 10.0 * std::log10 ((out + 1e-30) / in);
}

/** What the plot shows there [dB]. */
double shownDb (Session& session, OptionId id, double hz)
{
    REQUIRE (session.waitUntilReported (20.0));
    const auto report = session.reports.report (id);
    REQUIRE (report != nullptr);
    const auto& curve = report->curve;
    const auto above = std::lower_bound (curve.hz.begin(), curve.hz.end(), hz) - curve.hz.begin();
    REQUIRE (above > 0);
    const auto i = static_cast<size_t> (above);
    const double share = std::log (hz / curve.hz[i - 1]) / std::log (curve.hz[i] / curve.hz[i - 1]);
    return curve.changeDb[i - 1] + share * (curve.changeDb[i] - curve.changeDb[i - 1]);
}
}

TEST_CASE ("from the take landing to four tags of one's own guitar takes less than a minute of actions", "[first-minutes]")
{
    const Folder folder;
    const auto take = folder.take ("chorus.wav");
    Session session { PresetFolders { { std::filesystem::path (COLDIRON_SOURCE) / "presets" } } };
    session.audio.prepare (48000.0);
    REQUIRE (session.jobEditor.newJob ("one-humbucker"));
    REQUIRE (session.jobEditor.save (folder.path / "before.json")); // nothing that would be asked about
    MainWindow window (session, false);
    offscreen::Frame frame (window, 1200, 800);
    Person person (window, frame);
    window.firstMinutes().start();
    REQUIRE (person.wait ([&] { return window.firstMinutes().line() != nullptr; }, 2000));
    auto* line = window.firstMinutes().line();

    // The take is here from the first action on: the clock starts with it.
    REQUIRE (line->steps()->step() == FirstSteps::Step::pickGuitar);
    person.click (line->actButton()); // "Your guitar"
    REQUIRE (person.wait ([&] { return dynamic_cast<GuitarPictures*> (window.sheets().top()) != nullptr; }, 2000));
    person.type ("three single");
    person.press ("return");
    REQUIRE (person.wait ([&] { return dynamic_cast<TakeInSheet*> (window.sheets().top()) != nullptr; }, 2000));
    REQUIRE (session.jobEditor.job()->guitar.preset == "three-single-coils");

    const std::map<const char*, const char*> readings { { "neck", "5.9k" }, { "middle", "6.1k" }, { "bridge", "6.4k" } };
    for (const auto& [pickup, ohms] : readings)
    {
        auto* sheet = dynamic_cast<TakeInSheet*> (window.sheets().top());
        REQUIRE (sheet != nullptr);
        REQUIRE (sheet->card (pickup) != nullptr);
        auto* row = sheet->card (pickup)->values().rowOf (GuitarValue::Kind::pickupOhms, pickup);
        REQUIRE (row != nullptr);
        INFO (pickup);
        REQUIRE (frame.getLocalBounds().contains (frame.getLocalArea (row, row->getLocalBounds()))); // no scrolling to get there
        person.click (*row);
        REQUIRE (row->isTyping());
        person.type (ohms);
        person.press ("return");
        CHECK (session.jobEditor.job()->guitar.harness.find (pickup)->as<PickupPart>()->pickup.known == Provenance::fromOhms);
    }
    person.press ("escape");
    CHECK (window.sheets().top() == nullptr);
    person.drop (take, { 700, 100 });
    REQUIRE (person.wait ([&] { return line->steps()->step() == FirstSteps::Step::starterSet; }, 10000));
    CHECK (line->isShowing());
    person.click (line->actButton()); // "Starter sets"
    REQUIRE (person.wait ([&] { return dynamic_cast<RewireList*> (window.sheets().top()) != nullptr; }, 2000));
    person.press ("cursor down", true);
    person.press ("return");
    REQUIRE (person.wait ([&] { return session.options.ids().size() == 3; }, 5000));

    CHECK (session.jobEditor.job()->takes.size() == 1);
    REQUIRE (session.waitUntilReported (60.0));
    for (const OptionId id : { OptionId::A, OptionId::B, OptionId::C })
    {
        const auto report = session.reports.report (id);
        REQUIRE (report != nullptr);
        CHECK (report->complete); // level, hum, peak: all there
        CHECK_FALSE (report->silent);
    }
    INFO ("seconds of a practised person's actions: " << person.seconds);
    CHECK (person.seconds > 15.0); // the count counts
    CHECK (person.seconds < 60.0);
}

TEST_CASE ("a job is opened, an option added and a knob turned by keyboard alone; what is heard is what is shown",
           "[first-minutes]")
{
    const Folder folder;
    const auto file = folder.path / "walnut.json";
    Fixture fixture;
    auto& session = fixture.session;
    REQUIRE (session.jobEditor.save (file));
    REQUIRE (session.jobEditor.open (file));
    MainWindow window (session, false);
    offscreen::Frame frame (window, 1200, 800);
    window.grabKeyboardFocus();
    Person person (window, frame);
    const auto before = session.jobEditor.text();

    person.press ("N");
    REQUIRE (dynamic_cast<RewireList*> (window.sheets().top()) != nullptr);
    person.type ("parallel push");
    person.press ("return");
    REQUIRE (session.options.ids() == std::vector<OptionId> { OptionId::A, OptionId::B, OptionId::C });
    REQUIRE (session.monitor.heard() == OptionId::C);
    const auto added = session.jobEditor.text();
    const double bright = heardDb (session, 5000.0);
    CHECK (bright == Approx (shownDb (session, OptionId::C, 5000.0)).margin (0.1));

    person.press ("K"); // the first knob, then Tab to the neck's tone
    const auto hasFocus = [&] (const char* title)
    {
        const auto* focused = juce::Component::getCurrentlyFocusedComponent();
        return focused != nullptr && focused->getTitle().containsIgnoreCase (title);
    };
    for (int i = 0; i < 8 && ! hasFocus ("neck tone"); ++i)
        person.press ("tab");
    REQUIRE (hasFocus ("neck tone"));
    person.press ("home");
    for (int i = 0; i < 30; ++i)
        frame.press (key ("cursor up"));
    CHECK (session.controls.setting (OptionId::C).knob ("neck-tone") == Approx (3.0));
    // A tone at 3 takes treble away; what is heard follows what is drawn, high and low.
    for (const double hz : { 300.0, 2000.0, 5000.0 })
    {
        INFO (hz << " Hz");
        CHECK (heardDb (session, hz) == Approx (shownDb (session, OptionId::C, hz)).margin (0.1));
    }
    CHECK (heardDb (session, 5000.0) < bright - 6.0);
    const auto turned = session.jobEditor.text();

    for (int i = 0; i < 80 && session.jobEditor.text() != added; ++i)
        person.press ("ctrl + Z");
    CHECK (session.jobEditor.text() == added);
    CHECK (heardDb (session, 5000.0) == Approx (bright).margin (0.01));
    for (int i = 0; i < 80 && session.jobEditor.text() != turned; ++i)
        person.press ("ctrl + shift + Z");
    REQUIRE (session.jobEditor.text() == turned);

    person.press ("ctrl + S");
    CHECK_FALSE (session.jobEditor.isChanged());
    Session again { PresetFolders { { std::filesystem::path (COLDIRON_SOURCE) / "presets" } } };
    again.audio.prepare (48000.0);
    REQUIRE (again.jobEditor.open (file));
    CHECK (again.jobEditor.text() == session.jobEditor.text());
    again.monitor.hear (OptionId::C);
    CHECK (heardDb (again, 5000.0) == Approx (heardDb (session, 5000.0)).margin (1e-3));
    CHECK (before != turned);
}
}
