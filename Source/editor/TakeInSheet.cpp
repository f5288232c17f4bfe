#include "editor/TakeInSheet.h"

#include "editor/Words.h"
#include "session/GuitarEdits.h"
#include "session/Session.h"

namespace coldiron
{
namespace
{
constexpr int scrollWidth = 14, columnHeadHeight = 26;

void dressView (juce::Viewport& view, juce::Component& inside)
{
    view.setViewedComponent (&inside, false);
    view.setScrollBarsShown (true, false);
    view.setScrollBarThickness (10);
    view.setWantsKeyboardFocus (false);
}
}

TakeInSheet::TakeInSheet (UiContext& d) : Overlay (d), guitars (d, "Another guitar"), values (d), column (d), picker (d)
{
    setTitle ("Take in");
    guitars.onClick = [this]
    {
        if (onGuitars)
            onGuitars();
    };
    cardsInside.setInterceptsMouseClicks (false, true);
    dressView (cardsView, cardsInside);
    dressView (columnView, column);
    column.onHeight = [this] { resized(); };
    picker.onLeave = [this]
    {
        picker.setVisible (false);
        resized();
        grabKeyboardFocus();
    };
    picker.onChosen = [this] (const std::string& preset) { chosen (preset); };
    addAndMakeVisible (guitars);
    addAndMakeVisible (cardsView);
    addAndMakeVisible (values);
    addAndMakeVisible (columnView);
    addChildComponent (picker);
    readCards();
}

void TakeInSheet::readCards()
{
    const auto job = ui.session.jobEditor.job();
    std::vector<std::string> names;
    std::vector<GuitarValue> others;
    for (const auto& value : valuesOf (*job))
        if (value.kind == GuitarValue::Kind::pickupOhms)
            names.push_back (value.part);
        else if (value.kind != GuitarValue::Kind::bridgeMm)
            others.push_back (value);
    std::vector<ValueList::Line> levers;
    for (const auto& part : job->guitar.harness.parts())
        if (const auto* lever = part.as<SwitchPart>())
            levers.push_back (
                { words::title (part.name), juce::String (static_cast<int> (lever->type.positions.size())) + " positions" });
    values.show (others, levers);
    const bool same = names.size() == cards.size()
                      && std::equal (names.begin(), names.end(), cards.begin(),
                                     [] (const auto& name, const auto& card) { return card->pickup() == name; });
    if (! same)
    {
        cards.clear();
        for (const auto& name : names)
        {
            cards.push_back (std::make_unique<PickupCard> (ui, name));
            auto* added = cards.back().get();
            added->onChoose = [this, name] { pickPickup (name); };
            added->onOpenFile = [this, name]
            {
                if (onPickupFile)
                    onPickupFile (name);
            };
            added->onHeight = [this] { placeCards(); };
            cardsInside.addAndMakeVisible (added);
        }
    }
    for (auto& each : cards)
        each->refresh();
    placeCards();
}

void TakeInSheet::sessionChanged (const Revisions& before, const Revisions& now)
{
    if (before.job != now.job)
        readCards();
    column.sessionChanged (before, now);
    repaint();
}

PickupCard* TakeInSheet::card (const std::string& part) const
{
    for (const auto& each : cards)
        if (each->pickup() == part)
            return each.get();
    return nullptr;
}

std::string TakeInSheet::pickupAt (juce::Point<int> point) const
{
    for (const auto& each : cards)
        if (each->getBounds().contains (cardsInside.getLocalPoint (this, point)))
            return each->pickup();
    return {};
}

void TakeInSheet::pickPickup (const std::string& part)
{
    picking = part;
    const auto job = ui.session.jobEditor.job();
    const auto* found = job->guitar.harness.find (part);
    picker.setVisible (true);
    resized();
    picker.start (words::plain (part), found != nullptr ? found->preset : std::string());
}

void TakeInSheet::chosen (const std::string& preset)
{
    const auto edit = pickupChoice (ui.session.jobEditor, picking, preset);
    if (! edit.sound() || ! ui.session.jobEditor.edit (edit.pointer, edit.json, edit.name))
    {
        const auto diagnostics = ui.session.diagnostics();
        return picker.refuse (edit.sound() && ! diagnostics.empty() ? words::from (diagnostics.front().message)
                                                                    : words::from (edit.refusal));
    }
    picker.onLeave();
}

bool TakeInSheet::keyPressed (const juce::KeyPress& key)
{
    if (key == juce::KeyPress::escapeKey && picker.isVisible())
        return (picker.onLeave(), true);
    return Overlay::keyPressed (key);
}

void TakeInSheet::focusOfChildComponentChanged (FocusChangeType cause)
{
    revealFocus (cardsView, cause);
    revealFocus (columnView, cause);
}

void TakeInSheet::placeCards()
{
    const auto heights = [this] (int width)
    {
        int total = 0;
        for (auto& each : cards)
            total += each->idealHeight (width) + 10;
        return total;
    };
    int width = cardsView.getWidth();
    if (width <= 0)
        return;
    if (heights (width) > cardsView.getHeight())
        width -= scrollWidth;
    int y = 0;
    for (auto& each : cards)
    {
        const int height = each->idealHeight (width);
        each->setBounds (0, y, width, height);
        y += height + 10;
    }
    cardsInside.setSize (width, juce::jmax (1, y));
}

void TakeInSheet::resized()
{
    Overlay::resized();
    guitars.setBounds (close.getX() - guitars.idealWidth() - 8, close.getY(), guitars.idealWidth(), close.getHeight());
    auto area = getLocalBounds().reduced (20, 16).withTrimmedTop (40);
    const int gap = getWidth() < 1000 ? 18 : 28, width = area.getWidth() - 2 * gap;
    const int first = juce::jmin (420, width * 37 / 100), second = juce::jmin (300, width * 27 / 100);
    places[0] = area.removeFromLeft (first);
    area.removeFromLeft (gap);
    places[1] = area.removeFromLeft (second);
    area.removeFromLeft (gap);
    places[2] = area.withWidth (juce::jmin (area.getWidth(), 520));
    const bool picks = picker.isVisible();
    cardsView.setBounds (places[0].withTrimmedTop (columnHeadHeight));
    values.setBounds (places[1].withTrimmedTop (columnHeadHeight));
    columnView.setBounds (places[2].withTrimmedTop (columnHeadHeight));
    values.setVisible (! picks);
    columnView.setVisible (! picks);
    picker.setBounds (places[1].getUnion (places[2]));
    int inside = columnView.getWidth();
    if (column.idealHeight (inside) > columnView.getHeight())
        inside -= scrollWidth;
    column.setSize (inside, juce::jmax (column.idealHeight (inside), 1));
    placeCards();
}

void TakeInSheet::paint (juce::Graphics& g)
{
    Overlay::paint (g);
    const auto& t = colours();
    g.setColour (t.ink);
    g.setFont (type::name (20.0f));
    type::draw (g, "Take in: " + words::from (ui.session.jobEditor.job()->guitar.name), 20, 12, guitars.getX() - 30, 30,
                juce::Justification::centredLeft, true);
    g.setColour (t.mute);
    g.setFont (type::name (15.0f));
    static const char* const heads[] { "Pickups", "Parts", "How it was recorded" };
    for (int i = 0; i < (picker.isVisible() ? 1 : 3); ++i)
        type::draw (g, heads[i], places[i].withHeight (22), juce::Justification::centredLeft, false);
}
}
