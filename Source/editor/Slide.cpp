#include "editor/Slide.h"

namespace coldiron
{
namespace
{
constexpr int nameWidth = 104, valueWidth = 92;
}

Slide::Slide (UiContext& d, const juce::String& title, Scale scale, std::function<juce::String (double)> words)
    : RailSlider (title, scale.low, scale.high, scale.step), ui (d)
{
    textFromValueFunction = std::move (words);
    setDoubleClickReturnValue (true, scale.home);
    setValue (scale.home, juce::dontSendNotification);
}

juce::Rectangle<int> Slide::rail() const
{
    return getLocalBounds().withTrimmedLeft (nameWidth + 8).withTrimmedRight (valueWidth + 8);
}

void Slide::show (double value)
{
    if (! held)
        setValue (value, juce::dontSendNotification);
}

void Slide::stoppedDragging()
{
    held = false;
    if (onSettle)
        onSettle (getValue());
}

void Slide::valueChanged()
{
    if (onMove)
        onMove (getValue());
}

void Slide::paint (juce::Graphics& g)
{
    const auto& t = ui.colours();
    const auto line = rail().toFloat();
    const float middle = line.getCentreY(),
                x = line.getX() + line.getWidth() * static_cast<float> (valueToProportionOfLength (getValue()));
    g.setColour (t.mute);
    g.setFont (type::text (13.0f));
    type::draw (g, getTitle(), getLocalBounds().removeFromLeft (nameWidth), juce::Justification::centredLeft, false);
    g.setColour (t.line);
    g.fillRoundedRectangle (line.withSizeKeepingCentre (line.getWidth(), 3.0f), 1.5f);
    if (isEnabled())
    {
        g.setColour (t.ink);
        g.fillRoundedRectangle (juce::Rectangle<float> (line.getX(), middle - 1.5f, x - line.getX(), 3.0f), 1.5f);
        g.fillEllipse (x - 7.0f, middle - 7.0f, 14.0f, 14.0f);
    }
    else
        g.drawEllipse (x - 6.0f, middle - 6.0f, 12.0f, 12.0f, 1.5f);
    g.setColour (isEnabled() ? t.ink : t.mute);
    g.setFont (isEnabled() ? type::bold (13.0f) : type::text (13.0f));
    type::draw (g, getTextFromValue (getValue()), getLocalBounds().removeFromRight (valueWidth), juce::Justification::centredLeft,
                false);
    if (hasKeyboardFocus (false))
        paintFocus (g, getLocalBounds().toFloat(), 6.0f, t);
}
}
