// How the lane looks: with a take, without one, with one whose file is gone, and while the guitar is heard live.

#include "editor/WaveformView.h"
#include "editor/Words.h"
#include "session/Session.h"
#include "wording/TakeWords.h"

namespace coldiron
{
juce::String WaveformView::takeName() const
{
    const auto take = static_cast<size_t> (juce::jmax (0, ui.session.takes.playing()));
    return take < chips.takes().size() ? words::from (chips.takes()[take].name)
           : picture != nullptr        ? words::from (picture->name)
                                       : juce::String();
}

bool WaveformView::isLive() const { return ui.session.transport.source() == Source::host && ! ui.inHost; }

bool WaveformView::isMissing() const
{
    const auto take = static_cast<size_t> (juce::jmax (0, ui.session.takes.playing()));
    return take < chips.takes().size() && chips.takes()[take].isMissing;
}

juce::String WaveformView::inWords() const
{
    if (! playable())
        return isMissing()          ? takeName() + " is not where it was."
               : picture == nullptr ? juce::String ("No take yet.")
                                    : words::from (picture->fault);
    auto text = takeName() + ", " + words::seconds (picture->seconds) + ".";
    for (const auto& remark : picture->remarks)
        text << " " << words::from (wording::takeFault (remark)) << ".";
    const auto [from, to] = loopRange();
    text << (ui.session.transport.isLooping() ? " Loop " + juce::String (from, 1) + " to " + words::seconds (to) + "."
                                              : juce::String (" No loop."));
    return isLive() ? text + " Live: a loudspeaker nearby can feed back." : text;
}

void WaveformView::paint (juce::Graphics& g)
{
    const auto& t = colours();
    if (! playable())
        return paintEmpty (g);
    paintSheet (g);

    // Play and stop.
    g.setColour (t.ink);
    g.fillEllipse (button.toFloat());
    g.setColour (t.sheet);
    const auto c = button.toFloat().getCentre();
    if (ui.session.transport.isPlaying())
    {
        g.fillRect (c.x - 8, c.y - 9, 5.0f, 18.0f);
        g.fillRect (c.x + 3, c.y - 9, 5.0f, 18.0f);
    }
    else
    {
        juce::Path triangle;
        triangle.addTriangle (c.x - 6, c.y - 10, c.x - 6, c.y + 10, c.x + 11, c.y);
        g.fillPath (triangle);
    }

    paintHeading (g);
    paintWave (g);
    paintHead (g);
}

void WaveformView::paintEmpty (juce::Graphics& g)
{
    const auto& t = colours();
    auto area = getLocalBounds().toFloat().reduced (0.5f);
    g.setColour (t.sheet);
    g.fillRoundedRectangle (area, 6.0f);
    juce::Path border, dashed;
    border.addRoundedRectangle (area, 6.0f);
    const float dash[] = { 5.0f, 4.0f };
    juce::PathStrokeType (1.0f).createDashedStroke (dashed, border, dash, 2);
    g.setColour (t.mute);
    g.fillPath (dashed);
    const bool none = picture == nullptr, listed = ! chips.takes().empty();
    auto lines = getLocalBounds()
                     .withTrimmedLeft (24)
                     .withTrimmedRight (open.getWidth() + 40)
                     .withSizeKeepingCentre (getWidth() - open.getWidth() - 64, 46);
    lines.setX (24);
    if (listed)
        lines.setY (juce::jmin (34, getHeight() - 48));
    g.setColour (t.ink);
    g.setFont (type::bold (14.0f));
    type::draw (g,
                none ? juce::String (listed ? "Reading the take" : "Drop a dry take here, or open one.")
                     : takeName() + (isMissing() ? " is not where it was" : " cannot be played"),
                lines.removeFromTop (23), juce::Justification::centredLeft, true);
    g.setColour (t.mute);
    g.setFont (type::text (13.0f));
    juce::String second;
    if (isLive())
        second = "Live: a loudspeaker beside the guitar can feed back, turn it down first.";
    else if (none)
        second = listed ? "" : "Straight from the guitar, no amp. Note where every knob stands.";
    else if (isMissing())
        second = "Find it: setting, strings and options stay as they are. Till then they still read, only listening waits.";
    else
        second = words::from (picture->fault) + " The options still read, only listening waits.";
    type::draw (g, second, lines, juce::Justification::centredLeft, true);
}

void WaveformView::paintHeading (juce::Graphics& g)
{
    const auto& t = colours();
    auto row = heading;
    g.setColour (t.ink);
    g.setFont (type::bold (13.0f));
    const auto job = ui.session.jobEditor.job();
    const auto name = takeName();
    const auto font = type::bold (13.0f);
    if (naming < 0)
        type::draw (g, name, row.withWidth (juce::jmin (row.getWidth(), 220)), juce::Justification::centredLeft, true);
    row.removeFromLeft (naming >= 0 ? 210 : juce::jmin (220, juce::roundToInt (type::width (font, name))) + 14);
    auto how = words::seconds (picture->seconds);
    const int take = ui.session.takes.playing();
    if (take >= 0 && take < static_cast<int> (job->takes.size()))
        how << ", "
            << words::settingInWords (job->takes[static_cast<size_t> (take)].harness,
                                      job->takes[static_cast<size_t> (take)].setting);
    if (! picture->remarks.empty()) // the worst before all else: it is what a better recording would not have
        how = words::seconds (picture->seconds) + ", " + words::from (wording::takeFault (picture->remarks.front()))
              + how.substring (words::seconds (picture->seconds).length());
    if (const auto report = ui.session.reports.report (ui.session.monitor.heard());
        report != nullptr && report->figures.trust.trustedToHz && ! ui.session.blindTest.view().isRunning)
        how = words::seconds (picture->seconds) + ", noise: trust " + words::from (letterOf (report->option)) + " up to "
              + words::hertz (*report->figures.trust.trustedToHz) + how.substring (words::seconds (picture->seconds).length());
    if (isLive())
        how = "Live: a loudspeaker nearby can feed back";
    g.setColour (isLive() ? t.ink : t.mute);
    g.setFont (type::text (12.5f));
    const int tickStart = ticks.empty() ? row.getRight() - 150 : ticks.front().area.getX();
    const auto label = juce::String ("strings played");
    const int labelWidth = juce::roundToInt (type::width (type::text (12.5f), label)) + 10;
    const bool roomForLabel = row.getX() + juce::roundToInt (type::width (type::text (12.5f), how)) + 16 < tickStart - labelWidth;
    type::draw (g, how, row.withRight (tickStart - (roomForLabel ? labelWidth : 0) - 10), juce::Justification::centredLeft, true);
    g.setColour (t.mute);
    if (roomForLabel && ! ticks.empty())
        type::draw (g, label, juce::Rectangle<int> (tickStart - labelWidth, row.getY(), labelWidth - 6, row.getHeight()),
                    juce::Justification::centredRight, false);
    for (const auto& tick : ticks)
    {
        g.setColour (tick.on ? t.ink : t.sheet);
        g.fillRoundedRectangle (tick.area.toFloat(), 4.0f);
        g.setColour (tick.on ? t.ink : t.mute);
        g.drawRoundedRectangle (tick.area.toFloat().reduced (0.5f), 4.0f, 1.0f);
        g.setColour (tick.on ? t.sheet : t.mute);
        g.setFont (type::text (12.0f));
        type::draw (g, words::from (tick.name), tick.area, juce::Justification::centred, false);
    }
    const auto [from, to] = loopRange();
    g.setColour (t.mute);
    g.setFont (type::text (12.5f));
    type::draw (g,
                ui.session.transport.isLooping() ? "Loop " + juce::String (from, 1) + " to " + words::seconds (to)
                                                 : juce::String ("No loop"),
                heading.withLeft (heading.getRight() - 140), juce::Justification::centredRight, false);
}

void WaveformView::renameTake (int take)
{
    if (take < 0 || take >= static_cast<int> (chips.takes().size()))
        return;
    if (take != ui.session.takes.playing())
        ui.session.takes.select (take);
    naming = take;
    dressField (nameField, colours(), 13.0f);
    nameField.setText (words::from (chips.takes()[static_cast<size_t> (take)].name), false);
    nameField.setVisible (true);
    nameField.toFront (false);
    nameField.selectAll();
    nameField.grabKeyboardFocus();
    repaint();
}

void WaveformView::endNaming (bool keep)
{
    if (naming < 0)
        return;
    const int take = std::exchange (naming, -1);
    const auto typed = nameField.getText().trim();
    nameField.setVisible (false);
    if (keep && take < static_cast<int> (chips.takes().size())
        && typed != words::from (chips.takes()[static_cast<size_t> (take)].name))
        coldiron::renameTake (ui.session.jobEditor, take, typed.toStdString());
    repaint();
}
}
