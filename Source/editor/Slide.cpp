#include "editor/Slide.h"

#include <cmath>

namespace coldiron
{
namespace
{
constexpr int nameWidth = 104, valueWidth = 92;
}

Slide::Slide (UiContext& d, const juce::String& title, Range r, std::function<juce::String (double)> w)
    : ui (d), range (r), words (std::move (w)), now (r.home)
{
    setTitle (title);
    setWantsKeyboardFocus (true);
}

juce::Rectangle<float> Slide::rail() const
{
    return getLocalBounds().toFloat().withTrimmedLeft (nameWidth + 8).withTrimmedRight (valueWidth + 8);
}

void Slide::setValue (double value)
{
    if (held || value == now)
        return;
    now = value;
    repaint();
}

void Slide::paint (juce::Graphics& g)
{
    const auto& t = ui.colours();
    const auto line = rail();
    const float middle = line.getCentreY(), share = static_cast<float> ((now - range.low) / (range.high - range.low));
    const float x = line.getX() + line.getWidth() * juce::jlimit (0.0f, 1.0f, share);
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
    type::draw (g, words (now), getLocalBounds().removeFromRight (valueWidth), juce::Justification::centredLeft, false);
    if (hasKeyboardFocus (false))
        paintFocus (g, getLocalBounds().toFloat(), 6.0f, t);
}

void Slide::go (double to, bool settles)
{
    to = juce::jlimit (range.low, range.high, range.low + std::round ((to - range.low) / range.step) * range.step);
    const bool moved = to != now;
    now = to;
    repaint();
    if (moved && onMove)
        onMove (now);
    if (settles && onSettle)
        onSettle (now);
}

void Slide::mouseDown (const juce::MouseEvent& e)
{
    if (! isEnabled())
        return;
    held = true;
    mouseDrag (e);
}

void Slide::mouseDrag (const juce::MouseEvent& e)
{
    const auto line = rail();
    if (held)
        go (range.low + (range.high - range.low) * static_cast<double> ((e.position.x - line.getX()) / line.getWidth()), false);
}

void Slide::mouseUp (const juce::MouseEvent&)
{
    if (held && onSettle)
        onSettle (now);
    held = false;
}

void Slide::mouseDoubleClick (const juce::MouseEvent&)
{
    if (isEnabled())
        go (range.home, true);
}

void Slide::mouseWheelMove (const juce::MouseEvent&, const juce::MouseWheelDetails& wheel)
{
    if (isEnabled())
        go (now + (wheel.deltaY > 0 ? range.step : -range.step), true);
}

bool Slide::keyPressed (const juce::KeyPress& key)
{
    const bool up = key == juce::KeyPress::upKey || key == juce::KeyPress::rightKey;
    if (! isEnabled() || (! up && key != juce::KeyPress::downKey && key != juce::KeyPress::leftKey))
        return false;
    go (now + (up ? range.step : -range.step), true);
    return true;
}
}
