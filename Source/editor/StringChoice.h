#pragma once

#include "editor/RadioGroup.h"

namespace coldiron
{
/** All strings together, or this one alone: an estimated option differs from string to string, and so it is heard. */
class StringChoice : public RadioGroup
{
public:
    explicit StringChoice (UiContext&);

    void sessionChanged (const Revisions& before, const Revisions& now);
    void paint (juce::Graphics&) override;
    void resized() override;

    int idealWidth (int most); ///< of all chips where they fit, else of one that goes from string to string

private:
    juce::StringArray names; ///< "all", then the strings
    bool oneChip = false;

    juce::Rectangle<int> chip (int) const;
    void pressed (int, juce::ModifierKeys) override;
};
}
