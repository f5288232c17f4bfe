#include "editor/RadioGroup.h"

#include "editor/Accessible.h"

namespace coldiron
{
class RadioGroup::Choice : public juce::Button
{
public:
    Choice (RadioGroup& o, int i) : Button ({}), owner (o), index (i)
    {
        setRadioGroupId (1, juce::dontSendNotification);
        setTriggeredOnMouseDown (true);
        setWantsKeyboardFocus (false);
    }

    juce::String getTooltip() override { return owner.tipOf (index); }
    bool keyPressed (const juce::KeyPress&) override { return false; } // the group's
    void clicked (const juce::ModifierKeys& mods) override { owner.pressed (index, mods); }

private:
    RadioGroup& owner;
    const int index;

    void paintButton (juce::Graphics&, bool, bool) override {}
};

RadioGroup::RadioGroup (UiContext& d, const juce::String& title) : ui (d)
{
    setTitle (title);
    setFocusContainerType (FocusContainerType::focusContainer);
}

RadioGroup::~RadioGroup() = default;

void RadioGroup::setChoices (const juce::StringArray& titles)
{
    while (count() > titles.size())
        buttons.pop_back();
    while (count() < titles.size())
    {
        buttons.push_back (std::make_unique<Choice> (*this, count()));
        addAndMakeVisible (*buttons.back());
    }
    for (int i = 0; i < titles.size(); ++i)
        buttons[static_cast<size_t> (i)]->setTitle (titles[i]);
    current = juce::jmin (current, count() - 1);
    tellButtons();
}

void RadioGroup::setChosen (int index)
{
    index = juce::jlimit (-1, count() - 1, index);
    const bool other = index != current;
    current = index;
    tellButtons();
    if (other)
        repaint();
}

/** The one that is on is where the Tab key stops; the keyboard goes with it. */
void RadioGroup::tellButtons()
{
    const int stop = juce::jmax (0, current);
    bool keyboard = false;
    for (int i = 0; i < count(); ++i)
    {
        auto& button = *buttons[static_cast<size_t> (i)];
        keyboard = keyboard || button.hasKeyboardFocus (false);
        button.setToggleState (i == current, juce::dontSendNotification);
        button.setWantsKeyboardFocus (i == stop);
    }
    if (keyboard && ! buttons[static_cast<size_t> (stop)]->hasKeyboardFocus (false))
        buttons[static_cast<size_t> (stop)]->grabKeyboardFocus();
}

void RadioGroup::place (int index, juce::Rectangle<int> area)
{
    auto& button = *buttons[static_cast<size_t> (index)];
    button.setBounds (area);
    button.setVisible (! area.isEmpty());
}

void RadioGroup::choose (int index)
{
    if (count() == 0)
        return;
    setChosen (wraps ? (index + count()) % count() : juce::jlimit (0, count() - 1, index));
    if (onChoice)
        onChoice (current);
}

void RadioGroup::pressed (int index, juce::ModifierKeys) { choose (index); }

bool RadioGroup::keyPressed (const juce::KeyPress& key)
{
    if (! isEnabled() || count() == 0)
        return false;
    if (key == juce::KeyPress::leftKey || key == juce::KeyPress::downKey)
        choose (current - 1);
    else if (key == juce::KeyPress::rightKey || key == juce::KeyPress::upKey)
        choose (current + 1);
    else if (key == juce::KeyPress::returnKey)
        choose ((current + 1) % count());
    else
        return false;
    return true;
}

void RadioGroup::paintGroupFocus (juce::Graphics& g, float corner)
{
    if (hasKeyboardFocus (true))
        paintFocus (g, getLocalBounds().toFloat(), corner, ui.colours());
}

std::unique_ptr<juce::AccessibilityHandler> RadioGroup::createAccessibilityHandler()
{
    return accessible (*this, juce::AccessibilityRole::group);
}

Segments::Segments (UiContext& d, juce::StringArray w, const juce::String& title) : RadioGroup (d, title), words (std::move (w))
{
    setChoices (words);
    setChosen (0);
}

int Segments::idealWidth() const
{
    float total = 0.0f;
    for (const auto& word : words)
        total += type::width (type::bold (13.0f), word) + 28.0f;
    return juce::roundToInt (total) + 4;
}

juce::Rectangle<float> Segments::segment (int index) const
{
    float total = 0.0f, before = 0.0f;
    for (int i = 0; i < words.size(); ++i)
    {
        const float width = type::width (type::bold (13.0f), words[i]) + 28.0f;
        total += width;
        if (i < index)
            before += width;
    }
    const float scale = static_cast<float> (getWidth() - 4) / total;
    return { 2.0f + before * scale, 2.0f, (type::width (type::bold (13.0f), words[index]) + 28.0f) * scale,
             static_cast<float> (getHeight()) - 4.0f };
}

void Segments::resized()
{
    for (int i = 0; i < words.size(); ++i)
        place (i, segment (i).toNearestInt());
}

void Segments::paint (juce::Graphics& g)
{
    const auto& t = ui.colours();
    for (int i = 0; i < words.size(); ++i)
    {
        const auto area = segment (i).reduced (1.0f, 0.0f);
        const bool on = i == chosen();
        g.setColour (on ? t.ink : t.sheet);
        g.fillRoundedRectangle (area, 6.0f);
        if (! on)
        {
            g.setColour (t.line);
            g.drawRoundedRectangle (area.reduced (0.5f), 6.0f, 1.0f);
        }
        g.setColour (on ? t.sheet : t.ink);
        g.setFont (on ? type::bold (13.0f) : type::text (13.0f));
        type::draw (g, words[i], area.toNearestInt(), juce::Justification::centred, false);
    }
    paintGroupFocus (g, 8.0f);
}
}
