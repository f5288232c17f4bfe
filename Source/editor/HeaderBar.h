#pragma once

#include "editor/Look.h"

namespace coldiron
{
/** The top of the window: the mark, the job's title and wish, and the buttons of the window. */
class HeaderBar : public Panel
{
public:
    explicit HeaderBar (UiContext&);

    // In the order of the job, which is the order of the Tab key.
    WordButton job, save, undo, redo, guitar, blindTest, view;

    void sessionChanged (const Revisions& before, const Revisions& now) override;
    void paint (juce::Graphics&) override;
    void resized() override;

private:
    juce::String wish; ///< the client's, in their words
    juce::Rectangle<int> titleArea;

    void showUndo();
    juce::String inWords() const override;
};
}
