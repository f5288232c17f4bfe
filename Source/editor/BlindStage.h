#pragma once

#include "editor/BlindBar.h"
#include "editor/BlindPage.h"
#include "editor/BlindTags.h"
#include "editor/Layout.h"

namespace coldiron
{
class ListenBar;
class WaveformView;

/** What stands in the window while tags are face down: the tags, the bar, the page with what came out; and the keys, which
    are others then. */
class BlindStage
{
public:
    /** @param hum, loop  what keys still reach while a test runs */
    BlindStage (UiContext&, ListenBar& hum, WaveformView& loop);

    BlindTags tags;
    BlindBar bar;
    BlindPage page;
    std::function<void()> onChange; ///< what is shown is another: a test began, ended or was told

    bool isRunning() const;
    bool isPageShown() const { return isRunning() || page.hasOutcome(); }
    void begin(); ///< a test was started: the tags turn over
    void turnOver();
    bool keyPressed (const juce::KeyPress&); ///< whether a test runs: then every key is its own

    /** @param strips  where the tags and their threads are */
    void arrange (const MainLayout&, juce::Rectangle<int> strips);

private:
    UiContext& ui;
    ListenBar& listen;
    WaveformView& waveform;
    bool wantsToStop = false; ///< Escape was pressed once

    void changed() const;
};
}
