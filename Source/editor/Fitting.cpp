#include "editor/Fitting.h"

#include "editor/Tokens.h"

namespace coldiron
{
bool fitsOn (const juce::String& words, const juce::Font& font, float width, int lines)
{
    float used = 0.0f;
    int line = 1;
    for (const auto& word : juce::StringArray::fromTokens (words, " ", ""))
    {
        const float w = type::width (font, word), space = type::width (font, " ");
        if (w > width)
            return false;
        if (used > 0.0f && used + space + w > width)
        {
            ++line;
            used = w;
        }
        else
            used += (used > 0.0f ? space : 0.0f) + w;
    }
    return line <= lines;
}

juce::String shortenedInTheMiddle (const juce::String& words, const juce::Font& font, float width, int lines)
{
    if (fitsOn (words, font, width, lines))
        return words;
    const auto all = juce::StringArray::fromTokens (words, " ", "");
    for (int gone = 1; gone < all.size() - 1; ++gone)
    {
        const int from = juce::jmax (1, (all.size() - gone + 1) / 2); // the first words stay longest
        const auto tried =
            all.joinIntoString (" ", 0, from) + juce::String::fromUTF8 (" \xe2\x80\xa6 ") + all.joinIntoString (" ", from + gone);
        if (fitsOn (tried, font, width, lines))
            return tried;
    }
    return words;
}
}
