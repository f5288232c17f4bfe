// The dashed tag that makes a new option.

#include "editor/TagCard.h"
#include "editor/Words.h"

namespace coldiron
{
NewTag::NewTag (UiContext& d) : Button ({}), ui (d) { setTitle ("New option, pick a rewire"); }

void NewTag::setLetter (OptionId t)
{
    letter = t;
    repaint();
}

void NewTag::paintButton (juce::Graphics& g, bool, bool)
{
    const auto& t = ui.colours();
    const auto path = tagOutline (getLocalBounds().toFloat().reduced (4.5f));
    juce::Path dashed;
    const float dash[] = { 5.0f, 4.0f };
    juce::PathStrokeType (1.0f).createDashedStroke (dashed, path, dash, 2);
    g.setColour (isMouseOver() ? t.ink : t.mute);
    g.fillPath (dashed);
    if (hasKeyboardFocus (false))
        g.strokePath (tagOutline (getLocalBounds().toFloat().reduced (1.0f)), juce::PathStrokeType (2.0f));
    auto area = getLocalBounds().reduced (10, 0).withSizeKeepingCentre (getWidth() - 14, 44);
    g.setColour (t.ink);
    const bool narrow = getWidth() < 118;
    g.setFont (type::bold (narrow ? 12.0f : 14.0f));
    type::draw (g, narrow ? "New" : "New option", area.removeFromTop (22), juce::Justification::centred, false);
    g.setColour (t.mute);
    g.setFont (type::text (12.5f));
    type::draw (g,
                narrow ? juce::String ("for ") + words::from (letterOf (letter))
                       : "pick a rewire for " + words::from (letterOf (letter)),
                area, juce::Justification::centred, false);
}

void NewTag::clicked() { ui.addRewireTo (asRecorded); }

bool NewTag::keyPressed (const juce::KeyPress& key)
{
    if (key != juce::KeyPress::returnKey)
        return false;
    clicked(); // at once, not when the press has been shown
    return true;
}
}
