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
}
