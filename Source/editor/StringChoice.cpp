#include "editor/StringChoice.h"

#include "editor/Words.h"
#include "session/Session.h"

namespace coldiron
{
StringChoice::StringChoice (UiContext& d) : RadioGroup (d, "Strings the change is for")
{
    wraps = true;
    onChoice = [this] (int index) { ui.session.monitor.setOnlyString (index - 1); };
    setTooltip ("An option that hears other coils changes every string in its own way. Hear one string's change alone, E to e, "
                "for the range.");
}

void StringChoice::sessionChanged (const Revisions&, const Revisions&)
{
    juce::StringArray now { "all strings" };
    for (const auto& string : ui.session.jobEditor.job()->guitar.strings)
        now.add (words::from (string.name));
    if (names != now)
    {
        names = now;
        setChoices (names);
        resized();
    }
    setChosen (ui.session.monitor.onlyString() + 1);
    if (oneChip)
        resized();
    const auto report = ui.session.reports.report (ui.session.monitor.heard());
    setVisible (chosen() > 0 || (report != nullptr && ! report->silent && report->figures.confidence.isEstimated()));
    repaint();
}

int StringChoice::idealWidth (int most)
{
    int width = 0;
    for (const auto& name : names)
        width += juce::roundToInt (type::width (type::text (12.0f), name)) + 14;
    oneChip = width > most;
    if (! oneChip)
        return width;
    int widest = 0;
    for (const auto& name : names)
        widest = juce::jmax (widest, juce::roundToInt (type::width (type::text (12.0f), name)) + 14);
    return widest;
}

juce::Rectangle<int> StringChoice::chip (int index) const
{
    if (oneChip)
        return getLocalBounds().withSizeKeepingCentre (getWidth() - 2, 20);
    int x = 0;
    for (int i = 0; i < index; ++i)
        x += juce::roundToInt (type::width (type::text (12.0f), names[i])) + 14;
    const int width = juce::roundToInt (type::width (type::text (12.0f), names[index])) + 12;
    return { x, (getHeight() - 20) / 2, width, 20 };
}

void StringChoice::paint (juce::Graphics& g)
{
    const auto& t = ui.colours();
    for (int i = 0; i < names.size(); ++i)
    {
        if (oneChip && i != chosen())
            continue;
        const auto box = chip (i);
        const bool on = i == chosen();
        g.setColour (on ? t.ink : t.sheet);
        g.fillRoundedRectangle (box.toFloat(), 4.0f);
        g.setColour (on ? t.ink : t.line);
        g.drawRoundedRectangle (box.toFloat().reduced (0.5f), 4.0f, 1.0f);
        g.setColour (on ? t.sheet : t.mute);
        g.setFont (type::text (12.0f));
        type::draw (g, names[i], box, juce::Justification::centred, false);
    }
    paintGroupFocus (g, 5.0f);
}

void StringChoice::resized()
{
    if (chosen() >= 0)
        place (chosen(), chip (chosen())); // first, so that the keyboard has somewhere to go when another one is hidden
    for (int i = 0; i < count(); ++i)
        place (i, oneChip && i != chosen() ? juce::Rectangle<int>() : chip (i));
}

/** The one chip there is room for goes on to the next string. */
void StringChoice::pressed (int index, juce::ModifierKeys) { choose (oneChip ? chosen() + 1 : index); }
}
