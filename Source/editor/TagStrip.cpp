#include "editor/TagStrip.h"

#include "session/Session.h"

namespace coldiron
{
TagStrip::TagStrip (UiContext& d) : Panel (d), newTag (d)
{
    setTitle ("Options");
    setInterceptsMouseClicks (false, true);
    addChildComponent (newTag);
    rebuild();
}

void TagStrip::rebuild()
{
    std::vector<OptionId> wanted { asRecorded };
    for (OptionId id : ui.session.options.ids())
        wanted.push_back (id);
    const bool same = wanted.size() == cards.size()
                      && std::equal (wanted.begin(), wanted.end(), cards.begin(),
                                     [] (OptionId t, const auto& card) { return card->option() == t; });
    if (same)
        return;
    cards.clear();
    for (OptionId id : wanted)
    {
        cards.push_back (std::make_unique<TagCard> (ui, id));
        addAndMakeVisible (*cards.back());
    }
    newTag.toFront (false);
    for (const OptionId id : optionIds)
        if (std::find (wanted.begin(), wanted.end(), id) == wanted.end())
        {
            newTag.setLetter (id);
            break;
        }
}

void TagStrip::arrange (const std::vector<juce::Rectangle<int>>& places, TagSize size)
{
    for (size_t i = 0; i < cards.size() && i < places.size(); ++i)
    {
        cards[i]->setBounds (places[i].expanded (4));
        cards[i]->setSize (size);
    }
    newTag.setVisible (places.size() > cards.size());
    if (newTag.isVisible())
        newTag.setBounds (places[cards.size()].expanded (4));
    repaint();
}

void TagStrip::sessionChanged (const Revisions& before, const Revisions& now)
{
    if (before.job != now.job)
        rebuild();
    for (auto& card : cards)
        card->refresh();
    repaint();
}

void TagStrip::paintOverChildren (juce::Graphics& g)
{
    for (const auto& card : cards)
    {
        const bool heard = ui.session.monitor.heard() == card->option();
        const auto hole = card->eyelet() + card->getPosition().toFloat();
        juce::Path thread;
        const float top = 6.0f; // where the take's sheet ends
        if (heard)
        {
            thread.startNewSubPath (hole.x, top);
            thread.lineTo (hole);
            g.setColour (colours().of (card->option()));
            g.strokePath (thread, juce::PathStrokeType (3.0f));
            g.fillEllipse (juce::Rectangle<float> (10, 10).withCentre ({ hole.x, top }));
            g.setColour (colours().sheet);
            g.fillEllipse (juce::Rectangle<float> (9, 9).withCentre (hole));
        }
        else
        {
            thread.startNewSubPath (hole.x + 1.0f, top);
            thread.cubicTo (hole.x - 5.0f, top + 8.0f, hole.x - 3.0f, hole.y - 14.0f, hole.x, hole.y);
            g.setColour (colours().mute);
            g.strokePath (thread, juce::PathStrokeType (1.2f));
        }
    }
}

void TagStrip::rename (OptionId id)
{
    for (auto& card : cards)
        if (card->option() == id)
            card->startRenaming();
}

void TagStrip::hearNext (int direction)
{
    for (size_t i = 0; i < cards.size(); ++i)
        if (cards[i]->option() == ui.session.monitor.heard())
        {
            const auto next = static_cast<int> (i) + direction;
            if (next >= 0 && next < static_cast<int> (cards.size()))
                ui.session.monitor.hear (cards[static_cast<size_t> (next)]->option());
            return;
        }
}
}
