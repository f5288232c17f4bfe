// Takes, notes and work left behind, in the window: by keyboard, undone, saved and opened the same; nothing cut off.
#include "Folder.h"
#include "Windows.h"

#include "editor/NotesSheet.h"
#include "editor/RecoverSheet.h"
#include "session/UnsavedWork.h"

#include <sys/wait.h>

#include <csignal>
#include <cstdlib>
#include <fstream>

namespace takesWindowTest
{
using namespace coldiron;
using namespace windows;
namespace fs = std::filesystem;

namespace
{
template <typename T>
T* find (juce::Component& parent)
{
    for (auto* child : parent.getChildren())
    {
        if (auto* wanted = dynamic_cast<T*> (child))
            return wanted;
        if (auto* deeper = find<T> (*child))
            return deeper;
    }
    return nullptr;
}

juce::KeyPress plain (int code) { return juce::KeyPress (code); }

void checkAtSizes (MainWindow& window)
{
    struct Size
    {
        int width, height;
    };
    for (const auto size : { Size { 900, 600 }, Size { 1200, 800 }, Size { 1920, 1200 } })
    {
        INFO (size.width << " x " << size.height);
        window.setSize (size.width, size.height);
        window.refresh();
        checkTree (window);
        checkText (window);
    }
}
}

TEST_CASE ("takes are chosen, renamed and removed by the keyboard, undone, saved and opened the same", "[window]")
{
    Folder folder;
    Fixture fixture;
    MainWindow window (fixture.session, false);
    window.setSize (1200, 800);
    window.setVisible (true);
    REQUIRE (fixture.session.takes.add (folder.take ("bridge pickup alone.wav")));
    REQUIRE (fixture.session.takes.add (folder.take ("neck.wav")));
    REQUIRE (fixture.session.waitUntilReported (20.0));
    window.refresh();
    auto* chips = find<TakeChips> (window);
    REQUIRE (chips != nullptr);
    CHECK (chips->isVisible());
    CHECK (fixture.session.takes.playing() == 1);
    CHECK (chips->keyPressed (plain (juce::KeyPress::leftKey)));
    CHECK (fixture.session.takes.playing() == 0);
    CHECK (window.keyPressed (key ("T")));
    CHECK (fixture.session.takes.playing() == 1);
    REQUIRE (fixture.session.waitUntilReported (20.0));
    window.refresh();
    checkAtSizes (window);

    CHECK (chips->keyPressed (plain (juce::KeyPress::F2Key)));
    auto* lane = dynamic_cast<WaveformView*> (chips->getParentComponent());
    REQUIRE (lane != nullptr);
    auto* field = find<juce::TextEditor> (*lane);
    REQUIRE (field != nullptr);
    REQUIRE (field->isVisible());
    CHECK (field->getText() == "neck.wav");
    field->setText ("Neck, slow", false);
    field->onReturnKey();
    window.refresh();
    CHECK (takeLines (fixture.session.jobEditor)[1].name == "Neck, slow");
    const auto named = fixture.session.jobEditor.text();

    CHECK (chips->keyPressed (plain (juce::KeyPress::deleteKey)));
    window.refresh();
    REQUIRE (fixture.session.jobEditor.job()->takes.size() == 1);
    CHECK (window.keyPressed (key ("ctrl + Z")));
    CHECK (fixture.session.jobEditor.text() == named);

    REQUIRE (fixture.session.jobEditor.save (folder.path / "job.json"));
    Session again { PresetFolders { { fs::path (COLDIRON_SOURCE) / "presets" } } };
    REQUIRE (again.jobEditor.open (folder.path / "job.json"));
    CHECK (again.jobEditor.text() == fixture.session.jobEditor.text());
    CHECK (again.jobEditor.text().find ("\"neck.wav\"") != std::string::npos); // beside the job: relative
}

TEST_CASE ("a take whose file is gone says so, keeps its place and is found again", "[window]")
{
    Folder folder;
    Fixture fixture;
    const auto taken = folder.take ("verse.wav");
    REQUIRE (fixture.session.takes.add (taken));
    REQUIRE (fixture.session.jobEditor.save (folder.path / "job.json"));
    REQUIRE (fixture.session.waitUntilReported (20.0)); // it has been read by then
    fs::rename (taken, folder.path / "elsewhere.wav");
    REQUIRE (fixture.session.jobEditor.open (folder.path / "job.json"));
    REQUIRE (fixture.session.waitUntilReported (20.0));
    MainWindow window (fixture.session, false);
    window.setVisible (true);
    checkAtSizes (window);
    auto* lane = find<WaveformView> (window);
    REQUIRE (lane != nullptr);
    auto* button = find<WordButton> (*lane);
    REQUIRE (button != nullptr);
    CHECK (button->isVisible());
    CHECK (button->getName() == "Find file");
    REQUIRE (relinkTake (fixture.session.jobEditor, 0, folder.path / "elsewhere.wav"));
    REQUIRE (fixture.session.waitUntilReported (20.0));
    window.refresh();
    CHECK_FALSE (button->isVisible());
    CHECK (window.keyPressed (key ("ctrl + Z")));
    REQUIRE (fixture.session.waitUntilReported (20.0));
    window.refresh();
    CHECK (button->isVisible());
}

TEST_CASE ("notes are typed, undone and kept in the job", "[window]")
{
    Fixture fixture;
    fixture.session.monitor.hear (OptionId::B);
    MainWindow window (fixture.session, false);
    window.setSize (1200, 800);
    window.setVisible (true);
    window.refresh();
    CHECK (window.keyPressed (key ("J")));
    auto* sheet = find<NotesSheet> (window);
    REQUIRE (sheet != nullptr);
    checkTree (*sheet);
    checkText (*sheet, 20);
    std::vector<juce::TextEditor*> fields;
    for (auto* child : sheet->getChildren())
        if (auto* field = dynamic_cast<juce::TextEditor*> (child))
            fields.push_back (field);
    REQUIRE (fields.size() == 3);
    CHECK (fields[0]->getText() == "Too dark in the middle."); // what the older key said
    fields[0]->setText ("Brighter, \"like\" glass", false);
    fields[0]->onReturnKey();
    fields[2]->setText ("The client laughed.\nTake it.", false);
    fields[2]->onFocusLost();
    CHECK (fixture.session.jobEditor.job()->wish == "Brighter, \"like\" glass");
    CHECK (fixture.session.jobEditor.text().find ("The client laughed.\\nTake it.") != std::string::npos);
    CHECK (fixture.session.jobEditor.undoName() == "Notes on B");
    REQUIRE (fixture.session.jobEditor.undo());
    CHECK (fixture.session.jobEditor.text().find ("laughed") == std::string::npos);
    REQUIRE (fixture.session.jobEditor.undo());
    CHECK (fixture.session.jobEditor.job()->wish == "Too dark in the middle.");
}

namespace
{
/** A window opened where an earlier one left unsaved work: it is offered at once. */
struct NextWindow
{
    Fixture fixture;
    MainWindow window { fixture.session, false };
    RecoverSheet* sheet = nullptr;

