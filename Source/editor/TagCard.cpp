#include "editor/TagCard.h"

#include "editor/Fitting.h"
#include "editor/Words.h"
#include "session/Session.h"

#include <cmath>

namespace coldiron
{
namespace
{
constexpr float cut = 16.0f, inset = 4.0f;
}

juce::Path tagOutline (juce::Rectangle<float> r)
{
    juce::Path p;
    p.startNewSubPath (r.getX() + cut, r.getY());
    p.lineTo (r.getRight() - cut, r.getY());
    p.lineTo (r.getRight(), r.getY() + cut);
    p.lineTo (r.getRight(), r.getBottom() - 6);
    p.quadraticTo (r.getRight(), r.getBottom(), r.getRight() - 6, r.getBottom());
    p.lineTo (r.getX() + 6, r.getBottom());
    p.quadraticTo (r.getX(), r.getBottom(), r.getX(), r.getBottom() - 6);
    p.lineTo (r.getX(), r.getY() + cut);
    p.closeSubPath();
    return p;
}

TagCard::TagCard (UiContext& d, OptionId t) : Button ({}), ui (d), shown (t)
{
    setRadioGroupId (1, juce::dontSendNotification);
    setTriggeredOnMouseDown (true);
    nameField.setTitle ("Name of the option");
    addChildComponent (nameField);
    nameField.onReturnKey = [this] { endRenaming (true); };
    nameField.onEscapeKey = [this] { endRenaming (false); };
    nameField.onFocusLost = [this] { endRenaming (true); };
}

void TagCard::setSize (TagSize s)
{
    size = s;
    resized();
    repaint();
}

juce::Path TagCard::outline() const { return tagOutline (getLocalBounds().toFloat().reduced (inset)); }
juce::Point<float> TagCard::eyelet() const
{
    return { static_cast<float> (getWidth()) / 2.0f, inset + (size.low ? 9.0f : 12.0f) };
}

juce::Rectangle<int> TagCard::nameArea() const
{
    const int pad = size.compact ? 8 : 11;
    return { static_cast<int> (inset) + pad - 4, static_cast<int> (inset + headHeight()) + (size.low ? 2 : 8),
             getWidth() - 2 * (static_cast<int> (inset) + pad - 4), 36 };
}

void TagCard::paintButton (juce::Graphics& g, bool, bool)
{
    const auto& t = ui.colours();
    const auto path = outline();
    const bool over = isMouseOver (true);
    if (heard)
        juce::DropShadow (juce::Colours::black.withAlpha (0.13f), 10, { 0, 3 }).drawForPath (g, path);
    g.setColour (t.sheet);
    g.fillPath (path);
    paintHead (g, over);
    g.setColour (heard ? t.of (shown) : over ? t.ink : t.line);
    g.strokePath (path, juce::PathStrokeType (heard ? 2.5f : 1.0f));

    const auto hole = eyelet();
    g.setColour (t.window);
    g.fillEllipse (juce::Rectangle<float> (11, 11).withCentre (hole));
    g.setColour (heard ? t.of (shown) : t.mute);
    g.drawEllipse (juce::Rectangle<float> (11, 11).withCentre (hole), 1.5f);

    if (! nameField.isVisible())
    {
        auto area = nameArea();
        g.setColour (t.ink);
        const float textSize = size.low || size.compact ? 13.0f : 14.0f;
        g.setFont (type::bold (textSize));
        if (below.isNotEmpty() && area.getHeight() > 30)
        {
            type::draw (g, name, area.removeFromTop (area.getHeight() / 2), juce::Justification::centredLeft, true);
            g.setColour (t.mute);
            g.setFont (type::text (textSize - 0.5f));
            type::draw (g, below, area, juce::Justification::centredLeft, true);
        }
        else
        {
            const int lines = area.getHeight() > 30 ? 2 : 1;
            float fitting = textSize; // smaller, down to 12, before anything is left out
            while (fitting > 12.0f && ! fitsOn (name, type::bold (fitting), static_cast<float> (area.getWidth()), lines))
                fitting -= 0.5f;
            g.setFont (type::bold (fitting));
            g.drawFittedText (shortenedInTheMiddle (name, type::bold (fitting), static_cast<float> (area.getWidth()), lines),
                              area, juce::Justification::topLeft, lines, 1.0f);
        }
    }
    paintFigures (g);

    if (hasKeyboardFocus (false))
    {
        g.setColour (t.ink);
        g.strokePath (tagOutline (getLocalBounds().toFloat().reduced (1.0f)), juce::PathStrokeType (2.0f));
    }
}

void TagCard::paintHead (juce::Graphics& g, bool over)
{
    const auto& t = ui.colours();
    const auto area = getLocalBounds().toFloat().reduced (inset);
    const auto colour = t.of (shown);
    if (heard)
    {
        const juce::Graphics::ScopedSaveState save (g);
        g.reduceClipRegion (juce::Rectangle<float> (area).withHeight (headHeight()).getSmallestIntegerContainer());
        g.setColour (colour);
        g.fillPath (outline());
    }
    const float pad = size.compact ? 10.0f : 16.0f;
    const auto letter = shown == asRecorded ? juce::String ("Now") : words::from (letterOf (shown));
    auto font = type::name (shown == asRecorded ? (size.compact || size.low ? 22.0f : 26.0f) : (size.low ? 32.0f : 36.0f));
    g.setFont (font);
    g.setColour (heard ? t.onOption : colour);
    const float base = area.getY() + headHeight() - (size.low ? 8.0f : 12.0f);
    g.drawSingleLineText (letter, juce::roundToInt (area.getX() + pad), juce::roundToInt (base));
    if (over && ! heard)
        g.fillRect (area.getX() + pad, base + 4.0f, type::width (font, letter), 2.5f);

    if (pill.isEmpty())
        return;
    const auto small = type::text (12.0f);
    const float room = area.getRight() - (size.compact ? 6.0f : 10.0f) - (area.getX() + pad + type::width (font, letter) + 8.0f);
    auto words = pill;
    if (type::width (small, words) + 14.0f > room)
        words = shown == asRecorded ? juce::String() : words.substring (0, 2).trim(); // the sign alone, the words are in the tip
    const float width = type::width (small, words) + 14.0f;
    if (width > room || words.isEmpty())
        return;
    const juce::Rectangle<float> box (area.getRight() - (size.compact ? 6.0f : 10.0f) - width,
                                      area.getY() + headHeight() - (size.low ? 21.0f : 31.0f), width, 19.0f);
    g.setColour (t.sheet);
    g.fillRoundedRectangle (box, 9.5f);
    g.setColour (heard ? t.sheet : t.line);
    g.drawRoundedRectangle (box.reduced (0.5f), 9.0f, 1.0f);
    g.setColour (t.ink);
    g.setFont (small);
    type::draw (g, words, box.toNearestInt(), juce::Justification::centred, false);
}

void TagCard::paintFigures (juce::Graphics& g)
{
    const auto& t = ui.colours();
    const int pad = size.compact ? 12 : 20;
    const int bottom = getHeight() - static_cast<int> (inset);
    auto area = getLocalBounds().reduced (pad, 0);

    // The colour line in the tag's dash; while a response is worked out it waits as a hairline.
    juce::Path line;
    line.startNewSubPath (static_cast<float> (area.getX()), static_cast<float> (bottom) - 11.5f);
    line.lineTo (static_cast<float> (area.getRight()), static_cast<float> (bottom) - 11.5f);
    g.setColour (report == nullptr ? t.line : t.of (shown));
    strokeDashed (g, line, report == nullptr ? asRecorded : shown, report == nullptr ? 1.0f : 3.0f);

    const bool known = report != nullptr && report->complete;
    struct Row
    {
        const char* label;
        juce::String value;
        bool strong;
        bool clips;
    };
    std::vector<Row> rows;
    if (known && report->silent)
        rows = { { "level", report->fault.empty() ? "silent" : "not computed", true, false } };
    else
    {
        const bool isNow = shown == asRecorded;
        bool clips = false;
        if (known && report->peakDb.has_value())
            clips = *report->peakDb + (ui.session.monitor.levelMatched() ? report->matchDb : 0.0) > 0.0;
        rows.push_back ({ "level", known ? words::db (levelOf (*report)) : juce::String(), false, clips });
        rows.push_back (
            { "clarity", known ? words::db (report->figures.clarityDb.value_or (0.0)) : juce::String(), false, false });
        rows.push_back ({ "hum", known ? words::humInWords (*report) : juce::String(),
                          known && ! isNow && humKind (report->figures.hum.playingDb) >= HumKind::like, false });
    }

    if (size.low)
    {
        auto row = area.withTop (bottom - 34).withHeight (16);
        g.setFont (type::text (12.5f));
        g.setColour (t.ink);
        if (known)
        {
            type::draw (g, rows[0].value, row, juce::Justification::centredLeft, false);
            if (! size.compact && rows.size() > 1)
            {
                // A hum that costs is said in place of the peak where it fits.
                const auto peak = words::hertz (report->figures.resonance.peakHz.value_or (0.0));
                const auto hum = "hum " + rows[2].value;
                const float room = static_cast<float> (row.getWidth()) - type::width (type::text (12.5f), rows[0].value) - 8.0f;
                const bool saysHum = rows[2].strong && type::width (type::bold (12.5f), hum) <= room;
                g.setFont (saysHum ? type::bold (12.5f) : type::text (12.5f));
                type::draw (g, saysHum ? hum : peak, row, juce::Justification::centredRight, false);
            }
        }
        return;
    }

    const int pitch = 18;
    int y = bottom - 21 - pitch * 3;
    for (const auto& row : rows)
    {
        const juce::Rectangle<int> place (area.getX(), y, area.getWidth(), pitch);
        g.setFont (type::text (12.5f));
        g.setColour (t.mute);
        if (! size.compact)
            type::draw (g, row.label, place, juce::Justification::centredLeft, false);
        if (row.value.isNotEmpty())
        {
            g.setColour (t.ink);
            const auto font = row.strong ? type::bold (13.0f) : type::text (13.0f);
            g.setFont (font);
            type::draw (g, row.value, place, juce::Justification::centredRight, false);
            if (row.clips)
            {
                juce::Path mark;
                const float x = static_cast<float> (place.getRight()) - type::width (font, row.value) - 12.0f,
                            m = static_cast<float> (place.getCentreY());
                mark.addTriangle (x, m + 4, x + 8, m + 4, x + 4, m - 4);
                g.fillPath (mark);
            }
        }
        else
        {
            g.setColour (t.line);
            g.fillRoundedRectangle (
                place.withTrimmedLeft (place.getWidth() / 2).withSizeKeepingCentre (place.getWidth() / 2, 6).toFloat(), 3.0f);
        }
        y += pitch;
    }
}

void TagCard::mouseDown (const juce::MouseEvent& e)
{
    if (e.mods.isPopupMenu())
        showMenu();
    else
        Button::mouseDown (e);
}

void TagCard::clicked() { ui.session.monitor.hear (shown); }

void TagCard::mouseDoubleClick (const juce::MouseEvent& e)
{
    if (shown != asRecorded && nameArea().contains (e.getPosition()))
        startRenaming();
}

bool TagCard::keyPressed (const juce::KeyPress& key)
{
    if (key == juce::KeyPress::returnKey)
        clicked();
    else if (key == juce::KeyPress (juce::KeyPress::F10Key, juce::ModifierKeys::shiftModifier, 0))
        showMenu();
    else if (key == juce::KeyPress::F2Key && shown != asRecorded)
        startRenaming();
    else if (key == juce::KeyPress::deleteKey && shown != asRecorded)
        ui.session.options.remove (shown);
    else
        return false;
    return true;
}

void TagCard::startRenaming()
{
    dressField (nameField, ui.colours());
    nameField.setText (name, false);
    nameField.setVisible (true);
    nameField.grabKeyboardFocus();
    nameField.selectAll();
    repaint();
}

void TagCard::endRenaming (bool keep)
{
    if (! nameField.isVisible())
        return;
    nameField.setVisible (false);
    const auto typed = nameField.getText().trim();
    if (keep && typed.isNotEmpty() && typed != name)
        ui.session.options.rename (shown, typed.toStdString());
    repaint();
}

void TagCard::resized() { nameField.setBounds (nameArea().withHeight (24)); }
}
