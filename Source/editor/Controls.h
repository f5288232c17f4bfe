#pragma once

#include "editor/RadioGroup.h"
#include "session/PanelControl.h"

namespace coldiron
{
/** A knob of the guitar: the number is the control. Type 0 to 10, drag, wheel 0.5, arrows 0.1. What moves it is one gesture
    to the host; of the take it is one step of undo, kept when the gesture ends. */
class Knob : public juce::Slider
{
public:
    Knob (UiContext&, OptionId, std::string name);

    std::function<void (bool)> onTouch; ///< true while it is held or has the keyboard
    const std::string& control() const { return name; }
    void refresh();
    int idealWidth() const;
    static constexpr int height = 93, compactHeight = 74; ///< in between: the arc is small, the name on two lines

    void paint (juce::Graphics&) override;
    void resized() override;
    void mouseDown (const juce::MouseEvent&) override;
    void mouseDrag (const juce::MouseEvent&) override;
    void mouseUp (const juce::MouseEvent&) override;
    void mouseDoubleClick (const juce::MouseEvent&) override;
    void mouseWheelMove (const juce::MouseEvent&, const juce::MouseWheelDetails&) override;
    bool keyPressed (const juce::KeyPress&) override;
    void focusGained (FocusChangeType) override;
    void focusLost (FocusChangeType) override;

private:
    UiContext& ui;
    const OptionId id;
    const std::string name;
    double atStart = 10.0; ///< where it stood when the gesture began
    int gestures = 0;      ///< of those that have begun and not ended
    bool held = false;     ///< by the mouse
    juce::TextEditor field;

    bool isCompact() const { return getHeight() < height; }
    juce::Point<float> middle() const;
    bool touched() const { return held || hasKeyboardFocus (true); }
    void set (double);
    void keepRecorded();
    void startTyping (const juce::String& first);
    void endTyping (bool keep);

    void startedDragging() override;
    void stoppedDragging() override;
    void valueChanged() override;
    double snapValue (double, DragMode) override; ///< to hundredths
};

/** A switch of the guitar: a rail with one bead for each position, filled where it stands. */
class LeverRail : public RadioGroup
{
public:
    LeverRail (UiContext&, OptionId, PanelControl);

    void refresh();
    int idealWidth() const;
    int idealHeight (bool compact) const { return (twoRows() ? 76 : 60) - (compact ? 9 : 0); }
    void paint (juce::Graphics&) override;
    void resized() override;

private:
    const OptionId id;
    const PanelControl control;

    float xOf (int position) const;
    juce::String heading() const;
    bool isCompact() const { return getHeight() < idealHeight (false); }
    bool twoRows() const { return control.positions.size() > 4; }
    int standing() const; ///< the position in the session
    void throwTo (int);
};

/** Whether these stand for just those controls: a knob that only was turned keeps its component, and the keyboard with it. */
bool standFor (const std::vector<PanelControl>&, const std::vector<std::unique_ptr<Knob>>&,
               const std::vector<std::unique_ptr<LeverRail>>&);
}