    explicit NextWindow (const Folder& folder)
    {
        window.setSize (1200, 800);
        window.setVisible (true);
        window.keepUnsavedIn (folder.path / "unsaved");
        sheet = find<RecoverSheet> (window);
        REQUIRE (sheet != nullptr);
    }
};
}

TEST_CASE ("work left behind is offered, opens with its own file, and is gone once saved", "[window]")
{
    Folder folder;
    {
        Fixture before; // a run that ended with unsaved work
        REQUIRE (before.session.jobEditor.save (folder.path / "job.json"));
        MainWindow window (before.session, false);
        window.setSize (1200, 800);
        window.keepUnsavedIn (folder.path / "unsaved");
        REQUIRE (before.session.options.rename (OptionId::A, "Not saved"));
        runFor (3500); // kept every two seconds
        REQUIRE (window.unsavedWork()->autosave().waitUntilIdle (10.0));
        CHECK (fs::exists (window.unsavedWork()->autosave().file()));
        REQUIRE (before.session.options.rename (OptionId::A, "Changed a moment before the end"));
    }
    NextWindow next (folder);
    auto& [fixture, window, sheet] = next;
    checkTree (*sheet);
    checkText (*sheet, 40);
    WordButton* open = nullptr;
    for (auto* child : sheet->getChildren())
        if (auto* button = dynamic_cast<WordButton*> (child); button != nullptr && button->getName() == "Open it")
            open = button;
    REQUIRE (open != nullptr);
    CHECK (open->keyPressed (plain (juce::KeyPress::returnKey)));
    runFor (100);
    CHECK (fixture.session.jobEditor.job()->find ("A")->name == "Changed a moment before the end");
    CHECK (fixture.session.jobEditor.file() == folder.path / "job.json");
    CHECK (fixture.session.jobEditor.isChanged());
    runFor (2500);
    REQUIRE (window.unsavedWork()->autosave().waitUntilIdle (10.0));
    CHECK (fs::exists (window.unsavedWork()->autosave().file()));
    CHECK (window.keyPressed (key ("ctrl + S")));
    runFor (2500);
    REQUIRE (window.unsavedWork()->autosave().waitUntilIdle (10.0));
    CHECK_FALSE (fs::exists (window.unsavedWork()->autosave().file()));
    Session again { PresetFolders { { fs::path (COLDIRON_SOURCE) / "presets" } } };
    REQUIRE (again.jobEditor.open (folder.path / "job.json"));
    CHECK (again.jobEditor.job()->find ("A")->name == "Changed a moment before the end");
}

// Runs in a process of its own, for the case under it: it never comes back.
TEST_CASE ("a window with unsaved work is killed", "[.killed]")
{
    const char* folder = std::getenv ("COLDIRON_KILLED_IN");
    REQUIRE (folder != nullptr);
    Fixture fixture;
    REQUIRE (fixture.session.jobEditor.save (fs::path (folder) / "job.json"));
    MainWindow window (fixture.session, false);
    window.setSize (1200, 800);
    window.keepUnsavedIn (fs::path (folder) / "unsaved");
    REQUIRE (fixture.session.options.rename (OptionId::A, "Typed before the end"));
    fixture.session.controls.setKnob (OptionId::A, "bridge-tone", 3.0);
    for (int i = 0; i < 200 && ! fs::exists (window.unsavedWork()->autosave().file()); ++i)
        runFor (50);
    REQUIRE (window.unsavedWork()->autosave().waitUntilIdle (10.0));
    std::raise (SIGKILL); // no destructor, no handler
}

TEST_CASE ("the work of a killed process is offered by the next window, whole", "[window]")
{
    const Folder folder;
    const auto program = juce::File::getSpecialLocation (juce::File::currentExecutableFile).getFullPathName().toStdString();
    const auto command = "COLDIRON_KILLED_IN='" + folder.path.string() + "' '" + program + "' '[.killed]' > /dev/null 2>&1";
    const int status = std::system (command.c_str());
    INFO ("status " << status);
    CHECK (((WIFSIGNALED (status) && WTERMSIG (status) == SIGKILL)
            || (WIFEXITED (status) && WEXITSTATUS (status) == 128 + SIGKILL)));

    NextWindow next (folder);
    auto& [fixture, window, sheet] = next;
    const auto left = leftWork (folder.path / "unsaved");
    REQUIRE (left.size() == 1);
    sheet->onOpen (left.front());
    runFor (100);
    CHECK (fixture.session.jobEditor.job()->find ("A")->name == "Typed before the end");
    CHECK (fixture.session.controls.setting (OptionId::A).knob ("bridge-tone") == Approx (3.0));
    CHECK (fixture.session.jobEditor.file() == folder.path / "job.json"); // Save goes there
    Session saved { PresetFolders { { fs::path (COLDIRON_SOURCE) / "presets" } } };
    REQUIRE (saved.jobEditor.open (folder.path / "job.json")); // and what was saved is untouched
    CHECK (saved.jobEditor.job()->find ("A")->name == "Bridge in parallel");
}
}
