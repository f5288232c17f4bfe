#pragma once

#include "analysis/OhmTable.h"
#include "editor/Controls.h"

#include <array>

namespace coldiron
{
/** The option heard: its knobs and switches, four figures, and the agreement. */
class DecidePanel : public Panel
{
public:
    explicit DecidePanel (UiContext&);

    std::function<void (const juce::String&)> onSweep; ///< a knob's plain name while it is held; empty ends it
    void setShowsSteps (bool);
    void sessionChanged (const Revisions& before, const Revisions& now) override;
    void paint (juce::Graphics&) override;
    void resized() override;
    void focusFirstKnob();
    void focusOfChildComponentChanged (FocusChangeType cause) override { revealFocus (scroll, cause); }

private:
    OptionId shown = asRecorded;
    std::vector<std::unique_ptr<Knob>> knobs;
    std::vector<std::unique_ptr<LeverRail>> levers;
    /** Says when it was scrolled. */
    struct Scroller : juce::Viewport
    {
        std::function<void()> onMove;
        void visibleAreaChanged (const juce::Rectangle<int>&) override
        {
            if (onMove)
                onMove();
        }
    };

    Scroller scroll;
    juce::Component inside;
    WordButton agree, notes;
    bool showsSteps = false;
    juce::Rectangle<int> figuresArea, stepsArea, hintArea;
    juce::StringArray steps;
    std::vector<OhmReading> ohmReadings; ///< of the option shown, for every switch position

    void rebuild();
    void placeControls (int width, bool compact);
    juce::String hint() const; ///< what is below and not seen; empty: all is
    int contentHeight = 0;
    using Figures = std::array<std::pair<juce::String, juce::String>, 4>; ///< each name and its value
    Figures figures() const;
    juce::String heading() const;
    juce::String inWords() const override;
    void paintFigures (juce::Graphics&);
    void paintSteps (juce::Graphics&);
    void touched (const std::string& knob, bool on);
    juce::String agreedLetter() const;
    juce::String ohmsNow() const; ///< what a meter reads at the jack, switches as they stand, knobs at 10
};
}
