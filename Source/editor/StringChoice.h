#pragma once

#include "editor/Look.h"

namespace coldiron
{
/** All strings together, or this one alone: an estimated option differs from string to string, and so it is heard. */
class StringChoice : public Panel, public juce::SettableTooltipClient
{
public:
    explicit StringChoice (UiContext&);

    void benchChanged (const Revisions& before, const Revisions& now) override;
    void paint (juce::Graphics&) override;
    void mouseDown (const juce::MouseEvent&) override;
    bool keyPressed (const juce::KeyPress&) override;
    void focusGained (FocusChangeType) override { repaint(); }
    void focusLost (FocusChangeType) override { repaint(); }

    int idealWidth (int most); ///< of all chips where they fit, else of one that goes from string to string

private:
    juce::StringArray names; ///< "all", then the strings
    int chosen = 0;          ///< index into names
    bool oneChip = false;

    juce::Rectangle<int> chip (int) const;
    void choose (int);
};
}
