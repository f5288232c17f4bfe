#pragma once

#include "editor/BlindBar.h"
#include "editor/BlindPage.h"
#include "editor/BlindSetup.h"
#include "editor/BlindTags.h"
#include "editor/DecidePanel.h"
#include "editor/DrawingCache.h"
#include "editor/FirstLine.h"
#include "editor/GuitarPanel.h"
#include "editor/GuitarPictures.h"
#include "editor/Layout.h"
#include "editor/ListenBar.h"
#include "editor/MainEditor.h"
#include "editor/Overlays.h"
#include "editor/Plot.h"
#include "editor/RewireList.h"
#include "editor/SoundSheet.h"
#include "editor/TagStrip.h"
#include "editor/TakeInSheet.h"
#include "editor/WaveformView.h"
#include "editor/WiringView.h"
#include "session/Autosave.h"
#include "session/TakeExport.h"

namespace coldiron
{
/** Everything in the window, at one scale. MainEditor scales it. */
class MainWindow : public juce::Component, public juce::FileDragAndDropTarget, private juce::Timer
{
public:
    MainWindow (Bench&, bool inHost);
    ~MainWindow() override;

    void setDark (bool);
    bool isDark() const { return ui.tokens == &Tokens::dark(); }
    std::function<void (float)> onScale; ///< the person asked for another size
    std::function<void (bool)> onDark;
    std::function<void()> onSoundDevice; ///< in the app: the person wants to choose it
    void tell (const juce::String& words) { notice.say (words); }
    void takeKeyboard() { overlay != nullptr ? overlay->start() : grabKeyboardFocus(); }
    std::function<float()> scaleNow;
    std::function<juce::StringArray()> recentJobs;       ///< paths, newest first
    std::function<void (const juce::String&)> onJobFile; ///< a job was opened or saved there

    /** Unsaved work is kept in that folder from now on, and what an earlier run left there is offered. */
    void keepUnsavedIn (const std::filesystem::path& folder);
    Autosave* unsaved() { return autosave.get(); }

    void showWiring (bool);
    void showKeys (bool);
    void showSound (bool);
    void showRewires (OptionId target);
    void showBlindSetup();
    void beginBlind(); ///< a blind test was started: the tags turn over
    void turnTagsOver();
    void showStarter (const std::string& preset); ///< the list for a new option, at that starter set
    void showNotes (bool);
    void showGuitar (bool);
    void showTakeIn (bool);                ///< pickups, parts, how it was recorded, hum
    void showGuitars();                    ///< a new job, by the guitar's picture
    void startFirstSteps();                ///< the line of the first minutes; with the demo where it is on disk
    std::function<void()> onFirstStepsEnd; ///< done or not wanted: not to be shown again
    FirstLine* firstLine() { return firstSteps.get(); }
    void refresh(); ///< reads the bench at once; the timer does the same
    Plot& look() { return plot; }
    GuitarPanel& guitarPanel() { return guitar; }
    Overlay* topOverlay() { return overlay.get(); }
    bool settleDrawings (double seconds) { return drawings.waitUntilIdle (seconds); }
    const MainLayout& places() const { return arranged; }

    void paint (juce::Graphics&) override;
    void resized() override;
    bool keyPressed (const juce::KeyPress&) override;
    bool keyStateChanged (bool isKeyDown) override;
    bool isInterestedInFileDrag (const juce::StringArray&) override;
    void filesDropped (const juce::StringArray&, int x, int y) override;

private:
    Bench& bench;
    const bool inHost;
    UiContext ui;
    Look lookAndFeel;
    DrawingCache drawings;
    WordButton openButton, saveButton, undoButton, redoButton, guitarButton, viewButton, blindButton;
    WaveformView waveform;
    TagStrip strip;
    ListenBar listen;
    Plot plot;
    DecidePanel decide;
    GuitarPanel guitar;
    Notice notice;
    BlindTags blindTags;
    BlindBar blindBar;
    BlindPage blindPage;
    bool wantsToStop = false; ///< Escape was pressed once in a blind test
    std::unique_ptr<Overlay> overlay;
    std::unique_ptr<FirstLine> firstSteps;
    bool guitarPicked = false;
    std::unique_ptr<juce::FileChooser> chooser;
    std::unique_ptr<Autosave> autosave;
    std::unique_ptr<TakeExport> exporting;
    std::filesystem::path unsavedFolder, lastFile;
    int ticksSinceKept = 0;
    uint32_t keptRevision = 0, keptSettings = 0;
    bool wasChanged = false;
    std::unique_ptr<juce::TooltipWindow> tips;
    MainLayout arranged;
    Revisions seen;
    juce::String client;
    juce::Rectangle<int> titleArea;
    bool guitarOut = false;
    std::optional<OptionId> comparedFrom; ///< while a letter is held: what was heard before
    int compareKey = 0;

    void timerCallback() override;
    void setUpBlind();
    void showBlind();
    bool blindKey (const juce::KeyPress&);
    void show (std::unique_ptr<Overlay>);
    void closeOverlay();
    void placeNotice();
    void showUndo();
    void openJob();
    void saveJob();
    void saveJobAs();
    void jobMenu();
    void leaving (std::function<void()> then);
    void openTake();
    void openPickupFile (const std::string& pickup);
    bool takePickupFile (const juce::String& file, juce::Point<int>);
    void readPickupFile (const std::string& pickup, const juce::String& file);
    void findTake (int);
    void takeCame (const juce::String& name);
    void keepUnsaved();
    void offerLeft();
    void showRecover (std::vector<Recovery>);
    void noteJobFile();
    void takeUp (const Recovery&);
    void exportText (const juce::String& what, const juce::String& file, std::function<std::string()>);
    void exportDrawing (OptionId);
    void exportTakes (bool matched);
    std::shared_ptr<const Job> jobNow(); ///< with the controls as they stand at this moment
    void followExport();
    void saveTakeCard();
    juce::PopupMenu exportMenu();
    void chooseExport (int);
    void viewMenu();
    bool letterPressed (OptionId, bool hold);
    void doFirstStep (FirstSteps::Step);
    void endFirstSteps();
    MainView sight() const;
};
}
