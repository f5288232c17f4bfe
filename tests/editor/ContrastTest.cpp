// Contrast of text by WCAG 2.2, success criterion 1.4.3: at least 4.5:1 for text, 3:1 for large text and for the parts
// of a picture that carry meaning (1.4.11). Formula: WCAG 2.2, "contrast ratio" and "relative luminance".

#include "editor/Tokens.h"

#include <catch2/catch.hpp>

#include <set>

namespace contrastTest
{
using namespace coldiron;

TEST_CASE ("the formula gives the values its source states", "[contrast]")
{
    CHECK (contrast (juce::Colours::black, juce::Colours::white) == Approx (21.0)); // WCAG 2.2: 1 to 21
    CHECK (contrast (juce::Colours::white, juce::Colours::white) == Approx (1.0));
    CHECK (contrast (juce::Colour (0xff767676), juce::Colours::white)
           == Approx (4.54).margin (0.01)); // [mem] the lightest grey that passes on white
}

TEST_CASE ("every text can be read on what it stands on", "[contrast]")
{
    for (const auto* t : { &Tokens::light(), &Tokens::dark() })
        for (const auto back : { t->sheet, t->window, t->well })
        {
            INFO (back.toString());
            CHECK (contrast (t->ink, back) >= 4.5);
            CHECK (contrast (t->mute, back) >= 4.5);
            CHECK (contrast (t->sheet, t->ink) >= 4.5); // filled buttons
            if (back != t->window)                      // heat writes on sheets alone
                CHECK (contrast (t->heat, back) >= 4.5);
        }
}

TEST_CASE ("every option colour carries its letter and its line", "[contrast]")
{
    for (const auto* t : { &Tokens::light(), &Tokens::dark() })
        for (const OptionId id : optionIds)
        {
            INFO ("option " << letterOf (id));
            CHECK (contrast (t->of (id), t->sheet) >= 3.0);
            CHECK (contrast (t->of (id), t->window) >= 3.0);
            CHECK (contrast (t->onOption, t->of (id)) >= 3.0);
        }
}

TEST_CASE ("every option has a dash of its own", "[contrast]")
{
    std::set<std::vector<float>> dashes;
    for (const OptionId id : optionIds)
        dashes.insert (dashOf (id));
    CHECK (dashes.size() == optionIds.size());
}
}
