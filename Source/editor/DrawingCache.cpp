#include "editor/DrawingCache.h"

#include "editor/JobWords.h"
#include "editor/Tokens.h"
#include "files/Log.h"

namespace coldiron
{
namespace
{
constexpr double pageAspect = 1.72; ///< of the wiring view, 960 x 600 to 1920 x 1200
}

DrawingCache::DrawingCache()
    : worker (
        "coldiron-draw", [this] (const Cancellation& stop) { return drawNext (stop); },
        [] (const std::string& words) { logFault ("a wiring cannot be drawn: " + words); })
{
}

DrawingCache::~DrawingCache()
{
    worker.end();
    cancelPendingUpdate();
}

/** All that the drawing depends on, as text. */
std::string DrawingCache::keyOf (const Job& job, OptionId id)
{
    std::string key;
    for (const auto* harness : { &harnessBefore (job, id), &harnessOf (job, id) })
    {
        for (const auto& part : harness->parts())
            key += part.name + "/" + part.kindName() + "/" + words::from (part.preset).toStdString() + ";";
        for (const auto& [a, b] : solderPairs (*harness))
            key += a + ">" + b + ";";
        for (const auto& part : harness->parts())
            if (const auto* pot = part.as<PotPart>())
                key += std::to_string (pot->ohms);
            else if (const auto* capacitor = part.as<CapacitorPart>())
                key += std::to_string (capacitor->farads * 1e12);
            else if (const auto* resistor = part.as<ResistorPart>())
                key += std::to_string (resistor->ohms);
        key += "|";
    }
    return key;
}

std::shared_ptr<const Drawing> DrawingCache::get (const std::shared_ptr<const Job>& job, OptionId id)
{
    const auto key = keyOf (*job, id);
    const std::scoped_lock lock (guard);
    auto& entry = entries[id];
    if (entry.key == key)
        return entry.drawing;
    entry = { key, nullptr };
    queue.erase (std::remove_if (queue.begin(), queue.end(), [id] (const Want& w) { return w.option == id; }), queue.end());
    queue.push_back ({ job, id, key });
    worker.wake();
    return nullptr;
}

bool DrawingCache::waitUntilIdle (double seconds) { return worker.waitUntilIdle (seconds); }

namespace
{
/** A sheet that says why there is no drawing on it. */
Drawing sheetOf (const std::string& words)
{
    Shape text;
    text.kind = Shape::Kind::text;
    text.type = "fault";
    text.spots = { { 20.0, 60.0 } };
    text.fill = Ink::heat;
    text.text = words;
    Drawing drawing;
    drawing.width = std::max (860, 40 + 9 * static_cast<int> (words.size()));
    drawing.height = 120;
    drawing.shapes.push_back (std::move (text));
    return drawing;
}
}

bool DrawingCache::drawNext (const Cancellation& stop)
{
    Want want;
    {
        const std::scoped_lock lock (guard);
        if (queue.empty())
            return false;
        want = queue.back();
        queue.pop_back();
    }
    const Cancellation isUnwanted (
        [&]
        {
            if (stop.isRequested())
                return true;
            const std::scoped_lock lock (guard);
            return entries[want.option].key != want.key;
        });
    std::shared_ptr<const Drawing> drawing;
    try
    {
        drawing = std::make_shared<const Drawing> (drawWiring (
            harnessBefore (*want.job, want.option), harnessOf (*want.job, want.option), { 60, true, pageAspect, isUnwanted }));
    }
    catch (const std::exception& fault)
    {
        const std::string words =
            (want.option == asRecorded ? std::string ("The guitar as it is") : "Option " + letterOf (want.option))
            + " cannot be drawn: " + fault.what();
        logFault (words);
        drawing = std::make_shared<const Drawing> (sheetOf (words));
    }
    {
        const std::scoped_lock lock (guard);
        if (auto& entry = entries[want.option]; entry.key == want.key)
            entry.drawing = drawing;
    }
    triggerAsyncUpdate();
    return true;
}

namespace
{
juce::Colour colourOf (Ink ink, const Tokens& t)
{
    switch (ink)
    {
    case Ink::none: return juce::Colours::transparentBlack;
    case Ink::paper: return t.sheet;
    case Ink::ink: return t.ink;
    case Ink::mute: return t.mute;
    case Ink::heat: return t.heat;
    case Ink::wire: return t.ink.interpolatedWith (t.mute, 0.35f);
    case Ink::well: return t.well;
    }
    return t.ink;
}

juce::Path pathOf (const Shape& shape)
{
    juce::Path path;
    const auto at = [] (const Shape::Spot& s) { return juce::Point<float> (static_cast<float> (s.x), static_cast<float> (s.y)); };
    path.startNewSubPath (at (shape.spots[0]));
    for (size_t i = 1; i < shape.spots.size(); ++i)
    {
        const auto here = at (shape.spots[i]);
        if (i + 1 == shape.spots.size() || shape.radius <= 0.0)
        {
            path.lineTo (here);
            continue;
        }
        const auto before = at (shape.spots[i - 1]), behind = at (shape.spots[i + 1]);
        const float a = here.getDistanceFrom (before), b = here.getDistanceFrom (behind);
        const float k = juce::jmin (static_cast<float> (shape.radius), a / 2, b / 2);
        path.lineTo (here + (before - here) * (k / a));
        path.quadraticTo (here, here + (behind - here) * (k / b));
    }
    return path;
}
}

juce::AffineTransform drawingPlace (const Drawing& drawing, juce::Rectangle<float> area)
{
    const auto width = static_cast<float> (juce::jmax (1, drawing.width)),
               height = static_cast<float> (juce::jmax (1, drawing.height));
    const float scale = juce::jmin (area.getWidth() / width, area.getHeight() / height);
    return juce::AffineTransform::scale (scale).translated (area.getX() + (area.getWidth() - scale * width) / 2,
                                                            area.getY() + (area.getHeight() - scale * height) / 2);
}

void paintDrawing (juce::Graphics& g, const Drawing& drawing, juce::Rectangle<float> area, const Tokens& t, bool withText)
{
    if (drawing.width <= 0)
        return;
    const juce::Graphics::ScopedSaveState save (g);
    const auto place = drawingPlace (drawing, area);
    const float scale = place.getScaleFactor();
    g.addTransform (place);
    for (const auto& shape : drawing.shapes)
    {
        if (! withText && shape.spots[0].y > drawing.height - 45) // the legend is not for a small picture
            continue;
        if (shape.type == "sheet"
            || (! withText && (shape.kind == Shape::Kind::text || shape.type == "legend" || shape.type == "flag")))
            continue;
        const auto fill = colourOf (shape.fill, t), stroke = colourOf (shape.stroke, t);
        const auto x = static_cast<float> (shape.spots[0].x), y = static_cast<float> (shape.spots[0].y);
        juce::Path path;
        switch (shape.kind)
        {
        case Shape::Kind::text:
        {
            const auto font = shape.named    ? type::name (static_cast<float> (shape.size))
                              : shape.bold   ? type::bold (static_cast<float> (shape.size))
                              : shape.italic ? type::italic (static_cast<float> (shape.size))
                                             : type::text (static_cast<float> (shape.size));
            const auto text = juce::String::fromUTF8 (shape.text.c_str());
            const float width = type::width (font, text);
            const float left = shape.anchor == Shape::Anchor::middle ? x - width / 2
                               : shape.anchor == Shape::Anchor::end  ? x - width
                                                                     : x;
            g.setColour (fill);
            juce::GlyphArrangement glyphs;
            glyphs.addLineOfText (font, text, left, y);
            glyphs.draw (g);
            continue;
        }
        case Shape::Kind::circle:
            path.addEllipse (juce::Rectangle<float> (static_cast<float> (shape.radius) * 2, static_cast<float> (shape.radius) * 2)
                                 .withCentre ({ x, y }));
            break;
        case Shape::Kind::rect:
            path.addRoundedRectangle (x, y, static_cast<float> (shape.width), static_cast<float> (shape.height),
                                      juce::jmin (static_cast<float> (shape.radius), static_cast<float> (shape.width) / 2,
                                                  static_cast<float> (shape.height) / 2));
            break;
        case Shape::Kind::polyline: path = pathOf (shape); break;
        }
        if (shape.fill != Ink::none)
        {
            g.setColour (fill);
            g.fillPath (path);
        }
        if (shape.stroke == Ink::none)
            continue;
        g.setColour (stroke);
        // A small picture keeps its lines visible.
        const float weight = withText
                                 ? static_cast<float> (shape.weight)
                                 : juce::jmax (static_cast<float> (shape.weight), shape.type == "casing" ? 0.0f : 0.9f / scale);
        const juce::PathStrokeType pen (weight, juce::PathStrokeType::curved, juce::PathStrokeType::rounded);
        if (shape.dash > 0.0)
        {
            const float dash[] = { static_cast<float> (shape.dash), static_cast<float> (shape.gap) };
            juce::Path dashed;
            pen.createDashedStroke (dashed, path, dash, 2);
            g.fillPath (dashed);
        }
        else
            g.strokePath (path, pen);
    }
}
}
