#include "editor/StringChoice.h"

#include "editor/Words.h"

namespace coldiron
{
StringChoice::StringChoice (UiContext& d) : Panel (d)
{
    setTitle ("Strings the change is for");
    setWantsKeyboardFocus (true);
    setTooltip ("An option that hears other coils changes every string in its own way. Hear one string's change alone, E to e, "
                "for the range.");
}

void StringChoice::benchChanged (const Revisions&, const Revisions&)
{
    juce::StringArray now { "all strings" };
    for (const auto& string : ui.bench.job()->guitar.strings)
        now.add (words::from (string.name));
    names = now;
    chosen = ui.bench.onlyString() + 1;
    const auto report = ui.bench.report (ui.bench.heard());
    setVisible (chosen > 0 || (report != nullptr && ! report->silent && report->figures.confidence.isEstimated()));
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
    const auto& t = colours();
    for (int i = 0; i < names.size(); ++i)
    {
        if (oneChip && i != chosen)
            continue;
        const auto box = chip (i);
        const bool on = i == chosen;
        g.setColour (on ? t.ink : t.sheet);
        g.fillRoundedRectangle (box.toFloat(), 4.0f);
        g.setColour (on ? t.ink : t.line);
        g.drawRoundedRectangle (box.toFloat().reduced (0.5f), 4.0f, 1.0f);
        g.setColour (on ? t.sheet : t.mute);
        g.setFont (type::text (12.0f));
        type::draw (g, names[i], box, juce::Justification::centred, false);
    }
    if (hasKeyboardFocus (false))
        paintFocus (g, getLocalBounds().toFloat(), 5.0f, t);
}

void StringChoice::choose (int index)
{
    const int count = names.size();
    if (count > 0)
        ui.bench.setOnlyString ((index + count) % count - 1);
}

void StringChoice::mouseDown (const juce::MouseEvent& e)
{
    if (oneChip)
        return choose (chosen + 1);
    for (int i = 0; i < names.size(); ++i)
        if (chip (i).contains (e.getPosition()))
            choose (i);
}

bool StringChoice::keyPressed (const juce::KeyPress& key)
{
    const int way = key == juce::KeyPress::leftKey || key == juce::KeyPress::downKey  ? -1
                    : key == juce::KeyPress::rightKey || key == juce::KeyPress::upKey ? 1
                                                                                      : 0;
    if (way != 0)
        choose (chosen + way);
    return way != 0;
}
}
