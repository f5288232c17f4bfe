#pragma once

#include "editor/Look.h"

namespace coldiron
{
/** A number on a line: its name, a bead on a rail, the value as words. Drag, wheel, arrows; a double click goes home. */
class Slide : public juce::Component, public juce::SettableTooltipClient
{
public:
    struct Range
    {
        double low = 0.0, high = 1.0, step = 0.01, home = 0.0;
    };

    Slide (UiContext&, const juce::String& title, Range, std::function<juce::String (double)> words);

    std::function<void (double)> onMove;   ///< at every step
    std::function<void (double)> onSettle; ///< once it has been let go, or at every step of keys and wheel
    void setValue (double);                ///< ignored while it is held
    double value() const { return now; }

    void paint (juce::Graphics&) override;
    void mouseDown (const juce::MouseEvent&) override;
    void mouseDrag (const juce::MouseEvent&) override;
    void mouseUp (const juce::MouseEvent&) override;
    void mouseDoubleClick (const juce::MouseEvent&) override;
    void mouseWheelMove (const juce::MouseEvent&, const juce::MouseWheelDetails&) override;
    bool keyPressed (const juce::KeyPress&) override;
    void focusGained (FocusChangeType) override { repaint(); }
    void focusLost (FocusChangeType) override { repaint(); }
    void enablementChanged() override { repaint(); }

private:
    UiContext& ui;
    const Range range;
    const std::function<juce::String (double)> words;
    double now = 0.0;
    bool held = false;

    juce::Rectangle<float> rail() const;
    void go (double, bool settles);
};
}
