#pragma once

#include <juce_gui_basics/juce_gui_basics.h>

namespace coldiron
{
/** A range whose values need not lie on its steps: a host may have set one in between. The step is what keys, the wheel and
    a screen reader go by. */
juce::NormalisableRange<double> freeRange (double low, double high, double step);

/** A slider on a horizontal rail: the mouse sets it where it is pressed, wheel and arrows go by one step. Each move by keys,
    wheel, typing or a screen reader is a gesture of its own. How it looks is its subclass's affair. */
class RailSlider : public juce::Slider
{
public:
    RailSlider (const juce::String& title, double low, double high, double step);

    /** Where the bead runs, in this component's pixels: low at its left end, high at its right. */
    virtual juce::Rectangle<int> rail() const = 0;

    void mouseWheelMove (const juce::MouseEvent&, const juce::MouseWheelDetails&) override;
    bool keyPressed (const juce::KeyPress&) override;
    void focusGained (FocusChangeType) override { repaint(); }
    void focusLost (FocusChangeType) override { repaint(); }

protected:
    double snapValue (double, DragMode) override; ///< to whole steps; what is shown may lie between them

private:
    void moveBy (double);
};
}
