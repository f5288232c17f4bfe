#include "editor/BlindTags.h"

#include "editor/TagCard.h"
#include "editor/Words.h"
#include "listening/Ranking.h"
#include "session/Session.h"
#include "wording/ListeningWords.h"

#include <cmath>

namespace coldiron
{
BlindTags::BlindTags (UiContext& d) : Panel (d) { setTitle ("Tags, face down"); }

void BlindTags::arrange (juce::Rectangle<int> row, int each, bool low)
{
    isLow = low;
    places.clear();
    const int count = juce::jmax (1, view.versions), gap = count > 7 ? 6 : 10;
    each = juce::jmin (each, (row.getWidth() - gap * (count - 1)) / count);
    for (int i = 0; i < count; ++i)
    {
        places.push_back (row.removeFromLeft (each));
        row.removeFromLeft (gap);
    }
    placeButtons();
    repaint();
}

void BlindTags::startTurning() { turned = 0.0; }

void BlindTags::tick()
{
    if (turned >= 1.0)
        return;
    turned = juce::jmin (1.0, turned + 1.0 / 8.0); // 240 ms at 30 a second
    repaint();
}

void BlindTags::sessionChanged (const Revisions&, const Revisions&)
{
    view = ui.session.blindTest.view();
    placeButtons();
    repaint();
}

juce::String BlindTags::wordsOf (int number) const
{
    if (view.kind == BlindView::Kind::abx)
        return view.isX (number) ? juce::String ("which is it?") : juce::String ("one of the two");
    const auto place = view.places[static_cast<size_t> (number - 1)];
    if (! place)
        return "not yet ranked";
    return words::from (wording::place (*place)) + (view.tied[static_cast<size_t> (number - 1)] ? ", shared" : "");
}

juce::Rectangle<int> BlindTags::arrow (juce::Rectangle<int> tag, bool up) const
{
    return tag.removeFromBottom (isLow ? 30 : 36)
        .removeFromLeft (up ? tag.getWidth() / 2 : tag.getWidth())
        .removeFromRight (tag.getWidth() / 2)
        .withTrimmedTop (isLow ? 4 : 0);
}

void BlindTags::paintThread (juce::Graphics& g, juce::Rectangle<int> place, bool heard)
{
    const auto& t = colours();
    const juce::Point<float> hole (static_cast<float> (place.getCentreX()),
                                   static_cast<float> (place.getY()) + (isLow ? 9.0f : 12.0f));
    const float top = 6.0f;
    juce::Path thread;
    if (heard)
    {
        thread.startNewSubPath (hole.x, top);
        thread.lineTo (hole);
        g.setColour (t.ink);
        g.strokePath (thread, juce::PathStrokeType (3.0f));
        g.fillEllipse (juce::Rectangle<float> (10, 10).withCentre ({ hole.x, top }));
    }
    else
    {
        thread.startNewSubPath (hole.x + 1.0f, top);
        thread.cubicTo (hole.x - 5.0f, top + 8.0f, hole.x - 3.0f, hole.y - 14.0f, hole.x, hole.y);
        g.setColour (t.mute);
        g.strokePath (thread, juce::PathStrokeType (1.2f));
    }
}

void BlindTags::paintTag (juce::Graphics& g, juce::Rectangle<int> place, int number)
{
    const auto& t = colours();
    const bool heard = view.heard == number;
    const auto outline = tagOutline (place.toFloat().reduced (0.5f));
    g.setColour (t.sheet);
    g.fillPath (outline);
    if (turned < 0.5)
        return; // the face of it is gone already
    {
        const juce::Graphics::ScopedSaveState save (g);
        g.reduceClipRegion (outline);
        g.setColour (heard ? t.mute : t.line);
        const auto area = place.toFloat();
        for (float x = area.getX() - area.getHeight(); x < area.getRight(); x += 10.0f)
            g.drawLine (x, area.getBottom(), x + area.getHeight(), area.getY(), heard ? 1.4f : 1.0f);
    }
    g.setColour (heard ? t.ink : t.line);
    g.strokePath (outline, juce::PathStrokeType (heard ? 2.5f : 1.0f));

    const auto hole = juce::Rectangle<float> (11, 11).withCentre (
        { static_cast<float> (place.getCentreX()), static_cast<float> (place.getY()) + (isLow ? 9.0f : 12.0f) });
    g.setColour (t.window);
    g.fillEllipse (hole);
    g.setColour (heard ? t.ink : t.mute);
    g.drawEllipse (hole, 1.5f);

    const float disc = isLow ? 40.0f : 68.0f;
    const auto round = juce::Rectangle<float> (disc, disc)
                           .withCentre ({ static_cast<float> (place.getCentreX()),
                                          static_cast<float> (place.getCentreY()) - (isLow ? 6.0f : 2.0f) });
    g.setColour (heard ? t.ink : t.sheet);
    g.fillEllipse (round);
    g.setColour (heard ? t.ink : t.mute);
    g.drawEllipse (round, 1.5f);
    g.setColour (heard ? t.sheet : t.ink);
    g.setFont (type::bold (isLow ? 23.0f : 34.0f)); // numbers
    type::draw (g, nameOf (number), round.toNearestInt(), juce::Justification::centred, false);

    const auto font = type::text (12.5f);
    const auto words = wordsOf (number);
    auto line = place.withTrimmedBottom (isLow ? 4 : 10).removeFromBottom (18);
    const int width = juce::roundToInt (type::width (font, words)) + 10;
    g.setColour (t.sheet);
    g.fillRect (line.withSizeKeepingCentre (juce::jmin (width, place.getWidth() - 4), 18));
    g.setColour (t.ink);
    g.setFont (font);
    type::draw (g, words, line, juce::Justification::centred, true);
    if (view.kind != BlindView::Kind::ranking || width + 36 > place.getWidth())
        return;
    for (bool up : { true, false })
    {
        const auto c = line.withWidth (18).withX (up ? line.getX() + 3 : line.getRight() - 21).toFloat().getCentre();
        juce::Path arrowHead;
        const float s = up ? -1.0f : 1.0f;
        arrowHead.addTriangle (c.x - 5, c.y - 3 * s, c.x + 5, c.y - 3 * s, c.x, c.y + 4 * s);
        g.setColour (t.sheet);
        g.fillRect (juce::Rectangle<float> (16, 16).withCentre (c));
        g.setColour (t.ink);
        g.fillPath (arrowHead);
    }
}

void BlindTags::paint (juce::Graphics& g)
{
    if (! view.isRunning)
        return;
    for (size_t i = 0; i < places.size(); ++i)
    {
        const int number = static_cast<int> (i) + 1;
        paintThread (g, places[i], view.heard == number);
        const juce::Graphics::ScopedSaveState save (g);
        if (turned < 1.0)
        {
            const auto centre = places[i].toFloat().getCentre();
            const auto narrow = static_cast<float> (juce::jmax (0.02, std::abs (std::cos (turned * 3.14159265358979))));
            g.addTransform (juce::AffineTransform::scale (narrow, 1.0f, centre.x, centre.y));
        }
        paintTag (g, places[i], number);
    }
}

void BlindTags::placeButtons()
{
    const auto make = [this] (std::function<void()> what)
    {
        auto made = std::make_unique<BareButton> (ui, juce::String());
        made->setWantsKeyboardFocus (false); // Return turns the tags over, arrows rank
        made->setTriggeredOnMouseDown (true);
        made->onClick = std::move (what);
        addAndMakeVisible (*made);
        return made;
    };
    const size_t wanted = view.isRunning ? juce::jmin (places.size(), static_cast<size_t> (view.versions)) : 0;
    while (buttons.size() > wanted)
        buttons.pop_back();
    while (buttons.size() < wanted)
    {
        const int number = static_cast<int> (buttons.size()) + 1;
        const auto hear = [this, number] { ui.session.blindTest.hear (number); };
        const auto rank = [this, number] (RankMove way)
        {
            ui.session.blindTest.hear (number);
            ui.session.blindTest.rank (number, way);
        };
        auto one = make (hear);
        one->setRadioGroupId (1, juce::dontSendNotification);
        auto up = make ([rank] { rank (RankMove::up); });
        auto down = make ([rank] { rank (RankMove::down); });
        buttons.push_back ({ std::move (one), std::move (up), std::move (down) });
    }
    for (size_t i = 0; i < buttons.size(); ++i)
    {
        const int number = static_cast<int> (i) + 1;
        auto& [one, up, down] = buttons[i];
        one->setTitle (nameOf (number) + ", " + wordsOf (number));
        one->setOn (view.heard == number);
        one->setBounds (places[i]);
        up->setTitle ("Rank " + nameOf (number) + " up");
        up->setBounds (arrow (places[i], true));
        down->setTitle ("Rank " + nameOf (number) + " down");
        down->setBounds (arrow (places[i], false));
        for (auto* each : { up.get(), down.get() })
            each->setVisible (view.kind == BlindView::Kind::ranking);
    }
}

juce::String BlindTags::nameOf (int number) const { return view.isX (number) ? juce::String ("X") : juce::String (number); }
}
