#include "editor/WiringView.h"

#include "editor/JobWords.h"
#include "session/HandRewire.h"
#include "session/Session.h"
#include "wording/PartWords.h"

namespace coldiron
{
namespace
{
constexpr float pointReach = 13.0f, gripReach = 7.0f; ///< [px]
}

WiringView::WiringView (UiContext& d, DrawingCache& c) : Overlay (d), cache (c)
{
    setTitle ("Wiring");
    field.setTitle ("Point or part");
    addChildComponent (field);
    field.onReturnKey = [this] { endTyping (true); };
    field.onEscapeKey = [this] { endTyping (false); };
    field.onFocusLost = [this] { endTyping (false); };
    field.onTextChange = [this]
    {
        if (typing != Typing::target)
            return;
        if (const auto found = held.pointCalled (field.getText().toStdString()); ! found.empty())
            walk (found);
    };
}

juce::Rectangle<float> WiringView::page() const
{
    return getLocalBounds().reduced (16, 8).withTrimmedTop (44).withTrimmedBottom (24).toFloat();
}

juce::Rectangle<float> WiringView::sheetArea() const
{
    const auto area = page();
    return juce::Rectangle<float> (area.getWidth() * zoom, area.getHeight() * zoom).withPosition (area.getPosition() + offset);
}

void WiringView::readSession()
{
    const auto job = ui.session.jobEditor.job();
    const OptionId heard = ui.session.monitor.heard();
    const auto next = cache.get (job, heard);
    fresh = next != nullptr && next->width > 0;
    if (const auto now = ui.session.revisions(); now.job + 1 != seenJob || heard != seenOption)
    {
        seenJob = now.job + 1;
        seenOption = heard;
        inPlace = mayBeRewired (ui.session.jobEditor, heard);
    }
    if (! fresh)
    {
        held.hide();
        hovered = nullptr;
        return;
    }
    if (next != drawing)
        hovered = nullptr;
    drawing = next;
    const auto* option = heard == asRecorded ? nullptr : job->find (letterOf (heard));
    CircuitConfig config = option != nullptr
                               ? job->optionConfig (*option)
                               : job->recordedConfig (job->takes.empty() ? -1 : juce::jmax (0, ui.session.takes.playing()));
    config.harness = harnessOf (*job, heard);
    if (option != nullptr)
        config.setting = ui.session.controls.setting (heard);
    held.show (drawing, config);
    if (held.spotOf (standing) == nullptr)
        standing.clear();
}

void WiringView::sessionChanged (const Revisions& before, const Revisions& now)
{
    if (before.job != now.job || before.heard != now.heard || before.settings != now.settings)
        repaint();
}

Shape::Spot WiringView::inDrawing (juce::Point<float> at) const
{
    const auto spot = at.transformedBy (drawingPlace (*drawing, sheetArea()).inverted());
    return { spot.x, spot.y };
}

juce::Point<float> WiringView::onScreen (Shape::Spot spot) const
{
    return juce::Point<float> (static_cast<float> (spot.x), static_cast<float> (spot.y))
        .transformedBy (drawingPlace (*drawing, sheetArea()));
}

double WiringView::reach (float pixels) const
{
    return pixels / drawingPlace (*drawing, sheetArea()).mat00;
} // placed, never turned

juce::Point<float> WiringView::placeOf (const std::string& point)
{
    readSession();
    const auto* spot = held.spotOf (point);
    return spot != nullptr ? onScreen (*spot) : juce::Point<float> (-1.0f, -1.0f);
}

juce::Point<float> WiringView::placeOf (const DrawnGrip& grip) { return onScreen (grip.way[grip.way.size() / 2]); }

void WiringView::setZoom (float to, juce::Point<float> about)
{
    const auto origin = page().getPosition();
    const float wanted = juce::jlimit (1.0f, 4.0f, to);
    const auto inPage = (about - origin - offset) / zoom;
    zoom = wanted;
    offset = about - origin - inPage * zoom;
    const auto p = page();
    offset.x = juce::jlimit (p.getWidth() * (1 - zoom), 0.0f, offset.x);
    offset.y = juce::jlimit (p.getHeight() * (1 - zoom), 0.0f, offset.y);
    repaint();
}

void WiringView::resized()
{
    Overlay::resized();
    field.setBounds (getWidth() - close.getWidth() - 12 - 268, 12, 250, 30);
}

/** Moves the page so that the point the keys stand on is seen. */
void WiringView::showPoint (const std::string& point)
{
    if (const auto* spot = held.spotOf (point))
    {
        const auto at = onScreen (*spot), inside = page().reduced (40.0f).getConstrainedPoint (at);
        offset += inside - at;
        setZoom (zoom, page().getCentre());
    }
}

void WiringView::hover (juce::Point<float> at)
{
    mouse = at;
    if (drawing == nullptr || ! held.isReady())
        return;
    const auto spot = inDrawing (at);
    pointed = held.pointNear (spot, reach (pointReach));
    hovered = held.isHolding() || ! pointed.empty() ? nullptr : held.gripNear (spot, reach (gripReach));
    const bool takes = held.isHolding() || ! pointed.empty() || hovered != nullptr;
    setMouseCursor (held.isHolding() ? juce::MouseCursor::DraggingHandCursor
                    : takes          ? juce::MouseCursor::PointingHandCursor
                                     : juce::MouseCursor::NormalCursor);
    repaint();
}

void WiringView::mouseMove (const juce::MouseEvent& e)
{
    readSession();
    if (! held.isHolding())
        hover (e.position);
}

void WiringView::mouseExit (const juce::MouseEvent&)
{
    if (held.isHolding())
        return;
    pointed.clear();
    hovered = nullptr;
    repaint();
}

void WiringView::mouseDown (const juce::MouseEvent& e)
{
    endTyping (false);
    grabKeyboardFocus();
    readSession();
    moved = panning = byMouse = false;
    atDown = offset;
    held.putBack();
    hover (e.position);
    if (! held.isReady() || (pointed.empty() && hovered == nullptr))
    {
        panning = true;
        return;
    }
    byMouse = true;
    if (pointed.empty())
    {
        if (! held.take (*hovered))
            byMouse = false;
        return;
    }
    // At a point its nearest wire comes along; a bare lug, or Shift held, gives a new one.
    const auto spot = inDrawing (e.position);
    const DrawnGrip* best = nullptr;
    const auto list = jointsAt (held.harness(), pointed);
    if (drawing != nullptr && ! e.mods.isShiftDown())
        for (const auto& joint : list)
            for (const auto& grip : drawing->grips)
                if (grip.held == joint.held && grip.from == joint.from)
                {
                    const auto second = [&spot] (const DrawnGrip& g)
                    {
                        const auto& at = g.way[juce::jmin<size_t> (2, g.way.size() - 1)];
                        return std::hypot (at.x - spot.x, at.y - spot.y);
                    };
                    if (best == nullptr || second (grip) < second (*best))
                        best = &grip;
                }
    if (best == nullptr || ! held.take (*best))
        held.drawOutOf (pointed);
}

void WiringView::mouseDrag (const juce::MouseEvent& e)
{
    mouse = e.position;
    moved = moved || e.getDistanceFromDragStart() > 3;
    if (panning)
    {
        offset = atDown + e.getOffsetFromDragStart().toFloat();
        setZoom (zoom, page().getCentre());
        return;
    }
    if (! byMouse || ! held.isHolding())
        return;
    pointed = held.pointNear (inDrawing (mouse), reach (pointReach));
    held.over (pointed);
    repaint();
}

void WiringView::mouseUp (const juce::MouseEvent&)
{
    if (byMouse && held.isHolding())
    {
        if (moved)
            finish();
        else
        {
            standing = pointed.empty() ? held.move().from : pointed; // a click only points
            held.putBack();
        }
    }
    byMouse = panning = false;
    hover (mouse);
}

void WiringView::mouseWheelMove (const juce::MouseEvent& e, const juce::MouseWheelDetails& wheel)
{
    setZoom (zoom * (wheel.deltaY > 0 ? 1.15f : 1 / 1.15f), e.position);
}
void WiringView::mouseDoubleClick (const juce::MouseEvent&) { setZoom (1.0f, page().getCentre()); }

/** Lets go: the wiring becomes what is wanted, or everything stays and a word says why. */
void WiringView::finish()
{
    const auto verdict = held.verdict();
    const auto verdictWords = held.verdictWords();
    const auto wanted = held.wanted();
    held.putBack();
    if (! wanted)
    {
        if (! verdict.canBeDone())
            ui.tell (words::from (verdictWords) + ".");
        return repaint();
    }
    const auto result = rewireByHand (ui.session.jobEditor, ui.session.monitor.heard(), *wanted);
    if (result.done && result.option != ui.session.monitor.heard())
        ui.session.monitor.hear (result.option);
    if (! result.words.empty())
        ui.tell (words::from (result.words));
    else if (verdict.kind == HandVerdict::Kind::bad)
        ui.tell (words::from (verdictWords) + ". Ctrl Z takes it back.");
    readSession();
    tellChange (*this);
    repaint();
}

void WiringView::startTyping (Typing kind)
{
    typing = kind;
    dressField (field, colours());
    field.clear();
    field.setTextToShowWhenEmpty (kind == Typing::target ? "Solder to, say: volume 2" : "Part, say: 22n or 150k", colours().mute);
    field.setVisible (true);
    field.grabKeyboardFocus();
    repaint();
}

void WiringView::endTyping (bool take)
{
    const auto kind = typing;
    if (kind == Typing::nothing)
        return;
    typing = Typing::nothing;
    const auto text = field.getText().toStdString();
    field.setVisible (false);
    if (isShowing())
        grabKeyboardFocus();
    if (kind == Typing::target)
    {
        if (take)
            finish();
        else
            held.over ("");
    }
    else if (take && ! held.takePart (standing, text))
        ui.tell ("A part is a value: 22n is a capacitor, 150k a resistor.");
    repaint();
}

void WiringView::walk (const std::string& to)
{
    standing = to;
    held.over (to == held.move().held ? "" : to);
    showPoint (to);
    tellChange (*this);
    repaint();
}

bool WiringView::keyPressed (const juce::KeyPress& key)
{
    readSession();
    byMouse = false;
    pointed.clear(); // the keys have it now, wherever the mouse rests
    hovered = nullptr;
    const auto letter = juce::CharacterFunctions::toUpperCase (key.getTextCharacter());
    if (letter == '+' || letter == '-')
    {
        setZoom (zoom * (letter == '+' ? 1.25f : 0.8f), page().getCentre());
        return true;
    }
    if (key == juce::KeyPress::escapeKey && held.isHolding())
    {
        held.putBack();
        repaint();
        return true;
    }
    if (! held.isReady() || key.getModifiers().isCommandDown())
        return Overlay::keyPressed (key);

    if (key.getKeyCode() == juce::KeyPress::tabKey)
        return (walk (held.pointAfter (standing, key.getModifiers().isShiftDown() ? -1 : 1)), true);
    if (key == juce::KeyPress::leftKey || key == juce::KeyPress::rightKey)
        return (walk (held.pointTowards (standing, key == juce::KeyPress::leftKey ? -1 : 1, 0)), true);
    if (key == juce::KeyPress::upKey || key == juce::KeyPress::downKey)
        return (walk (held.pointTowards (standing, 0, key == juce::KeyPress::upKey ? -1 : 1)), true);

    if (key == juce::KeyPress::returnKey && held.isHolding())
        return (finish(), true);
    const bool removes = key == juce::KeyPress::deleteKey || key == juce::KeyPress::backspaceKey;
    if (standing.empty() && (letter == 'U' || letter == 'S' || letter == 'P' || removes))
        ui.tell ("Walk to a point first: Tab or the arrows.");
    else if (standing.empty())
        return Overlay::keyPressed (key);
    else if (letter == 'U')
    {
        if (! held.takeAt (standing))
            ui.tell ("Nothing to unsolder at " + words::from (wording::point (held.harness(), standing)) + ".");
    }
    else if (letter == 'S')
    {
        if (! held.isHolding())
            held.drawOutOf (standing);
        startTyping (Typing::target);
    }
    else if (letter == 'P' && ! held.isHolding())
        startTyping (Typing::value);
    else if (removes)
    {
        if (held.isHolding())
        {
            held.over ("");
            finish();
        }
        else if (! held.takeAway (standing))
            ui.tell ("The jack and the bridge stay.");
    }
    else
        return Overlay::keyPressed (key);
    tellChange (*this);
    repaint();
    return true;
}
}
