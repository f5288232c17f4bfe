#pragma once

#include "editor/Look.h"

namespace coldiron
{
/** A button that the component it lies on draws: it brings the mouse, Return, the outline of the keyboard, and what a
    screen reader is told. While tags are face down Return belongs to the window. */
class BareButton : public juce::Button
{
public:
    BareButton (UiContext&, const juce::String& title, float corner = 5.0f);

    void setOn (bool); ///< makes it one that is on or off, and says which

    bool keyPressed (const juce::KeyPress&) override;

private:
    UiContext& ui;
    const float corner;

    void paintButton (juce::Graphics&, bool over, bool down) override;
};
}
