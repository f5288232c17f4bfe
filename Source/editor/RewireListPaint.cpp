#include "editor/JobWords.h"
#include "editor/RewireList.h"

namespace coldiron
{
void RewireList::paint (juce::Graphics& g)
{
    Overlay::paint (g);
    const auto& t = colours();
    paintTitle (g, target == asRecorded ? juce::String ("New option: a starter set or a rewire")
                                        : "Add a rewire to " + words::from (letterOf (target)));
    g.setColour (t.line);
    g.fillRect (search.getRight() + 11, search.getY(), 1, getHeight() - search.getY() - 16);
    if (infos.empty() || lines.empty())
    {
        g.setColour (t.mute);
        g.setFont (type::text (13.0f));
        g.drawFittedText (infos.empty() ? "No rewires were found among the presets."
                                        : "Nothing of that name. Try what the player wants: quieter, brighter, louder.",
                          detail, juce::Justification::topLeft, 3, 1.0f);
        return;
    }
    if (chosenStarter >= 0)
        return paintStarter (g);
    if (chosen < 0)
        return;
    const auto& info = infos[static_cast<size_t> (chosen)];
    juce::AttributedString text;
    text.setWordWrap (juce::AttributedString::byWord);
    text.setLineSpacing (3.0f);
    const auto para = [&] (const juce::String& label, const juce::String& words)
    {
        if (words.isEmpty())
            return;
        if (label.isNotEmpty())
            text.append (label + "  ", type::text (13.0f), t.mute);
        text.append (words + "\n\n", type::text (13.0f), t.ink);
    };
    text.append (words::from (info.name) + "\n\n", type::bold (15.0f), t.ink);
    juce::StringArray others;
    for (const auto& other : info.alsoCalled)
        others.add (words::from (other));
    para ("also called", others.joinIntoString (", "));
    para ("gives", filledWords (info.gives, info, arguments));
    para ("costs", filledWords (info.costs, info, arguments));
    if (refusal.isNotEmpty())
    {
        text.append ("not here  ", type::text (13.0f), t.mute);
        text.append (refusal, type::bold (13.0f), t.ink);
    }
    juce::TextLayout laid;
    laid.createLayout (text, static_cast<float> (detail.getWidth()), static_cast<float> (detail.getHeight()));
    {
        const juce::Graphics::ScopedSaveState save (g);
        g.reduceClipRegion (detail);
        laid.draw (g, detail.toFloat());
    }
    g.setFont (type::text (13.0f));
    for (const auto& row : asks)
    {
        const int y = row.choice != nullptr ? row.choice->getY() : row.field->getY();
        g.setColour (t.mute);
        type::draw (g, words::plain (row.ask.name), detail.getX(), y, 104, 34, juce::Justification::centredLeft, true);
    }
}

void RewireList::paintListBoxItem (int row, juce::Graphics& g, int width, int height, bool selected)
{
    const auto& t = colours();
    const auto& line = lines[static_cast<size_t> (row)];
    if (line.isHeading)
    {
        g.setColour (t.mute);
        g.setFont (type::name (15.0f));
        type::draw (g, line.words, 4, 4, width - 8, height - 4, juce::Justification::bottomLeft, true);
        return;
    }
    if (selected)
    {
        g.setColour (t.ink);
        g.fillRoundedRectangle (0.0f, 1.0f, static_cast<float> (width) - 2.0f, static_cast<float> (height) - 2.0f, 4.0f);
    }
    const bool here = isHere (line);
    g.setColour (selected ? t.sheet : here ? t.ink : t.mute);
    if (! here)
    {
        g.setFont (type::text (12.0f));
        type::draw (g, "not here", 12, 0, width - 24, height, juce::Justification::centredRight, false);
    }
    g.setFont (type::text (13.0f));
    type::draw (g, line.words, 12, 0, width - (here ? 24 : 84), height, juce::Justification::centredLeft, true);
}

juce::String RewireList::getNameForRow (int row)
{
    if (row < 0 || row >= getNumRows())
        return {};
    const auto& line = lines[static_cast<size_t> (row)];
    return line.isHeading ? "Group: " + line.words : line.words + (isHere (line) ? "" : ", not here");
}

juce::String RewireList::inWords() const
{
    if (infos.empty() || lines.empty())
        return infos.empty() ? "No rewires were found among the presets." : "Nothing of that name.";
    if (chosenStarter >= 0)
        return starterInWords();
    if (chosen < 0)
        return {};
    const auto& info = infos[static_cast<size_t> (chosen)];
    return words::from (info.name) + ". Gives: " + filledWords (info.gives, info, arguments) + " Costs: "
           + filledWords (info.costs, info, arguments) + (refusal.isEmpty() ? juce::String() : " Not here: " + refusal);
}
}
