#include "editor/RailSlider.h"

#include <cmath>

namespace coldiron
{
juce::NormalisableRange<double> freeRange (double low, double high, double step)
{
    juce::NormalisableRange<double> range (
        low, high, nullptr, nullptr, [] (double least, double most, double value) { return juce::jlimit (least, most, value); });
    range.interval = step;
    return range;
}

RailSlider::RailSlider (const juce::String& title, double low, double high, double step) : Slider (LinearHorizontal, NoTextBox)
{
    setTitle (title);
    setNormalisableRange (freeRange (low, high, step));
    setVelocityModeParameters (1.0, 1, 0.0, false); // no key changes what dragging means
    setWantsKeyboardFocus (true);
    setRepaintsOnMouseActivity (false);
}

double RailSlider::snapValue (double wanted, DragMode)
{
    return getMinimum() + std::round ((wanted - getMinimum()) / getInterval()) * getInterval();
}

void RailSlider::moveBy (double by)
{
    const ScopedDragNotification gesture (*this);
    setValue (snapValue (getValue() + by, notDragging), juce::sendNotificationSync);
}

void RailSlider::mouseWheelMove (const juce::MouseEvent& e, const juce::MouseWheelDetails& wheel)
{
    if (! isEnabled())
        return Component::mouseWheelMove (e, wheel);
    if (wheel.deltaY != 0.0f && ! e.mods.isAnyMouseButtonDown())
        moveBy (wheel.deltaY > 0.0f ? getInterval() : -getInterval());
}

bool RailSlider::keyPressed (const juce::KeyPress& key)
{
    const bool up = key == juce::KeyPress::upKey || key == juce::KeyPress::rightKey;
    if (! isEnabled() || (! up && key != juce::KeyPress::downKey && key != juce::KeyPress::leftKey))
        return false;
    moveBy (up ? getInterval() : -getInterval());
    return true;
}
}
