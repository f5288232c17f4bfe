#pragma once

#include "editor/UiContext.h"
#include "session/OptionId.h"

namespace coldiron
{
class FirstLine;
class JobFiles;
class Sheets;
struct MainView;

/** The first minutes with the window: the line at its foot that says what to do next, until it is done or not wanted. */
class FirstMinutes
{
public:
    /** @param window  what the line stands in */
    FirstMinutes (UiContext&, juce::Component& window, Sheets&, JobFiles&);
    ~FirstMinutes();

    std::function<void()> onPlace; ///< the line came or went
    std::function<void()> onEnd;   ///< done or not wanted: not to be shown again

    void start(); ///< with the demo where it is on disk and nothing of the person's own is open
    void tick();
    void noteGuitarPicked() { guitarPicked = true; }
    FirstLine* line() { return shown.get(); }
    bool isShown() const { return shown != nullptr; }
    void place (juce::Rectangle<int>);

private:
    UiContext& ui;
    juce::Component& window;
    Sheets& sheets;
    JobFiles& files;
    std::unique_ptr<FirstLine> shown;
    bool guitarPicked = false;

    MainView view() const;
    void end();
};
}
