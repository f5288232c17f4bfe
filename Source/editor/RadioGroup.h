#pragma once

#include "editor/Look.h"

#include <memory>
#include <vector>

namespace coldiron
{
/** Buttons of which one is on, as one stop of the Tab key: arrows go along them, Return goes round. The group draws them
    all; a button is the place that is pressed, and what a screen reader finds there. */
class RadioGroup : public juce::Component, public juce::SettableTooltipClient
{
public:
    RadioGroup (UiContext&, const juce::String& title);
    ~RadioGroup() override;

    std::function<void (int)> onChoice; ///< asked at every press, also of the one that is on
    void setChosen (int);               ///< without asking onChoice; -1: none
    int chosen() const { return current; }
    int count() const { return static_cast<int> (buttons.size()); }

    bool keyPressed (const juce::KeyPress&) override;
    void focusOfChildComponentChanged (FocusChangeType) override { repaint(); }
    void enablementChanged() override { repaint(); }

protected:
    UiContext& ui;
    bool wraps = false; ///< arrows go on from the last to the first

    void setChoices (const juce::StringArray& titles); ///< one button each; those that stay keep the keyboard
    void choose (int);
    void place (int index, juce::Rectangle<int>);   ///< where it is pressed; an empty place: nowhere
    virtual void pressed (int, juce::ModifierKeys); ///< chooses it
    virtual juce::String tipOf (int) { return getTooltip(); }
    void paintGroupFocus (juce::Graphics&, float corner);

private:
    class Choice;
    std::vector<std::unique_ptr<Choice>> buttons;
    int current = -1;

    void tellButtons();
    std::unique_ptr<juce::AccessibilityHandler> createAccessibilityHandler() override;
};

/** Two or more words of which one holds. */
class Segments : public RadioGroup
{
public:
    Segments (UiContext&, juce::StringArray words, const juce::String& title);

    int idealWidth() const;
    void paint (juce::Graphics&) override;
    void resized() override;

private:
    const juce::StringArray words;

    juce::Rectangle<float> segment (int) const;
};
}
