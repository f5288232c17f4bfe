#include "editor/Controls.h"

#include "editor/RailSlider.h"
#include "editor/Words.h"
#include "session/Session.h"

#include <algorithm>
#include <cmath>

namespace coldiron
{
namespace
{
constexpr float turn = juce::MathConstants<float>::pi * 1.5f, start = -juce::MathConstants<float>::pi * 0.75f;
}

Knob::Knob (UiContext& d, OptionId t, std::string n)
    : Slider (RotaryHorizontalVerticalDrag, NoTextBox), ui (d), id (t), name (std::move (n))
{
    setNormalisableRange (freeRange (0.0, 10.0, 0.1));
    setVelocityModeParameters (1.0, 1, 0.0, false); // no key but Shift changes what dragging means
    setWantsKeyboardFocus (true);
    setRepaintsOnMouseActivity (false);
    textFromValueFunction = [] (double value) { return words::knob (value); };
    valueFromTextFunction = [] (const juce::String& text) { return text.replaceCharacter (',', '.').getDoubleValue(); };
    setTitle (words::title (name));
    field.setTitle (words::title (name) + ", 0 to 10");
    setTooltip (words::title (name) + ": drag, turn the wheel, or type 0 to 10");
    addChildComponent (field);
    field.setInputRestrictions (4, "0123456789.,");
    field.onReturnKey = [this] { endTyping (true); };
    field.onEscapeKey = [this] { endTyping (false); };
    field.onFocusLost = [this] { endTyping (true); };
    refresh();
}

int Knob::idealWidth() const
{
    return juce::jmax (68, juce::roundToInt (type::width (type::text (12.0f), words::shortName (name))) + 4);
}

void Knob::refresh()
{
    if (gestures == 0 || id != asRecorded)
        setValue (ui.session.controls.setting (id).knob (name), juce::dontSendNotification);
    repaint();
}

void Knob::paint (juce::Graphics& g)
{
    const auto& t = ui.colours();
    const float size = isCompact() ? 40.0f : 58.0f;
    const juce::Point<float> c = middle();
    const double value = getValue();
    const float radius = size / 2.0f - 5.0f;
    const auto at = [&] (float share, float r) { return c.getPointOnCircumference (r, start + turn * share); };

    g.setColour (t.ink);
    for (int i = 0; i <= 10; ++i)
    {
        const auto from = at (static_cast<float> (i) / 10.0f, radius + 5.0f),
                   to = at (static_cast<float> (i) / 10.0f, radius + (i % 5 == 0 ? 10.0f : 8.0f));
        g.drawLine ({ from, to }, 1.4f);
    }
    const float share = static_cast<float> (value / 10.0);
    juce::Path rest, set;
    rest.addCentredArc (c.x, c.y, radius, radius, 0.0f, start, start + turn, true);
    set.addCentredArc (c.x, c.y, radius, radius, 0.0f, start, start + turn * share, true);
    const auto colour = touched() ? t.of (id) : t.ink;
    const juce::PathStrokeType stroke (isCompact() ? 3.5f : 4.5f, juce::PathStrokeType::curved, juce::PathStrokeType::rounded);
    g.setColour (t.line);
    g.strokePath (rest, stroke);
    g.setColour (colour);
    if (share > 0.005f)
        g.strokePath (set, stroke);
    const float bead = isCompact() ? 8.0f : 11.0f;
    g.fillEllipse (juce::Rectangle<float> (bead, bead).withCentre (at (share, radius)));

    if (! field.isVisible())
    {
        g.setColour (t.ink);
        const bool whole = std::abs (value - std::round (value)) < 0.05;
        g.setFont (type::bold (isCompact() ? (whole ? 14.0f : 12.0f) : whole ? 20.0f : 16.0f));
        type::draw (g, words::knob (value), juce::Rectangle<float> (44, 28).withCentre (c).toNearestInt(),
                    juce::Justification::centred, false);
    }
    g.setColour (touched() ? t.ink : t.mute);
    const auto label = words::shortName (name);
    if (isCompact())
    {
        g.setFont (type::text (12.0f)); // a word a line: six knobs stand side by side
        const int top = juce::roundToInt (c.y + 20.0f);
        type::draw (g, label.upToFirstOccurrenceOf (" ", false, false), 0, top, getWidth(), 14, juce::Justification::centred,
                    true);
        type::draw (g, label.fromFirstOccurrenceOf (" ", false, false), 0, top + 13, getWidth(), 14, juce::Justification::centred,
                    true);
        if (hasKeyboardFocus (false))
            paintFocus (g, getLocalBounds().toFloat(), 6.0f, t);
        return;
    }
    const bool room = type::width (type::bold (12.0f), label) <= static_cast<float> (getWidth());
    g.setFont (touched() && room ? type::bold (12.0f) : type::text (12.0f));
    type::draw (g, label, 0, 74, getWidth(), 18, juce::Justification::centred, true);
    if (hasKeyboardFocus (false))
        paintFocus (g, getLocalBounds().toFloat(), 6.0f, t);
}

juce::Point<float> Knob::middle() const { return { static_cast<float> (getWidth()) / 2.0f, isCompact() ? 25.0f : 38.0f }; }

void Knob::resized()
{
    Slider::resized();
    field.setBounds (getWidth() / 2 - 23, juce::roundToInt (middle().y) - 12, 46, 24);
}

double Knob::snapValue (double wanted, DragMode) { return std::round (wanted * 100.0) / 100.0; }

/** Sets it at once, as a gesture of its own. */
void Knob::set (double wanted)
{
    const double to = juce::jlimit (0.0, 10.0, snapValue (wanted, notDragging));
    if (std::abs (to - getValue()) < 1e-9)
        return;
    const ScopedDragNotification gesture (*this);
    setValue (to, juce::sendNotificationSync);
}

void Knob::startedDragging()
{
    if (++gestures > 1)
        return;
    atStart = getValue();
    if (id != asRecorded)
        ui.session.controls.beginGesture (id, name);
}

void Knob::stoppedDragging()
{
    if (--gestures > 0)
        return;
    if (id != asRecorded)
        ui.session.controls.endGesture (id, name);
    else if (std::abs (getValue() - atStart) > 1e-9)
        keepRecorded();
}

void Knob::valueChanged()
{
    if (id != asRecorded)
        ui.session.controls.setKnob (id, name, getValue());
}

/** Of the take the knob says where it stood: written into the job, one step of undo. */
void Knob::keepRecorded()
{
    auto setting = ui.session.controls.setting (asRecorded);
    setting.knobs[name] = getValue();
    if (! ui.session.takes.setSetting (ui.session.takes.playing(), setting))
        refresh();
}

void Knob::mouseDown (const juce::MouseEvent& e)
{
    if (! isEnabled())
        return;
    held = true;
    Slider::mouseDown (e);
    if (onTouch)
        onTouch (true);
    repaint();
}

void Knob::mouseDrag (const juce::MouseEvent& e)
{
    setMouseDragSensitivity (e.mods.isShiftDown() ? 833 : 167); // [px] from 0 to 10
    Slider::mouseDrag (e);
}

void Knob::mouseUp (const juce::MouseEvent& e)
{
    if (! held)
        return;
    held = false;
    Slider::mouseUp (e);
    if (onTouch && ! hasKeyboardFocus (true))
        onTouch (false);
    repaint();
}

void Knob::mouseDoubleClick (const juce::MouseEvent&)
{
    if (isEnabled())
        startTyping ({});
}

void Knob::mouseWheelMove (const juce::MouseEvent& e, const juce::MouseWheelDetails& wheel)
{
    if (! isEnabled())
        return Component::mouseWheelMove (e, wheel);
    if (! held && wheel.deltaY != 0.0f)
        set (getValue() + (wheel.deltaY > 0.0f ? 0.5 : -0.5));
}

bool Knob::keyPressed (const juce::KeyPress& key)
{
    if (key == juce::KeyPress::upKey || key == juce::KeyPress::rightKey)
        set (getValue() + 0.1);
    else if (key == juce::KeyPress::downKey || key == juce::KeyPress::leftKey)
        set (getValue() - 0.1);
    else if (key == juce::KeyPress::pageUpKey || key == juce::KeyPress::pageDownKey)
        set (getValue() + (key == juce::KeyPress::pageUpKey ? 1.0 : -1.0));
    else if (key == juce::KeyPress::homeKey || key == juce::KeyPress::endKey)
        set (key == juce::KeyPress::homeKey ? 0.0 : 10.0);
    else if (key == juce::KeyPress::returnKey)
        startTyping ({});
    else if (const auto c = key.getTextCharacter(); c >= '0' && c <= '9')
        startTyping (juce::String::charToString (c));
    else
        return false;
    return true;
}

void Knob::focusGained (FocusChangeType)
{
    if (onTouch)
        onTouch (true);
    repaint();
}

void Knob::focusLost (FocusChangeType)
{
    if (onTouch && ! held && ! field.isVisible())
        onTouch (false);
    repaint();
}

void Knob::startTyping (const juce::String& first)
{
    dressField (field, ui.colours(), 16.0f);
    field.setText (first.isEmpty() ? words::knob (getValue()) : first, false);
    field.setVisible (true);
    field.grabKeyboardFocus();
    if (first.isEmpty())
        field.selectAll();
    else
        field.moveCaretToEnd();
    repaint();
}

void Knob::endTyping (bool keep)
{
    if (! field.isVisible())
        return;
    field.setVisible (false);
    const auto typed = field.getText().replaceCharacter (',', '.').trim();
    if (keep && typed.isNotEmpty())
        set (typed.getDoubleValue());
    repaint();
}

LeverRail::LeverRail (UiContext& d, OptionId t, PanelControl c)
    : RadioGroup (d, words::title (c.name)), id (t), control (std::move (c))
{
    juce::StringArray titles;
    for (const auto& position : control.positions)
        titles.add (words::plain (position));
    setChoices (titles);
    onChoice = [this] (int position) { throwTo (position); };
    refresh();
}

juce::String LeverRail::heading() const
{
    const auto words = words::shortName (control.name);
    return words.substring (0, 1).toUpperCase() + words.substring (1);
}

int LeverRail::idealWidth() const
{
    float each = 30.0f;
    for (const auto& position : control.positions)
        each = juce::jmax (each, type::width (type::bold (12.5f), words::plain (position)) + 6.0f);
    const auto count = static_cast<float> (control.positions.size());
    const float row = twoRows() ? each * 0.58f * count + each * 0.5f : each * count;
    return juce::roundToInt (juce::jmax (row, type::width (type::name (14.0f), heading()) + 6.0f));
}

int LeverRail::standing() const
{
    const auto setting = ui.session.controls.setting (id);
    const auto found = setting.levers.find (control.name);
    const auto at = found == setting.levers.end() ? control.positions.end()
                                                  : std::find (control.positions.begin(), control.positions.end(), found->second);
    return at == control.positions.end() ? 0 : static_cast<int> (at - control.positions.begin());
}

void LeverRail::refresh()
{
    setChosen (standing());
    repaint();
}

float LeverRail::xOf (int position) const
{
    const float each = static_cast<float> (getWidth()) / static_cast<float> (control.positions.size());
    return each * (static_cast<float> (position) + 0.5f);
}

/** Pressed is the position nearest along the rail. */
void LeverRail::resized()
{
    for (int i = 0; i < count(); ++i)
    {
        const int from = i * getWidth() / count(), to = (i + 1) * getWidth() / count();
        place (i, { from, 0, to - from, getHeight() });
    }
}

void LeverRail::paint (juce::Graphics& g)
{
    const auto& t = ui.colours();
    g.setColour (t.mute);
    g.setFont (type::name (14.0f));
    type::draw (g, heading(), 0, 0, getWidth(), 18, juce::Justification::centredLeft, true);
    const float y = isCompact() ? 26.0f : 31.0f, under = isCompact() ? 33.0f : 41.0f;
    const int all = count();
    g.setColour (t.ink);
    g.fillRect (xOf (0), y - 0.8f, xOf (all - 1) - xOf (0), 1.6f);
    const float each = static_cast<float> (getWidth()) / static_cast<float> (juce::jmax (1, all));
    for (int i = 0; i < all; ++i)
    {
        const bool here = i == chosen();
        const float x = xOf (i), size = here ? 15.0f : 10.0f;
        const auto bead = juce::Rectangle<float> (size, size).withCentre ({ x, y });
        g.setColour (here ? t.ink : t.sheet);
        g.fillEllipse (bead);
        g.setColour (t.ink);
        g.drawEllipse (bead, 1.6f);
        g.setColour (here ? t.ink : t.mute);
        g.setFont (here ? type::bold (12.5f) : type::text (12.5f));
        const float room = twoRows() ? each * 1.7f : each;
        type::draw (g, words::plain (control.positions[static_cast<size_t> (i)]),
                    juce::Rectangle<float> (juce::jlimit (0.0f, static_cast<float> (getWidth()) - room, x - room / 2),
                                            twoRows() && i % 2 == 1 ? under + 15.0f : under, room, 17.0f)
                        .toNearestInt(),
                    juce::Justification::centred, false);
    }
    paintGroupFocus (g, 6.0f);
}

void LeverRail::throwTo (int position)
{
    if (position == standing())
        return;
    const auto& wanted = control.positions[static_cast<size_t> (position)];
    if (id == asRecorded)
    {
        auto setting = ui.session.controls.setting (asRecorded);
        setting.levers[control.name] = wanted;
        ui.session.takes.setSetting (ui.session.takes.playing(), setting);
    }
    else
    {
        ui.session.controls.beginGesture (id, control.name);
        ui.session.controls.setLever (id, control.name, wanted);
        ui.session.controls.endGesture (id, control.name);
    }
    refresh();
}

bool standFor (const std::vector<PanelControl>& controls, const std::vector<std::unique_ptr<Knob>>& knobs,
               const std::vector<std::unique_ptr<LeverRail>>& levers)
{
    if (controls.size() != knobs.size() + levers.size())
        return false;
    size_t next = 0;
    for (const auto& control : controls)
        if (control.isKnob() && (next >= knobs.size() || knobs[next++]->control() != control.name))
            return false;
    return true;
}
}
