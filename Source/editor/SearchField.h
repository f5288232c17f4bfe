#pragma once

#include <juce_gui_basics/juce_gui_basics.h>

namespace coldiron
{
/** A field to search with: keys are offered to the list beside it before the text takes them. */
class SearchField : public juce::TextEditor
{
public:
    std::function<bool (const juce::KeyPress&)> onKeyFirst; ///< true: taken

    bool keyPressed (const juce::KeyPress& key) override
    {
        return (onKeyFirst && onKeyFirst (key)) || TextEditor::keyPressed (key);
    }
};

/** The next row up or down (step -1 or 1) that is no heading; -1 where there is none. */
template <typename IsHeading>
int nextRow (int from, int step, int count, IsHeading&& isHeading)
{
    int row = from + step;
    while (row >= 0 && row < count && isHeading (row))
        row += step;
    return row >= 0 && row < count ? row : -1;
}
}
