#pragma once

#include "session/OptionId.h"

#include <juce_gui_basics/juce_gui_basics.h>

#include <array>
#include <vector>

namespace coldiron
{
/** The colours of a window: ink on paper, or chalk on slate. */
struct Tokens
{
    juce::Colour window, sheet, well, line, mute, ink, heat, onOption;
    std::array<juce::Colour, 9> options; ///< by OptionId; as recorded is ink

    static const Tokens& light();
    static const Tokens& dark();

    juce::Colour of (OptionId id) const { return options[indexOf (id)]; }
};

/** Dash lengths of a tag in px, drawn and gap by turns; empty: solid. */
const std::vector<float>& dashOf (OptionId);

/** Strokes a path with the tag's dash. */
void strokeDashed (juce::Graphics&, const juce::Path&, OptionId, float weight);

/** Contrast of two colours, WCAG 2: (L1 + 0.05) / (L2 + 0.05), 1 to 21. */
double contrast (juce::Colour, juce::Colour);

/** The faces: B612 for text and numbers, Routed Gothic for letters and names. Heights are the design's sizes. */
namespace type
{
juce::Font text (float size);
juce::Font bold (float size);
juce::Font italic (float size);
juce::Font name (float size);
float width (const juce::Font&, const juce::String&);

/** Draws one line in the present font. Words that may not be shortened must fit: where they do not, they are noted in
    `cutOff` if a test has set it. */
void draw (juce::Graphics&, const juce::String&, juce::Rectangle<int>, juce::Justification, bool mayShorten = true);
void draw (juce::Graphics&, const juce::String&, int x, int y, int width, int height, juce::Justification,
           bool mayShorten = true);
extern juce::StringArray* cutOff;
}
}
