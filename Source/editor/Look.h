#pragma once

#include "editor/UiContext.h"

namespace coldiron
{
/** Menus, fields and scroll bars in the window's language. */
class Look : public juce::LookAndFeel_V4
{
public:
    void use (const Tokens&);

    juce::Font getPopupMenuFont() override { return type::text (13.0f); }
    void drawPopupMenuBackground (juce::Graphics&, int width, int height) override;
    void drawPopupMenuItem (juce::Graphics&, const juce::Rectangle<int>&, bool isSeparator, bool isActive, bool isHighlighted,
                            bool isTicked, bool hasSubMenu, const juce::String& text, const juce::String& shortcut,
                            const juce::Drawable* icon, const juce::Colour* textColour) override;
    void drawTextEditorOutline (juce::Graphics&, int width, int height, juce::TextEditor&) override;
    void drawScrollbar (juce::Graphics&, juce::ScrollBar&, int x, int y, int width, int height, bool vertical, int thumbStart,
                        int thumbSize, bool over, bool down) override;
    juce::Slider::SliderLayout getSliderLayout (juce::Slider&) override;
    juce::Typeface::Ptr getTypefaceForFont (const juce::Font&) override;
    juce::Rectangle<int> getTooltipBounds (const juce::String&, juce::Point<int>, juce::Rectangle<int>) override;
    void drawTooltip (juce::Graphics&, const juce::String&, int width, int height) override;

private:
    const Tokens* tokens = &Tokens::light();
};

/** A button of words: outlined, or filled where it is the one to press. Enter and Return press it; Space is left to the take. */
class WordButton : public juce::Button
{
public:
    WordButton (UiContext&, const juce::String& words, bool filled = false);

    void setWords (const juce::String&);
    bool shortens = false; ///< where the words are a name of any length: the tip has them whole
    int idealWidth() const;
    void paintButton (juce::Graphics&, bool over, bool down) override;
    bool keyPressed (const juce::KeyPress&) override;

private:
    UiContext& ui;
    bool filled;
};

/** The outline of what the keyboard is on. */
void paintFocus (juce::Graphics&, juce::Rectangle<float>, float corner, const Tokens&);

/** A small key cap with its letter; returns its width. */
float paintKey (juce::Graphics&, float x, float middleY, const juce::String& key, const Tokens&);

/** Sets up a field for typing. */
void dressField (juce::TextEditor&, const Tokens&, float size = 13.0f);
}
