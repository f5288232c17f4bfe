// A guitar from the front, small: strings, coils at their distances, knobs, switches.

#include "editor/GuitarPictures.h"

namespace coldiron
{
namespace
{
using Lever = GuitarPicture::Lever;

void paintKnob (juce::Graphics& g, juce::Point<float> c, const GuitarPicture::Control& knob, const Tokens& t)
{
    g.setColour (t.ink);
    g.drawEllipse (juce::Rectangle<float> (17, 17).withCentre (c), 1.6f);
    if (knob.rings > 1)
        g.drawEllipse (juce::Rectangle<float> (9, 9).withCentre (c), 1.4f);
    else
        g.drawLine ({ c, c.translated (5.5f, -5.5f) }, 1.6f);
    if (knob.pulls)
    {
        g.setColour (t.mute);
        g.drawEllipse (juce::Rectangle<float> (23, 23).withCentre (c), 1.2f);
    }
}

void paintLever (juce::Graphics& g, juce::Point<float> c, const GuitarPicture::Control& lever, const Tokens& t)
{
    g.setColour (t.ink);
    switch (lever.lever)
    {
    case Lever::blade:
        g.drawRoundedRectangle (juce::Rectangle<float> (36, 8).withCentre (c), 4.0f, 1.5f);
        for (int i = 0; i < lever.positions; ++i)
            g.fillEllipse (
                juce::Rectangle<float> (2.4f, 2.4f)
                    .withCentre (
                        { c.x - 14.0f + 28.0f * static_cast<float> (i) / static_cast<float> (juce::jmax (1, lever.positions - 1)),
                          c.y + 9.0f }));
        g.fillRoundedRectangle (juce::Rectangle<float> (4, 15).withCentre (c.translated (14.0f, -2.0f)), 2.0f);
        break;
    case Lever::rotary:
        g.drawEllipse (juce::Rectangle<float> (15, 15).withCentre (c), 1.5f);
        g.drawLine ({ c, c.getPointOnCircumference (7.0f, -2.2f) }, 1.8f);
        for (int i = 0; i < lever.positions; ++i)
            g.fillEllipse (
                juce::Rectangle<float> (2.4f, 2.4f)
                    .withCentre (c.getPointOnCircumference (
                        11.0f,
                        -2.2f + 4.4f * static_cast<float> (i) / static_cast<float> (juce::jmax (1, lever.positions - 1)))));
        break;
    case Lever::push:
        g.drawEllipse (juce::Rectangle<float> (12, 12).withCentre (c), 1.5f);
        g.fillEllipse (juce::Rectangle<float> (6, 6).withCentre (c));
        break;
    default: // toggles stand large, mini switches small
    {
        const float size = lever.lever == Lever::toggle ? 15.0f : 9.0f;
        g.drawEllipse (juce::Rectangle<float> (size, size).withCentre (c), 1.5f);
        g.drawLine ({ c, c.translated (size * 0.55f, -size * 0.75f) }, 3.0f);
    }
    }
}
}

void paintGuitar (juce::Graphics& g, const GuitarPicture& picture, juce::Rectangle<float> area, const Tokens& t)
{
    auto controls = area.removeFromBottom (28.0f);
    area.removeFromBottom (4.0f);
    // The same stretch of the scale for all, a third of it and a little: distances can be compared by eye.
    const double reach = picture.scaleMm * 0.36;
    const float bridge = area.getRight() - 8.0f, left = area.getX();
    const auto xOf = [&] (double mm) { return bridge - static_cast<float> (mm / reach) * (bridge - left); };
    const auto field = area.reduced (0.0f, 9.0f);
    const auto yOf = [&] (int string)
    {
        return picture.strings > 1
                   ? field.getY() + field.getHeight() * static_cast<float> (string) / static_cast<float> (picture.strings - 1)
                   : field.getCentreY();
    };
    g.setColour (t.mute);
    for (int s = 0; s < picture.strings; ++s)
        g.fillRect (left, yOf (s) - 0.5f, bridge - left,
                    1.8f - 1.0f * static_cast<float> (s) / static_cast<float> (juce::jmax (1, picture.strings - 1)));
    g.setColour (t.ink);
    g.fillRoundedRectangle (bridge - 2.0f, area.getY() + 3.0f, 4.0f, area.getHeight() - 6.0f, 2.0f);
    for (const auto& coil : picture.coils)
    {
        const auto share = [&] (int string) { return static_cast<double> (string) / juce::jmax (1, picture.strings - 1); };
        const auto at = [&] (int string) { return xOf (coil.lowMm + (coil.highMm - coil.lowMm) * share (string)); };
        juce::Path line;
        const float over = 4.5f;
        line.startNewSubPath (at (coil.firstString), yOf (coil.firstString) - over);
        line.lineTo (at (coil.lastString), yOf (coil.lastString) + over);
        g.setColour (t.ink);
        g.strokePath (line, juce::PathStrokeType (9.0f, juce::PathStrokeType::mitered, juce::PathStrokeType::rounded));
        g.setColour (t.sheet);
        g.strokePath (line, juce::PathStrokeType (6.0f, juce::PathStrokeType::mitered, juce::PathStrokeType::rounded));
    }
    const auto count = static_cast<float> (picture.controls.size());
    float width = 0.0f;
    for (const auto& control : picture.controls)
        width += ! control.isKnob && control.lever == Lever::blade ? 46.0f : 27.0f;
    float x = controls.getX() + juce::jmax (0.0f, (controls.getWidth() - width) / 2.0f);
    const float squeeze = count > 0.0f && width > controls.getWidth() ? controls.getWidth() / width : 1.0f;
    for (const auto& control : picture.controls)
    {
        const float each = (! control.isKnob && control.lever == Lever::blade ? 46.0f : 27.0f) * squeeze;
        const juce::Point<float> c (x + each / 2.0f, controls.getCentreY());
        control.isKnob ? paintKnob (g, c, control, t) : paintLever (g, c, control, t);
        x += each;
    }
}
}
