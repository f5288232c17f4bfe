#pragma once

#include "editor/Overlays.h"

namespace coldiron
{
class DrawingCache;
class JobFiles;
class UnsavedWork;
struct Recovery;

/** The sheet that lies over the window, one at a time. */
class Sheets
{
public:
    /** @param window  what they lie over; its keyboard comes back when they go */
    Sheets (UiContext&, juce::Component& window, DrawingCache&, JobFiles&);
    ~Sheets();

    std::function<void()> onPlace;        ///< another one: it wants its place
    std::function<void()> onGuitarPicked; ///< a job was begun on a guitar of the person's choice
    std::function<void()> onBlindTest;    ///< one was started from its sheet

    Overlay* top() const { return overlay.get(); }
    bool isWiring() const;

    /** What may stay open while tags are face down: the keys alone. */
    bool tells() const;

    void close(); ///< what was typed in it is kept

    void showWiring (bool);
    void toggleWiring() { showWiring (! isWiring()); }
    void showSound (bool);
    void toggleSound();
    void showKeys (bool);
    void showNotes (bool);
    void showTakeIn (bool); ///< pickups, parts, how it was recorded, hum
    void toggleTakeIn();
    void showGuitars();                           ///< a new job, by the guitar's picture
    void showRewires (OptionId target);           ///< asRecorded: for a new option
    void showStarter (const std::string& preset); ///< the list for a new option, at that starter set
    void showBlindSetup();
    void showRecover (UnsavedWork&, std::vector<Recovery>);

    /** A file of a pickup that was dropped: read for the one it was dropped on, else it is asked which is meant.
        @return whether it is one */
    bool takePickupFile (const juce::String& file, juce::Point<int> at);

private:
    UiContext& ui;
    juce::Component& window;
    DrawingCache& drawings;
    JobFiles& files;
    std::unique_ptr<Overlay> overlay;

    void show (std::unique_ptr<Overlay>);
    void later (std::function<void()>); ///< what asked may be the sheet that goes
};
}
