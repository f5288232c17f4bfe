// Starter sets in the window: three options for a wish by the keyboard alone, undone, saved and opened again the same.
#include "Windows.h"

#include "editor/RewireList.h"

namespace starterTest
{
using namespace coldiron;
using namespace windows;

namespace
{
juce::Component* listOver (MainWindow& window)
{
    for (auto* child : window.getChildren())
        if (dynamic_cast<RewireList*> (child) != nullptr)
            return child;
    return nullptr;
}

juce::TextEditor* searchOf (juce::Component& list)
{
    for (auto* child : list.getChildren())
        if (auto* field = dynamic_cast<juce::TextEditor*> (child))
            return field;
    return nullptr;
}
}

TEST_CASE ("a starter set comes by keyboard alone, is undone, saved and opened the same", "[window]")
{
    Fixture fixture;
    REQUIRE (fixture.session.jobEditor.newJob ("two-humbuckers-four-knobs"));
    MainWindow window (fixture.session, false);
    window.setSize (1200, 800);
    window.setVisible (true);
    window.refresh();
    const auto before = fixture.session.jobEditor.text();
    CHECK (window.keyPressed (key ("N")));
    runFor (50);
    auto* list = listOver (window);
    REQUIRE (list != nullptr);
    auto* search = searchOf (*list);
    REQUIRE (search != nullptr);
    // The search has the keyboard, and lets the arrows through. The sets stand first: the second is "brighter".
    CHECK (search->keyPressed (juce::KeyPress (juce::KeyPress::downKey)));
    REQUIRE (search->onReturnKey);
    search->onReturnKey();
    runFor (50);
    REQUIRE (fixture.session.options.ids() == std::vector<OptionId> { OptionId::A, OptionId::B, OptionId::C });
    CHECK (fixture.session.monitor.heard() == OptionId::A);
    CHECK (fixture.session.jobEditor.undoName() == "Starter set: Brighter");
    CHECK (listOver (window) == nullptr);

    const auto file = std::filesystem::temp_directory_path()
                      / ("coldiron-starter-" + std::to_string (juce::Time::getHighResolutionTicks()) + ".json");
    REQUIRE (fixture.session.jobEditor.save (file));
    Session again { PresetFolders { { std::filesystem::path (COLDIRON_SOURCE) / "presets" } } };
    REQUIRE (again.jobEditor.open (file));
    CHECK (again.jobEditor.text() == fixture.session.jobEditor.text());
    std::filesystem::remove (file);

    CHECK (window.keyPressed (key ("ctrl + Z")));
    CHECK (fixture.session.jobEditor.text() == before);
}

TEST_CASE ("the list shows each set, searched by what a player says, with nothing cut off", "[window]")
{
    Fixture fixture;
    for (const char* guitar :
         { "two-humbuckers-four-knobs", "two-humbuckers-two-lead", "bass-5-split-coil", "one-humbucker-buffered" })
    {
        REQUIRE (fixture.session.jobEditor.newJob (guitar));
        for (const auto& set : fixture.session.jobEditor.presets().list ("starters"))
        {
            INFO (set << " on " << guitar);
            MainWindow window (fixture.session, false);
            window.setSize (1200, 800);
            window.setVisible (true);
            window.refresh();
            window.sheets().showStarter (set);
            runFor (20);
            auto* list = listOver (window);
            REQUIRE (list != nullptr);
            checkTree (*list);
            checkText (*list);
        }
    }
    MainWindow window (fixture.session, false);
    window.setSize (1200, 800);
    window.setVisible (true);
    window.sheets().showRewires (asRecorded);
    runFor (20);
    auto* list = listOver (window);
    REQUIRE (list != nullptr);
    searchOf (*list)->setText ("hums where", true); // how a player says it
    runFor (20);
    searchOf (*list)->onReturnKey();
    CHECK (fixture.session.jobEditor.undoName() == "Starter set: Quieter");
}
}
