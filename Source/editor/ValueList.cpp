#include "editor/Accessible.h"
#include "editor/Values.h"

#include <algorithm>

namespace coldiron
{
class ValueList::Inside : public juce::Component
{
public:
    explicit Inside (ValueList& o) : owner (o) {}
    int linesFrom = 0;

    void paint (juce::Graphics& g) override
    {
        const auto& t = owner.ui.colours();
        auto area = getLocalBounds().withTrimmedTop (linesFrom);
        g.setFont (type::text (12.5f));
        for (const auto& line : owner.lines)
        {
            auto row = area.removeFromTop (ValueRow::height);
            g.setColour (t.line);
            g.fillRect (row.removeFromBottom (1));
            g.setColour (t.ink);
            type::draw (g, line.label, row, juce::Justification::centredLeft, true);
            type::draw (g, line.value, row, juce::Justification::centredRight, false);
        }
    }

private:
    ValueList& owner;
};

ValueList::ValueList (UiContext& d) : ui (d), inside (std::make_unique<Inside> (*this))
{
    setTitle ("Values");
    setFocusContainerType (FocusContainerType::focusContainer);
    setInterceptsMouseClicks (false, true);
    inside->setInterceptsMouseClicks (false, true);
    scroll.setViewedComponent (inside.get(), false);
    scroll.setScrollBarsShown (true, false);
    scroll.setScrollBarThickness (10);
    scroll.setSingleStepSizes (ValueRow::height, ValueRow::height); // whole rows: nothing is cut through
    scroll.setWantsKeyboardFocus (false);
    addAndMakeVisible (scroll);
}

ValueList::~ValueList() = default;

void ValueList::show (const std::vector<GuitarValue>& values, std::vector<Line> fixed)
{
    lines = std::move (fixed);
    bool same = values.size() == rows.size();
    for (size_t i = 0; same && i < values.size(); ++i)
        same = rows[i]->get().isSame (values[i]);
    if (same)
    {
        for (size_t i = 0; i < values.size(); ++i)
            rows[i]->setValue (values[i]);
        return inside->repaint();
    }
    rows.clear();
    for (size_t i = 0; i < values.size(); ++i)
    {
        rows.push_back (std::make_unique<ValueRow> (ui, values[i]));
        auto* row = rows.back().get();
        row->onHeight = [this]
        {
            place();
            if (onHeight)
                onHeight();
        };
        row->onMove = [this, i] (int direction) { move (i, direction); };
        row->onFocus = [this, row] { reveal (*row); };
        inside->addAndMakeVisible (row);
    }
    place();
}

int ValueList::idealHeight() const
{
    int height = static_cast<int> (lines.size()) * ValueRow::height;
    for (const auto& row : rows)
        height += row->idealHeight (rowWidth (false));
    return height;
}

ValueRow* ValueList::rowOf (GuitarValue::Kind kind, const std::string& part) const
{
    for (const auto& row : rows)
        if (row->get().kind == kind && row->get().part == part)
            return row.get();
    return nullptr;
}

void ValueList::resized() { place(); }

void ValueList::place()
{
    const int ideal = idealHeight();
    const bool scrolls = ideal > getHeight();
    const bool typing = std::any_of (rows.begin(), rows.end(), [] (const auto& row) { return row->isTyping(); });
    scroll.setBounds (
        getLocalBounds().withHeight (scrolls && ! typing ? getHeight() / ValueRow::height * ValueRow::height : getHeight()));
    const int width = rowWidth (scrolls);
    int y = 0;
    const ValueRow* open = nullptr;
    for (auto& row : rows)
    {
        const int height = row->idealHeight (width);
        row->setBounds (0, y, width, height);
        y += height;
        if (row->isTyping())
            open = row.get();
    }
    inside->linesFrom = y;
    inside->setSize (width, juce::jmax (1, y + static_cast<int> (lines.size()) * ValueRow::height));
    inside->repaint();
    if (open != nullptr)
        reveal (*open);
}

void ValueList::move (size_t from, int direction)
{
    const auto to = static_cast<int> (from) + direction;
    if (to >= 0 && to < static_cast<int> (rows.size()))
        rows[static_cast<size_t> (to)]->grabKeyboardFocus();
}

void ValueList::reveal (const ValueRow& row)
{
    const auto view = scroll.getViewArea();
    if (row.getY() < view.getY())
        scroll.setViewPosition (0, row.getY());
    else if (row.getBottom() > view.getBottom())
    {
        const int y = row.getBottom() - view.getHeight();
        scroll.setViewPosition (0, row.isTyping() ? y : (y + ValueRow::height - 1) / ValueRow::height * ValueRow::height);
    }
}

std::unique_ptr<juce::AccessibilityHandler> ValueList::createAccessibilityHandler()
{
    const auto fixed = [this]
    {
        juce::StringArray words;
        for (const auto& line : lines)
            words.add (line.label + ", " + line.value);
        return words.joinIntoString ("; ");
    };
    return accessible (*this, juce::AccessibilityRole::group, { .description = fixed });
}
}
