#pragma once

#include <juce_graphics/juce_graphics.h>

namespace coldiron
{
/** Whether words fit on so many lines, broken between words. */
bool fitsOn (const juce::String& words, const juce::Font&, float width, int lines);

/** Words that do not fit lose some from the middle: names of options begin alike and differ at the end. */
juce::String shortenedInTheMiddle (const juce::String& words, const juce::Font&, float width, int lines);
}
