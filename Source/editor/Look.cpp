#include "editor/Look.h"

#include "editor/RailSlider.h"

namespace coldiron
{
void Look::use (const Tokens& t)
{
    tokens = &t;
    // What JUCE brings, the choice of a sound device: window, widget, menu, outline, text, fill, marked text, marked, menu text.
    setColourScheme ({ t.sheet, t.well, t.sheet, t.mute, t.ink, t.line, t.ink, t.mute, t.ink });
    setColour (juce::PopupMenu::backgroundColourId, t.sheet);
    setColour (juce::PopupMenu::textColourId, t.ink);
    setColour (juce::PopupMenu::highlightedBackgroundColourId, t.window);
    setColour (juce::PopupMenu::highlightedTextColourId, t.ink);
    setColour (juce::AlertWindow::backgroundColourId, t.sheet);
    setColour (juce::AlertWindow::textColourId, t.ink);
    setColour (juce::AlertWindow::outlineColourId, t.mute);
    setColour (juce::TextButton::buttonColourId, t.well);
    setColour (juce::TextButton::textColourOffId, t.ink);
    setColour (juce::TextButton::textColourOnId, t.ink);
    setColour (juce::ScrollBar::thumbColourId, t.mute);
    setColour (juce::CaretComponent::caretColourId, t.ink);
    setColour (juce::TextEditor::backgroundColourId, t.well);
    setColour (juce::TextEditor::textColourId, t.ink);
    setColour (juce::TextEditor::highlightColourId, t.line);
    setColour (juce::TextEditor::highlightedTextColourId, t.ink);
    setColour (juce::TextEditor::outlineColourId, t.mute);
    setColour (juce::TextEditor::focusedOutlineColourId, t.ink);
}

juce::Typeface::Ptr Look::getTypefaceForFont (const juce::Font& font)
{
    if (font.getTypefaceName() == juce::Font::getDefaultSansSerifFontName())
        return type::text (13.0f).getTypefacePtr();
    return LookAndFeel_V4::getTypefaceForFont (font);
}

void Look::drawPopupMenuBackground (juce::Graphics& g, int width, int height)
{
    g.fillAll (tokens->sheet);
    g.setColour (tokens->mute);
    g.drawRect (0, 0, width, height, 1);
}

void Look::drawPopupMenuItem (juce::Graphics& g, const juce::Rectangle<int>& area, bool isSeparator, bool isActive,
                              bool isHighlighted, bool isTicked, bool hasSubMenu, const juce::String& text,
                              const juce::String& shortcut, const juce::Drawable*, const juce::Colour*)
{
    if (isSeparator)
    {
        g.setColour (tokens->line);
        g.fillRect (area.reduced (10, 0).withHeight (1).withY (area.getCentreY()));
        return;
    }
    if (isHighlighted && isActive)
    {
        g.setColour (tokens->window);
        g.fillRect (area.reduced (2, 0));
    }
    auto row = area.reduced (12, 0);
    const auto mark = row.removeFromLeft (14).toFloat();
    g.setColour (isActive ? tokens->ink : tokens->mute);
    if (isTicked)
        g.fillEllipse (juce::Rectangle<float> (6, 6).withCentre ({ mark.getX() + 3, mark.getCentreY() }));
    g.setFont (type::text (13.0f));
    type::draw (g, text, row, juce::Justification::centredLeft);
    g.setColour (tokens->mute);
    if (hasSubMenu)
        type::draw (g, ">", row, juce::Justification::centredRight);
    else if (shortcut.isNotEmpty())
        type::draw (g, shortcut, row, juce::Justification::centredRight);
}

void Look::drawTextEditorOutline (juce::Graphics& g, int width, int height, juce::TextEditor& field)
{
    g.setColour (field.hasKeyboardFocus (true) ? tokens->ink : tokens->mute);
    g.drawRoundedRectangle (
        juce::Rectangle<float> (0, 0, static_cast<float> (width), static_cast<float> (height)).reduced (0.75f), 4.0f,
        field.hasKeyboardFocus (true) ? 1.5f : 1.0f);
}

void Look::drawScrollbar (juce::Graphics& g, juce::ScrollBar&, int x, int y, int width, int height, bool vertical, int thumbStart,
                          int thumbSize, bool over, bool down)
{
    const auto thumb = vertical ? juce::Rectangle<int> (x, thumbStart, width, thumbSize)
                                : juce::Rectangle<int> (thumbStart, y, thumbSize, height);
    g.setColour (tokens->mute.withAlpha (over || down ? 0.9f : 0.5f));
    g.fillRoundedRectangle (thumb.toFloat().reduced (2.0f), 3.0f);
}

juce::Slider::SliderLayout Look::getSliderLayout (juce::Slider& slider)
{
    auto layout = LookAndFeel_V4::getSliderLayout (slider);
    if (const auto* onRail = dynamic_cast<const RailSlider*> (&slider))
        layout.sliderBounds = onRail->rail();
    return layout;
}

juce::Rectangle<int> Look::getTooltipBounds (const juce::String& words, juce::Point<int> at, juce::Rectangle<int> parent)
{
    const auto font = type::text (12.0f);
    int widest = 0, lines = 0;
    for (const auto& line : juce::StringArray::fromLines (words))
    {
        const int needed = juce::roundToInt (type::width (font, line));
        widest = juce::jmax (widest, needed);
        lines += 1 + needed / 320; // broken between words, a line is rarely full
    }
    const int width = juce::jmin (360, widest + 20);
    return juce::Rectangle<int> (at.x + 12, at.y + 16, width, lines * 16 + 10).constrainedWithin (parent);
}

void Look::drawTooltip (juce::Graphics& g, const juce::String& words, int width, int height)
{
    g.fillAll (tokens->ink);
    g.setColour (tokens->sheet);
    g.setFont (type::text (12.0f));
    g.drawFittedText (words, 10, 4, width - 20, height - 8, juce::Justification::centredLeft, 20, 1.0f);
}

WordButton::WordButton (UiContext& d, const juce::String& words, bool isFilled) : Button (words), ui (d), filled (isFilled)
{
    setTitle (words);
    setWantsKeyboardFocus (true);
}

void WordButton::setWords (const juce::String& words)
{
    if (getName() == words)
        return;
    setName (words);
    setTitle (words);
    repaint();
}

int WordButton::idealWidth() const
{
    return juce::roundToInt (type::width (filled ? type::bold (14.0f) : type::text (13.0f), getName())) + 28;
}

void WordButton::paintButton (juce::Graphics& g, bool over, bool down)
{
    const auto& t = ui.colours();
    const auto area = getLocalBounds().toFloat().reduced (2.0f);
    const bool fill = filled && isEnabled();
    g.setColour (fill ? (down ? t.mute : t.ink) : over || down ? t.well : t.sheet);
    g.fillRoundedRectangle (area, 6.0f);
    if (! fill)
    {
        g.setColour (over ? t.mute : t.line);
        g.drawRoundedRectangle (area.reduced (0.5f), 6.0f, 1.0f);
    }
    if (hasKeyboardFocus (true))
        paintFocus (g, getLocalBounds().toFloat(), 7.0f, t);
    g.setColour (fill ? t.sheet : isEnabled() ? t.ink : t.mute);
    g.setFont (filled ? type::bold (14.0f) : type::text (13.0f));
    type::draw (g, getName(), shortens ? getLocalBounds().reduced (8, 0) : getLocalBounds(), juce::Justification::centred,
                shortens);
}

bool WordButton::keyPressed (const juce::KeyPress& key)
{
    if (key == juce::KeyPress::returnKey && isEnabled())
    {
        triggerClick();
        return true;
    }
    return false; // Space belongs to the take
}

void paintFocus (juce::Graphics& g, juce::Rectangle<float> area, float corner, const Tokens& t)
{
    g.setColour (t.ink);
    g.drawRoundedRectangle (area.reduced (1.0f), corner, 2.0f);
}

float paintKey (juce::Graphics& g, float x, float middleY, const juce::String& key, const Tokens& t)
{
    const auto font = type::text (12.0f);
    const float width = juce::jmax (18.0f, type::width (font, key) + 10.0f);
    const juce::Rectangle<float> cap (x, middleY - 9.0f, width, 18.0f);
    g.setColour (t.line);
    g.drawRoundedRectangle (cap.reduced (0.5f), 4.0f, 1.0f);
    g.setColour (t.ink);
    g.setFont (font);
    type::draw (g, key, cap.toNearestInt(), juce::Justification::centred, false);
    return width;
}

void dressField (juce::TextEditor& field, const Tokens& t, float size)
{
    field.setFont (type::text (size));
    field.setColour (juce::TextEditor::backgroundColourId, t.well);
    field.setColour (juce::TextEditor::textColourId, t.ink);
    field.setColour (juce::TextEditor::highlightColourId, t.line);
    field.setColour (juce::TextEditor::highlightedTextColourId, t.ink);
    field.setIndents (6, 0);
    field.setJustification (juce::Justification::centredLeft);
    field.applyFontToAllText (type::text (size));
    field.applyColourToAllText (t.ink);
}
}
