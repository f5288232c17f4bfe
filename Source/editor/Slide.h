#pragma once

#include "editor/Look.h"
#include "editor/RailSlider.h"

namespace coldiron
{
/** A number on a line: its name, a bead on a rail, the value as words. Drag, wheel, arrows; a double click goes home. */
class Slide : public RailSlider
{
public:
    struct Scale
    {
        double low = 0.0, high = 1.0, step = 0.01, home = 0.0;
    };

    Slide (UiContext&, const juce::String& title, Scale, std::function<juce::String (double)> words);

    std::function<void (double)> onMove;   ///< at every step
    std::function<void (double)> onSettle; ///< once it has been let go, or at every step of keys and wheel
    void show (double);                    ///< what the session has; ignored while it is held

    void paint (juce::Graphics&) override;
    juce::Rectangle<int> rail() const override;

private:
    UiContext& ui;
    bool held = false;

    void startedDragging() override { held = true; }
    void stoppedDragging() override;
    void valueChanged() override;
};
}
