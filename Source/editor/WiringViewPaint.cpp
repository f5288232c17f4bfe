// What the wiring view draws over the drawing: the point and wire under the hand, what is held, what it would come to.

#include "editor/JobWords.h"
#include "editor/WiringView.h"
#include "session/Session.h"
#include "wording/PartWords.h"

#include <limits>

namespace coldiron
{
namespace
{
juce::Path pathOf (const std::vector<juce::Point<float>>& way)
{
    juce::Path path;
    path.startNewSubPath (way.front());
    for (size_t i = 1; i < way.size(); ++i)
        path.lineTo (way[i]);
    return path;
}

const juce::PathStrokeType pen (float weight)
{
    return juce::PathStrokeType (weight, juce::PathStrokeType::curved, juce::PathStrokeType::rounded);
}
}

void WiringView::paint (juce::Graphics& g)
{
    readSession();
    Overlay::paint (g);
    const auto& t = colours();
    paintTitle (g, titleWords());
    paintFoot (g);
    if (drawing == nullptr)
        return type::draw (g, "drawing", getLocalBounds(), juce::Justification::centred, false);
    {
        const juce::Graphics::ScopedSaveState save (g);
        g.reduceClipRegion (page().getSmallestIntegerContainer());
        paintDrawing (g, *drawing, sheetArea(), t, true);
        if (fresh && held.isReady())
            paintHand (g);
    }
    if (! fresh || ! held.isReady())
        return;

    const auto& harness = held.harness();
    const auto said = [&] (const std::string& point) { return words::from (wording::point (harness, point)); };
    if (held.isHolding())
    {
        const auto& verdict = held.verdict();
        const auto& to = held.move().to;
        const auto* spot = held.spotOf (to.empty() ? standing : to);
        const auto at = byMouse || spot == nullptr ? mouse : onScreen (*spot);
        const bool leftOff = to.empty() && held.holding() == WiringHand::Holding::joint && ! held.move().from.empty();
        const auto first = ! to.empty() ? said (to)
                           : leftOff    ? "Left off: " + words::from (held.words())
                                        : words::from (held.words());
        paintWords (g, at, first, words::from (held.verdictWords()),
                    verdict.kind == HandVerdict::Kind::bad || ! verdict.canBeDone());
    }
    else if (hovered != nullptr)
        paintWords (g, mouse, said (hovered->held), "on " + said (hovered->from) + ": pull it off", false);
    else if (const auto& point = pointed.empty() ? standing : pointed; ! point.empty())
        if (const auto* spot = held.spotOf (point))
        {
            paintWords (g, onScreen (*spot), said (point), jointsInWords (point), false);
        }
}

bool WiringView::leadIsInside (const std::string& point) const
{
    const auto* pickup = held.harness().find (splitPoint (point).first) != nullptr
                             ? held.harness().find (splitPoint (point).first)->as<PickupPart>()
                             : nullptr;
    if (pickup != nullptr)
        for (const auto& joint : pickup->pickup.inside)
            if (joint[0] == splitPoint (point).second || joint[1] == splitPoint (point).second)
                return true;
    return false;
}

void WiringView::paintFoot (juce::Graphics& g)
{
    const auto foot = getLocalBounds().reduced (20, 8).removeFromBottom (20);
    g.setColour (colours().mute);
    g.setFont (type::text (12.5f));
    type::draw (g, footWords(), foot, juce::Justification::centredLeft, false);
}

void WiringView::paintHand (juce::Graphics& g)
{
    const auto& t = colours();
    const auto way = [this] (const DrawnGrip& grip)
    {
        std::vector<juce::Point<float>> spots;
        for (const auto& spot : grip.way)
            spots.push_back (onScreen (spot));
        return spots;
    };
    const auto ring = [&] (juce::Point<float> at, float radius, float weight)
    { g.drawEllipse (juce::Rectangle<float> (radius * 2, radius * 2).withCentre (at), weight); };

    if (hovered != nullptr && hovered->way.size() > 1)
    {
        g.setColour (t.heat);
        g.strokePath (pathOf (way (*hovered)), pen (3.4f));
    }
    if (! held.isHolding())
    {
        for (const auto* point : { &standing, &pointed })
            if (const auto* spot = held.spotOf (*point))
            {
                g.setColour (t.ink);
                ring (onScreen (*spot), 10.0f, 2.0f);
            }
        return;
    }

    // Where the iron may go is warm.
    for (const auto& point : held.targets())
        if (const auto* spot = held.spotOf (point))
        {
            const auto at = onScreen (*spot);
            g.setColour (t.heat.withAlpha (0.18f));
            g.fillEllipse (juce::Rectangle<float> (18.0f, 18.0f).withCentre (at));
            g.setColour (t.heat);
            ring (at, 9.0f, 1.2f);
        }
    const auto& move = held.move();
    for (const auto& grip : drawing->grips)
        if (grip.held == move.held && grip.from == move.from && grip.way.size() > 1)
        {
            const auto path = pathOf (way (grip)); // what came off is paler
            g.setColour (t.sheet.withAlpha (0.8f));
            g.strokePath (path, pen (5.0f));
        }
    const auto* root = held.spotOf (move.held);
    if (root == nullptr || held.holding() == WiringHand::Holding::removal)
    {
        if (root != nullptr)
        {
            g.setColour (t.heat);
            ring (onScreen (*root), 10.0f, 2.4f);
        }
        return;
    }
    const auto* end = held.spotOf (move.to);
    const auto* where = held.spotOf (standing);
    const auto from = onScreen (*root), to = end != nullptr                ? onScreen (*end)
                                             : byMouse || where == nullptr ? mouse
                                                                           : onScreen (*where);
    juce::Path lead;
    lead.startNewSubPath (from);
    const float sag = juce::jmin (40.0f, from.getDistanceFrom (to) * 0.2f);
    lead.quadraticTo ((from + to) / 2.0f + juce::Point<float> (0.0f, sag), to);
    g.setColour (t.sheet);
    g.strokePath (lead, pen (7.0f));
    g.setColour (t.heat);
    g.strokePath (lead, pen (3.4f));
    g.fillEllipse (juce::Rectangle<float> (13.0f, 13.0f).withCentre (to));
    if (end != nullptr)
    {
        g.setColour (held.verdict().canBeDone() ? t.heat : t.mute);
        ring (to, 11.0f, 2.4f);
    }
}

/** A slip of paper beside the hand. */
/** Beside a point, on the side where it lies over the fewest words of the drawing. */
juce::Rectangle<int> WiringView::bubblePlace (juce::Point<float> at, int width, int height) const
{
    const auto bounds = page().getSmallestIntegerContainer();
    const int x = juce::roundToInt (at.x), y = juce::roundToInt (at.y);
    juce::Rectangle<int> best;
    int least = std::numeric_limits<int>::max();
    for (const auto& corner : { juce::Point<int> (x + 16, y + 16), juce::Point<int> (x - 16 - width, y + 16),
                                juce::Point<int> (x + 16, y - 16 - height), juce::Point<int> (x - 16 - width, y - 16 - height) })
    {
        const auto box = juce::Rectangle<int> (corner.x, corner.y, width, height).constrainedWithin (bounds);
        int covered = box.contains (x, y) ? 100 : 0;
        for (const auto& shape : drawing->shapes)
            if (shape.kind == Shape::Kind::text)
            {
                const float scale = drawingPlace (*drawing, sheetArea()).mat00;
                const auto words = static_cast<float> (shape.size * 0.55 * static_cast<double> (shape.text.size())) * scale;
                const auto spot = onScreen (shape.spots.front());
                const float left = spot.x
                                   - (shape.anchor == Shape::Anchor::middle ? words / 2.0f
                                      : shape.anchor == Shape::Anchor::end  ? words
                                                                            : 0.0f);
                const auto tall = static_cast<float> (shape.size) * scale;
                covered += box.toFloat().intersects (juce::Rectangle<float> (left, spot.y - tall, words, tall)) ? 1 : 0;
            }
        if (covered < least)
        {
            least = covered;
            best = box;
        }
    }
    return best;
}

void WiringView::paintWords (juce::Graphics& g, juce::Point<float> at, const juce::String& first, const juce::String& second,
                             bool bad)
{
    const auto& t = colours();
    const auto nameFont = type::bold (13.5f), textFont = bad ? type::bold (13.0f) : type::text (13.0f);
    const int most = juce::jmin (420, getWidth() - 60);
    const float secondWidth = type::width (textFont, second);
    const float room = static_cast<float> (most - 26);
    const int width = juce::jlimit (
        120, most, juce::roundToInt (juce::jmax (type::width (nameFont, first), juce::jmin (secondWidth, room))) + 28);
    juce::AttributedString text;
    text.append (second, textFont, bad ? t.ink : t.mute);
    juce::TextLayout words;
    words.createLayout (text, static_cast<float> (width - 24));
    const int lines = second.isEmpty() ? 0 : words.getNumLines();
    const auto box = bubblePlace (at, width, 32 + 18 * lines);
    g.setColour (t.sheet);
    g.fillRoundedRectangle (box.toFloat(), 5.0f);
    g.setColour (t.ink);
    g.drawRoundedRectangle (box.toFloat().reduced (0.5f), 5.0f, 1.2f);
    auto inside = box.reduced (12, 7);
    g.setFont (nameFont);
    type::draw (g, first, inside.removeFromTop (18), juce::Justification::centredLeft, true);
    words.draw (g, inside.toFloat());
}
}
