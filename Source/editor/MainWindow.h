#pragma once

#include "editor/BlindStage.h"
#include "editor/DecidePanel.h"
#include "editor/DrawingCache.h"
#include "editor/FirstMinutes.h"
#include "editor/GuitarPanel.h"
#include "editor/HeaderBar.h"
#include "editor/JobFiles.h"
#include "editor/JobMenu.h"
#include "editor/ListenBar.h"
#include "editor/Plot.h"
#include "editor/Sheets.h"
#include "editor/TagStrip.h"
#include "editor/WaveformView.h"

namespace coldiron
{
class UnsavedWork;

/** What a window asks of what holds it, and tells it. */
struct WindowHolder
{
    std::function<float()> scaleNow;
    std::function<void (float)> onScale; ///< the person asked for another size
    std::function<void (bool)> onDark;
    std::function<void()> onSoundDevice; ///< in the app: the person wants to choose it
};

/** Everything in the window, at one scale. MainEditor scales it. */
class MainWindow : public juce::Component, public juce::FileDragAndDropTarget, private juce::Timer
{
public:
    MainWindow (Session&, bool inHost);
    ~MainWindow() override;

    WindowHolder holder;
    JobFiles& jobFiles() { return files; }
    JobMenu& jobMenu() { return menu; }
    Sheets& sheets() { return sheet; }
    BlindStage& blindStage() { return blind; }
    Plot& look() { return plot; }
    GuitarPanel& guitarPanel() { return guitar; }
    FirstMinutes& firstMinutes() { return first; }
    UnsavedWork* unsavedWork() { return unsaved.get(); }
    const MainLayout& places() const { return arranged; }

    void setDark (bool);
    bool isDark() const { return ui.tokens == &Tokens::dark(); }
    void tell (const juce::String& words) { notice.say (words); }
    void takeKeyboard() { sheet.top() != nullptr ? sheet.top()->start() : grabKeyboardFocus(); }
    void refresh(); ///< reads the session at once; the timer does the same
    bool settleDrawings (double seconds) { return drawings.waitUntilIdle (seconds); }

    /** Unsaved work is kept in that folder from now on, and what an earlier run left there is offered. */
    void keepUnsavedIn (const std::filesystem::path& folder);

    void showGuitar (bool);
    void showBlindSetup();
    void beginBlind(); ///< a blind test was started: the tags turn over

    void paint (juce::Graphics&) override;
    void resized() override;
    bool keyPressed (const juce::KeyPress&) override;
    bool keyStateChanged (bool isKeyDown) override;
    bool isInterestedInFileDrag (const juce::StringArray&) override { return true; }
    void filesDropped (const juce::StringArray&, int x, int y) override;

    std::unique_ptr<juce::AccessibilityHandler> createAccessibilityHandler() override
    {
        return accessible (*this, juce::AccessibilityRole::group);
    }

private:
    /** A letter held with Shift: what was heard before comes back when it is let go. */
    struct Comparing
    {
        OptionId from = asRecorded;
        int keyCode = 0;
    };

    Session& session;
    UiContext ui;
    Look lookAndFeel;
    DrawingCache drawings;
    JobFiles files;
    Sheets sheet;
    JobMenu menu;
    HeaderBar header;
    WaveformView waveform;
    TagStrip strip;
    ListenBar listen;
    Plot plot;
    DecidePanel decide;
    GuitarPanel guitar;
    BlindStage blind;
    Notice notice;
    FirstMinutes first;
    std::unique_ptr<UnsavedWork> unsaved;
    std::unique_ptr<juce::TooltipWindow> tips;
    MainLayout arranged;
    Revisions seen;
    std::optional<Comparing> comparing;
    int ticksSinceKept = 0;
    bool guitarOut = false;

    void timerCallback() override;
    std::array<Panel*, 11> panels();
    void wire();
    void viewMenu();
    void showBlind();
    void placeOverlay();
    void placeNotice();
    bool commandKey (const juce::KeyPress&);
    bool letterPressed (OptionId, int keyCode, bool hold);
};
}
