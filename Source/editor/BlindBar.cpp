#include "editor/BlindBar.h"

#include "editor/Words.h"
#include "session/Session.h"

namespace coldiron
{
BlindBar::BlindBar (UiContext& d) : Panel (d), turn (d, "Turn over", true), stop (d, "Stop")
{
    setTitle ("Listen");
    addAndMakeVisible (turn);
    addAndMakeVisible (stop);
    stop.setTooltip ("Ends the test without a result.");
    turn.onClick = [this]
    {
        if (onTurnOver)
            onTurnOver();
    };
    stop.onClick = [this]
    {
        if (onStop)
            onStop();
    };
}

void BlindBar::sessionChanged (const Revisions&, const Revisions&)
{
    const auto view = ui.session.blindTest.view();
    turn.setEnabled (view.canTurnOver);
    level = "matched, always on";
    hum = ui.session.noise.humDb() <= -79.9 ? juce::String ("off") : words::db (ui.session.noise.humDb(), false, 0);
    keys =
        view.kind == BlindView::Kind::abx ? juce::String ("1, 2 and X hear") : "1 to " + juce::String (view.versions) + " hear";
    repaint();
}

void BlindBar::resized()
{
    auto area = getLocalBounds().reduced (16, 0);
    auto buttons = area.removeFromRight (stop.idealWidth() + 8 + turn.idealWidth());
    stop.setBounds (buttons.removeFromRight (stop.idealWidth()).withSizeKeepingCentre (stop.idealWidth(), 34));
    turn.setBounds (buttons.removeFromLeft (turn.idealWidth()).withSizeKeepingCentre (turn.idealWidth(), 34));
    words = area.withTrimmedRight (16);
}

void BlindBar::paint (juce::Graphics& g)
{
    paintSheet (g);
    const auto& t = colours();
    auto row = words;
    const auto put = [&] (const juce::String& text, const juce::Font& font, juce::Colour colour, int gap)
    {
        g.setColour (colour);
        g.setFont (font);
        const int width = juce::roundToInt (type::width (font, text)) + 2;
        type::draw (g, text, row.removeFromLeft (width), juce::Justification::centredLeft, false);
        row.removeFromLeft (gap);
    };
    put ("Level", type::name (17.0f), t.mute, 8);
    put (level, type::bold (13.0f), t.ink, 24);
    put ("Mains hum", type::name (17.0f), t.mute, 8);
    put (hum, type::bold (13.0f), t.ink, 24);
    put (keys, type::text (13.0f), t.mute, 0);
}
}
