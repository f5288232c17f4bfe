#pragma once

#include "editor/UiContext.h"

namespace coldiron
{
/** Where in the take it plays, in seconds, for screen readers to read and to set: it lies over the waveform, which draws it
    and has the mouse. */
class PlayPosition : public juce::Component
{
public:
    explicit PlayPosition (UiContext&);

private:
    class Value;
    UiContext& ui;

    std::unique_ptr<juce::AccessibilityHandler> createAccessibilityHandler() override;
};
}
