// The window as a person finds it: no text cut off, nothing over anything else, the keyboard does the job, and what is
// turned on screen is what the session has.

#include "Windows.h"

#include "editor/Fitting.h"
#include "editor/RewireList.h"

#include <atomic>
#include <cmath>
#include <fstream>
#include <thread>

namespace windowTest
{
using namespace coldiron;
using namespace windows;

TEST_CASE ("no text is cut off and nothing lies over anything else", "[window]")
{
    Fixture fixture;
    struct Size
    {
        int width, height;
    };
    for (const auto size : { Size { 900, 600 }, Size { 960, 600 }, Size { 1200, 800 }, Size { 1920, 1200 } })
    {
        MainWindow window (fixture.session, false);
        window.setSize (size.width, size.height);
        fixture.session.monitor.hear (OptionId::A);
        window.refresh();
        INFO (size.width << " x " << size.height);
        checkTree (window);
        checkText (window);
    }
}

TEST_CASE ("the check of cut-off words finds them", "[window]")
{
    juce::Image image (juce::Image::ARGB, 100, 40, true);
    juce::Graphics g (image);
    juce::StringArray shortened;
    type::cutOff = &shortened;
    g.setFont (type::text (13.0f));
    type::draw (g, "Level", { 0, 0, 60, 20 }, juce::Justification::centredLeft, false);
    CHECK (shortened.isEmpty());
    type::draw (g, "Level", { 0, 0, 20, 20 }, juce::Justification::centredLeft, false);
    CHECK (shortened.size() == 1);
    type::cutOff = nullptr;

    TextWatcher watcher (image);
    juce::Graphics narrow (watcher);
    narrow.reduceClipRegion (0, 0, 12, 40);
    narrow.setFont (type::text (13.0f));
    narrow.drawSingleLineText ("Level", 0, 20);
    CHECK_FALSE (watcher.cut.empty());
}

TEST_CASE ("a name that does not fit keeps its ends", "[window]")
{
    const auto font = type::bold (12.0f);
    const juce::String name = "Bridge split, south coil shorted";
    CHECK (shortenedInTheMiddle (name, font, 400.0f, 1) == name);
    for (const float width : { 80.0f, 90.0f, 100.0f })
    {
        const auto shorter = shortenedInTheMiddle (name, font, width, 2);
        INFO (width << " " << shorter);
        CHECK (fitsOn (shorter, font, width, 2));
        CHECK (shorter.startsWith ("Bridge"));
        CHECK (shorter.endsWith ("shorted"));
    }
    CHECK (shortenedInTheMiddle ("Unbreakable", font, 20.0f, 1) == "Unbreakable"); // nothing to leave out
}

TEST_CASE ("letters, level and hum go by the keyboard", "[window]")
{
    Fixture fixture;
    MainWindow window (fixture.session, false);
    window.setSize (1200, 800);
    CHECK (window.keyPressed (key ("B")));
    CHECK (fixture.session.monitor.heard() == OptionId::B);
    CHECK (window.keyPressed (key ("0")));
    CHECK (fixture.session.monitor.heard() == asRecorded);
    CHECK_FALSE (window.keyPressed (key ("G"))); // no such option
    CHECK (fixture.session.monitor.heard() == asRecorded);
    const bool matched = fixture.session.monitor.levelMatched();
    CHECK (window.keyPressed (key ("M")));
    CHECK (fixture.session.monitor.levelMatched() != matched);
    CHECK (window.keyPressed (key ("R")));
    CHECK (fixture.session.noise.humDb() > -80.0);
    CHECK (window.keyPressed (key ("R")));
    CHECK (fixture.session.noise.humDb() == -80.0);
}

TEST_CASE ("a host keeps its space bar, the standalone plays with it", "[window]")
{
    Fixture fixture;
    MainWindow inHost (fixture.session, true), alone (fixture.session, false);
    CHECK_FALSE (inHost.keyPressed (key ("spacebar")));
    CHECK (alone.keyPressed (key ("spacebar")));
}

TEST_CASE ("an option is added by the list, undone and saved", "[window]")
{
    Fixture fixture;
    MainWindow window (fixture.session, false);
    window.setSize (1200, 800);
    CHECK (window.keyPressed (key ("N")));
    window.refresh();
    RewireList* list = nullptr;
    for (auto* child : window.getChildren())
        if (auto* found = dynamic_cast<RewireList*> (child))
            list = found;
    REQUIRE (list != nullptr);
    juce::TextEditor* search = nullptr;
    for (auto* child : list->getChildren())
        if (auto* field = dynamic_cast<juce::TextEditor*> (child); field != nullptr && search == nullptr)
            search = field;
    REQUIRE (search != nullptr);
    search->setText ("parallel push", true);
    runFor (50);
    REQUIRE (search->onReturnKey);
    search->onReturnKey();
    runFor (50);
    REQUIRE (fixture.session.options.ids() == std::vector<OptionId> { OptionId::A, OptionId::B, OptionId::C });
    CHECK (fixture.session.monitor.heard() == OptionId::C);
    REQUIRE (fixture.session.options.rewires (OptionId::C).size() == 1);
    CHECK (fixture.session.options.rewires (OptionId::C).front().preset == "series-parallel");

    const auto file = std::filesystem::temp_directory_path() / "coldiron-window-test.json";
    REQUIRE (fixture.session.jobEditor.save (file));
    Session again { PresetFolders { { std::filesystem::path (COLDIRON_SOURCE) / "presets" } } };
    REQUIRE (again.jobEditor.open (file));
    CHECK (again.options.ids() == fixture.session.options.ids());
    std::filesystem::remove (file);

    while (! fixture.session.jobEditor.undoName().empty() && fixture.session.options.ids().size() > 2)
        CHECK (window.keyPressed (key ("ctrl + Z")));
    CHECK (fixture.session.options.ids() == std::vector<OptionId> { OptionId::A, OptionId::B });
}

TEST_CASE ("a knob moves what is heard and stays within 0 to 10", "[window]")
{
    Fixture fixture;
    fixture.session.monitor.hear (OptionId::A);
    UiContext ui (fixture.session);
    Knob knob (ui, OptionId::A, "bridge-tone");
    knob.setSize (80, 96);
    REQUIRE (fixture.session.controls.setting (OptionId::A).knob ("bridge-tone") == 10.0);
    const auto at5k = [&]
    {
        REQUIRE (fixture.session.waitUntilReported (20.0));
        const auto report = fixture.session.reports.report (OptionId::A);
        REQUIRE (report != nullptr);
        size_t nearest = 0;
        for (size_t i = 0; i < report->curve.hz.size(); ++i)
            if (std::abs (report->curve.hz[i] - 5000.0) < std::abs (report->curve.hz[nearest] - 5000.0))
                nearest = i;
        return report->curve.circuitDb[nearest];
    };
    const double before = at5k();
    for (int i = 0; i < 60; ++i)
        CHECK (knob.keyPressed (juce::KeyPress (juce::KeyPress::downKey)));
    CHECK (fixture.session.controls.setting (OptionId::A).knob ("bridge-tone") == Approx (4.0));
    CHECK (at5k() < before - 3.0); // a tone turned down takes treble away
    CHECK (knob.keyPressed (juce::KeyPress (juce::KeyPress::homeKey)));
    CHECK (knob.keyPressed (juce::KeyPress (juce::KeyPress::downKey)));
    CHECK (fixture.session.controls.setting (OptionId::A).knob ("bridge-tone") == 0.0);
}

TEST_CASE ("agreeing is kept in the job", "[window]")
{
    Fixture fixture;
    REQUIRE (fixture.session.jobEditor.edit ("/agreed", "\"B\"", "Agree on B"));
    CHECK (fixture.session.jobEditor.text().find ("\"agreed\"") != std::string::npos);
    CHECK_FALSE (fixture.session.jobEditor.edit ("/agreed", "\"F\"", "Agree on F")); // there is no F
    CHECK_FALSE (fixture.session.diagnostics().empty());
}

TEST_CASE ("a hundred windows open and close, two at a time, while sound runs", "[window]")
{
    Fixture fixture;
    fixture.session.monitor.hear (OptionId::A);
    fixture.session.waitUntilIdle (20.0);
    std::atomic<bool> running { true };
    std::atomic<int> blocks { 0 }, bad { 0 };
    std::thread sound (
        [&]
        {
            std::vector<float> block (512);
            double phase = 0.0;
            while (running)
            {
                for (auto& sample : block)
                    sample = 0.1f * static_cast<float> (std::sin (phase += 0.05));
                float* channels[] = { block.data() };
                fixture.session.audio.process (channels, 1, 512, false);
                for (float sample : block)
                    bad += ! std::isfinite (sample) || std::abs (sample) > 2.0f;
                ++blocks;
                std::this_thread::sleep_for (std::chrono::milliseconds (1));
            }
        });
    for (int i = 0; i < 50; ++i)
    {
        MainWindow one (fixture.session, false), two (fixture.session, true);
        one.setSize (1200, 800);
        two.setSize (960, 600);
        fixture.session.monitor.hear (optionAt (i % 3));
        one.refresh();
        two.refresh();
        one.createComponentSnapshot (one.getLocalBounds(), true, 0.25f);
        CHECK (fixture.session.monitor.heard() == optionAt (i % 3));
    }
    running = false;
    sound.join();
    CHECK (blocks > 20);
    CHECK (bad == 0);
}
}
