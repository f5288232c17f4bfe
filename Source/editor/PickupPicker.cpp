#include "editor/PickupPicker.h"

#include "editor/Words.h"
#include "job/Readers.h"
#include "session/Session.h"

#include <algorithm>

namespace coldiron
{
namespace
{
juce::String constructionOf (const Pickup& pickup)
{
    const bool split = std::any_of (pickup.coils.begin(), pickup.coils.end(), [] (const Coil& c) { return ! c.hears.empty(); });
    const bool dummy =
        std::all_of (pickup.coils.begin(), pickup.coils.end(), [] (const Coil& c) { return c.magnet == Magnet::none; });
    const bool sidewise = pickup.coils.size() > 1 && pickup.coils[0].offsetMm != pickup.coils[1].offsetMm;
    return dummy                      ? "A coil for hum alone"
           : split                    ? "Split coil"
           : pickup.coils.size() == 1 ? "One coil"
           : sidewise                 ? "Two coils side by side"
                                      : "Tapped coil";
}
}

PickupPicker::PickupPicker (UiContext& d) : ui (d), take (d, "Take this one", true), leave (d, "Back")
{
    setTitle ("Another pickup");
    setFocusContainerType (FocusContainerType::focusContainer);
    read();
    dressField (search, ui.colours());
    search.setTextToShowWhenEmpty ("Search: hot, two leads, bass", ui.colours().mute);
    search.setTitle ("Search pickups");
    search.onTextChange = [this] { filter(); };
    search.onKeyFirst = [this] (const juce::KeyPress& key)
    { return (key == juce::KeyPress::upKey || key == juce::KeyPress::downKey) && keyPressed (key); };
    search.onReturnKey = [this] { choose(); };
    search.onEscapeKey = [this] { onLeave(); };
    list.setModel (this);
    list.setRowHeight (30);
    list.setColour (juce::ListBox::backgroundColourId, juce::Colours::transparentBlack);
    list.setTitle ("Pickups");
    take.onClick = [this] { choose(); };
    leave.onClick = [this] { onLeave(); };
    for (auto* child : std::initializer_list<juce::Component*> { &search, &list, &take, &leave })
        addAndMakeVisible (child);
}

PickupPicker::~PickupPicker() { list.setModel (nullptr); }

void PickupPicker::read()
{
    const auto& presets = ui.session.jobEditor.presets();
    for (const auto& name : presets.list ("pickups"))
    {
        Diagnostics diagnostics;
        Library library (presets, diagnostics);
        const auto resolved = library.resolve ("pickup", name);
        if (! resolved)
            continue;
        const auto pickup = readPickup (resolved->json, diagnostics);
        if (! diagnostics.empty())
            continue;
        double ohms = 0.0;
        for (const auto& coil : pickup.coils)
            ohms += coil.dcrOhms;
        const auto* about = resolved->json.find ("about");
        Entry entry { name, words::from (pickup.name), words::ohms (ohms), constructionOf (pickup), {} };
        entry.haystack =
            (entry.name + " " + entry.group + " " + words::from (name + " " + (about != nullptr ? about->text : std::string())))
                .toLowerCase();
        entries.push_back (std::move (entry));
    }
    std::stable_sort (entries.begin(), entries.end(),
                      [] (const Entry& a, const Entry& b) { return a.group == b.group ? a.name < b.name : a.group < b.group; });
}

void PickupPicker::start (const juce::String& p, const std::string& preset)
{
    part = p;
    setTitle ("Another pickup for the " + part);
    now = preset;
    refusal = {};
    search.setText ({}, false);
    filter();
    for (size_t i = 0; i < lines.size(); ++i)
        if (lines[i].entry >= 0 && entries[static_cast<size_t> (lines[i].entry)].preset == now)
            list.selectRow (static_cast<int> (i));
    search.grabKeyboardFocus();
}

void PickupPicker::refuse (const juce::String& why)
{
    refusal = why;
    announce (why, true);
    repaint();
}

void PickupPicker::filter()
{
    const auto wanted = juce::StringArray::fromTokens (search.getText().toLowerCase(), " ", "");
    lines.clear();
    juce::String group;
    int first = -1;
    for (size_t i = 0; i < entries.size(); ++i)
    {
        const auto& entry = entries[i];
        if (! std::all_of (wanted.begin(), wanted.end(), [&] (const auto& word) { return entry.haystack.contains (word); }))
            continue;
        if (entry.group != group)
            lines.push_back ({ group = entry.group, -1 });
        if (first < 0)
            first = static_cast<int> (lines.size());
        lines.push_back ({ {}, static_cast<int> (i) });
    }
    list.updateContent();
    list.selectRow (first);
    take.setEnabled (first >= 0);
    repaint();
}

void PickupPicker::choose()
{
    const int row = list.getSelectedRow();
    if (row >= 0 && row < getNumRows() && lines[static_cast<size_t> (row)].entry >= 0)
        onChosen (entries[static_cast<size_t> (lines[static_cast<size_t> (row)].entry)].preset);
}

bool PickupPicker::keyPressed (const juce::KeyPress& key)
{
    if (key == juce::KeyPress::escapeKey)
        return (onLeave(), true);
    if (key != juce::KeyPress::downKey && key != juce::KeyPress::upKey)
        return false;
    const int row = nextRow (list.getSelectedRow(), key == juce::KeyPress::downKey ? 1 : -1, getNumRows(),
                             [this] (int r) { return lines[static_cast<size_t> (r)].entry < 0; });
    if (row >= 0)
    {
        list.selectRow (row);
        announce (getNameForRow (row));
    }
    return true;
}

void PickupPicker::resized()
{
    auto area = getLocalBounds().reduced (12, 8).withTrimmedTop (34);
    search.setBounds (area.removeFromTop (32));
    area.removeFromTop (8);
    auto foot = area.removeFromBottom (36);
    take.setBounds (foot.removeFromRight (take.idealWidth()));
    foot.removeFromRight (8);
    leave.setBounds (foot.removeFromRight (leave.idealWidth()));
    area.removeFromBottom (44); // for why not
    list.setBounds (area.withHeight (area.getHeight() / 30 * 30));
}

void PickupPicker::paint (juce::Graphics& g)
{
    const auto& t = ui.colours();
    g.setColour (t.sheet);
    g.fillRoundedRectangle (getLocalBounds().toFloat(), 6.0f);
    g.setColour (t.mute);
    g.drawRoundedRectangle (getLocalBounds().toFloat().reduced (0.5f), 6.0f, 1.0f);
    auto area = getLocalBounds().reduced (12, 8);
    g.setColour (t.ink);
    g.setFont (type::name (16.0f));
    type::draw (g, "Another pickup for the " + part, area.removeFromTop (30), juce::Justification::centredLeft, true);
    const auto words = inWords();
    if (words.isNotEmpty())
    {
        g.setFont (type::text (12.5f));
        g.drawFittedText (
            words, take.getBounds().withLeft (area.getX()).withTop (take.getY() - 44).withHeight (40).withRight (area.getRight()),
            juce::Justification::topLeft, 2, 1.0f);
    }
}

void PickupPicker::paintListBoxItem (int row, juce::Graphics& g, int width, int height, bool selected)
{
    if (row < 0 || row >= static_cast<int> (lines.size()))
        return; // a list asks for rows below its last one, and once more for old ones when it became shorter
    const auto& t = ui.colours();
    const auto& line = lines[static_cast<size_t> (row)];
    if (line.entry < 0)
    {
        g.setColour (t.mute);
        g.setFont (type::name (15.0f));
        type::draw (g, line.heading, 4, 4, width - 8, height - 4, juce::Justification::bottomLeft, true);
        return;
    }
    if (selected)
    {
        g.setColour (t.ink);
        g.fillRoundedRectangle (0.0f, 1.0f, static_cast<float> (width) - 2.0f, static_cast<float> (height) - 2.0f, 4.0f);
    }
    const auto& entry = entries[static_cast<size_t> (line.entry)];
    g.setColour (selected ? t.sheet : t.ink);
    g.setFont (entry.preset == now ? type::bold (13.0f) : type::text (13.0f));
    type::draw (g, entry.name, 12, 0, width - 90, height, juce::Justification::centredLeft, true);
    g.setFont (type::text (12.5f));
    type::draw (g, entry.figures, width - 82, 0, 72, height, juce::Justification::centredRight, true);
}

juce::String PickupPicker::getNameForRow (int row)
{
    if (row < 0 || row >= getNumRows())
        return {};
    const auto& line = lines[static_cast<size_t> (row)];
    if (line.entry < 0)
        return "Group: " + line.heading;
    const auto& entry = entries[static_cast<size_t> (line.entry)];
    return entry.name + ", " + entry.figures + (entry.preset == now ? ", the one that is in" : "");
}

juce::String PickupPicker::inWords() const
{
    return refusal.isNotEmpty() ? refusal
           : lines.empty()      ? juce::String ("None of that name. Try single, humbucker, bass.")
                                : juce::String();
}

std::unique_ptr<juce::AccessibilityHandler> PickupPicker::createAccessibilityHandler()
{
    return accessible (*this, juce::AccessibilityRole::group, { .description = [this] { return inWords(); } });
}
}
