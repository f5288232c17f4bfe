#include "editor/FirstLine.h"

#include "editor/Words.h"

namespace coldiron
{
FirstLine::FirstLine (UiContext& d, bool host)
    : Panel (d), inHost (host), act (d, "Wiring", true), goOn (d, "Go on"), enough (d, "Enough")
{
    setTitle ("First steps");
    enough.setTooltip ("Put this line away for good");
    act.onClick = [this]
    {
        if (line != nullptr && onAct)
            onAct (line->step());
    };
    goOn.onClick = [this]
    {
        line->skip();
        refresh();
    };
    enough.onClick = [this]
    {
        if (onEnd)
            onEnd();
    };
    addChildComponent (act);
    addAndMakeVisible (goOn);
    addAndMakeVisible (enough);
}

void FirstLine::start (const MainView& sight)
{
    line = std::make_unique<FirstSteps> (sight);
    refresh();
}

void FirstLine::see (const MainView& sight)
{
    if (line != nullptr && line->see (sight))
        refresh();
}

void FirstLine::refresh()
{
    if (line->step() == FirstSteps::Step::done)
    {
        if (onEnd)
            onEnd();
        return;
    }
    const auto words = words::from (line->actWords());
    act.setVisible (words.isNotEmpty());
    if (words.isNotEmpty())
        act.setWords (words);
    resized();
    repaint();
}

void FirstLine::resized()
{
    auto area = getLocalBounds().reduced (4, 3);
    for (auto* button : { &enough, &goOn, &act })
        if (button->isVisible())
        {
            button->setBounds (area.removeFromRight (button->idealWidth()));
            area.removeFromRight (6);
        }
}

void FirstLine::paint (juce::Graphics& g)
{
    paintSheet (g);
    if (line == nullptr)
        return;
    g.setColour (colours().ink);
    g.setFont (type::bold (13.5f));
    const int right = act.isVisible() ? act.getX() : goOn.getX();
    type::draw (g, words::from (line->words (inHost)), 14, 0, right - 22, getHeight(), juce::Justification::centredLeft, false);
}
}
