#include "editor/WaveformView.h"

#include "editor/Words.h"
#include "session/Session.h"
#include "wording/TakeWords.h"

#include <cmath>
#include <utility>

namespace coldiron
{
WaveformView::WaveformView (UiContext& d) : Panel (d), play (d, "Play", 26.0f), position (d), open (d, "Open a take"), chips (d)
{
    setTitle ("Take");
    play.setTriggeredOnMouseDown (true);
    play.onClick = [this] { togglePlay(); };
    play.setExplicitFocusOrder (1);
    chips.setExplicitFocusOrder (2);
    addChildComponent (play);
    addChildComponent (position);
    addChildComponent (chips);
    addChildComponent (open);
    addChildComponent (nameField);
    open.onClick = [this]
    { picture != nullptr&& ui.findTakeFile ? ui.findTakeFile (ui.session.takes.playing()) : ui.openTakeFile(); };
    chips.onRename = [this] (int take) { renameTake (take); };
    chips.onRelink = [this] (int take)
    {
        if (ui.findTakeFile)
            ui.findTakeFile (take);
    };
    nameField.setTitle ("Name of the take");
    nameField.onReturnKey = [this] { endNaming (true); };
    nameField.onEscapeKey = [this] { endNaming (false); };
    nameField.onFocusLost = [this] { endNaming (true); };
}

void WaveformView::sessionChanged (const Revisions& before, const Revisions& now)
{
    chips.sessionChanged (before, now);
    if (before.transport != now.transport || before.job != now.job)
    {
        const auto shown = std::exchange (picture, ui.session.takes.picture());
        if (shown != nullptr && picture != nullptr && picture != shown && ! picture->remarks.empty())
            ui.tell (words::from (picture->name + ": " + wording::takeFault (picture->remarks.front()) + ". "
                                  + wording::takeFaultCost (picture->remarks.front())));
        chips.setVisible (! chips.takes().empty());
        open.setVisible (! playable());
        play.setVisible (playable());
        position.setVisible (playable());
        open.setWords (picture == nullptr ? "Open a take" : "Find file");
        resized();
    }
    repaint();
}

void WaveformView::resized()
{
    auto area = getLocalBounds().reduced (16, 8);
    const int round = juce::jmin (52, getHeight() - 28);
    button = area.removeFromLeft (round + 4).withSizeKeepingCentre (round, round);
    area.removeFromLeft (20);
    heading = area.removeFromTop (20);
    if (! chips.takes().empty())
    {
        if (playable())
        {
            chips.setBounds (heading.removeFromLeft (chips.idealWidth()).expanded (2));
            heading.removeFromLeft (10);
        }
        else
            chips.setBounds (juce::Rectangle<int> (24, 8, chips.idealWidth(), 20).expanded (2));
    }
    nameField.setBounds (heading.withWidth (200).expanded (0, 2));
    area.removeFromTop (3);
    area.removeFromBottom (2);
    wave = area;
    play.setBounds (button.expanded (4));
    position.setBounds (wave);
    open.setBounds (getLocalBounds().removeFromRight (open.idealWidth() + 20).withSizeKeepingCentre (open.idealWidth(), 36));
    placeTicks();
    buildWave();
}

std::pair<double, double> WaveformView::loopRange() const
{
    const auto range = ui.session.transport.loop();
    return range.second > range.first || ! playable() ? range : std::make_pair (0.0, picture->seconds);
}

float WaveformView::xOf (double seconds) const
{
    return playable() ? static_cast<float> (wave.getX() + wave.getWidth() * seconds / picture->seconds)
                      : static_cast<float> (wave.getX());
}

double WaveformView::secondsAt (float x) const
{
    return playable() ? juce::jlimit (0.0, picture->seconds,
                                      (static_cast<double> (x) - wave.getX()) / wave.getWidth() * picture->seconds)
                      : 0.0;
}

void WaveformView::buildWave()
{
    quiet.clear();
    loud.clear();
    if (! playable() || picture->low.empty() || wave.isEmpty())
        return;
    const auto [from, to] = loopRange();
    const int pitch = 5, bars = juce::jmax (1, wave.getWidth() / pitch);
    float most = 1e-6f;
    for (size_t i = 0; i < picture->low.size(); ++i)
        most = juce::jmax (most, -picture->low[i], picture->high[i]);
    const float middle = static_cast<float> (wave.getCentreY()), scale = static_cast<float> (wave.getHeight()) * 0.48f / most;
    for (int bar = 0; bar < bars; ++bar)
    {
        const size_t first = picture->low.size() * static_cast<size_t> (bar) / static_cast<size_t> (bars);
        const size_t last =
            juce::jmax (first + 1, picture->low.size() * static_cast<size_t> (bar + 1) / static_cast<size_t> (bars));
        float low = 0.0f, high = 0.0f;
        for (size_t i = first; i < last && i < picture->low.size(); ++i)
        {
            low = juce::jmin (low, picture->low[i]);
            high = juce::jmax (high, picture->high[i]);
        }
        const float x = static_cast<float> (wave.getX() + bar * pitch + 1);
        const double at = secondsAt (x);
        const bool inside = ui.session.transport.isLooping() && at >= from && at <= to;
        (inside || ! ui.session.transport.isLooping() ? loud : quiet)
            .addRoundedRectangle (x, middle - juce::jmax (1.0f, high * scale), 2.0f, juce::jmax (2.0f, (high - low) * scale),
                                  1.0f);
    }
}

/** The strings of the guitar from the right end of the heading, those that the take plays on. */
void WaveformView::findTicks()
{
    ticks.clear();
    const auto job = ui.session.jobEditor.job();
    const int take = ui.session.takes.playing();
    if (! playable() || take < 0 || take >= static_cast<int> (job->takes.size()))
        return;
    const auto& played = job->takes[static_cast<size_t> (take)].strings;
    auto row = heading.withTrimmedRight (150);
    const auto& strings = job->guitar.strings;
    for (size_t i = strings.size(); i-- > 0;)
    {
        const bool on = played.empty() || std::find (played.begin(), played.end(), strings[i].name) != played.end();
        const int width = juce::roundToInt (type::width (type::text (12.0f), words::from (strings[i].name))) + 12;
        ticks.insert (ticks.begin(), { strings[i].name, row.removeFromRight (width).withSizeKeepingCentre (width, 18), on });
        row.removeFromRight (3);
    }
}

void WaveformView::placeTicks()
{
    findTicks();
    for (size_t i = 0; i < ticks.size(); ++i)
        placeTickButton (i);
    for (size_t i = ticks.size(); i < tickButtons.size(); ++i)
        tickButtons[i]->setVisible (false);
}

void WaveformView::placeTickButton (size_t index)
{
    if (index == tickButtons.size())
    {
        tickButtons.push_back (std::make_unique<BareButton> (ui, juce::String()));
        auto& made = *tickButtons.back();
        made.setTriggeredOnMouseDown (true);
        made.setTooltip ("Tick the strings this phrase plays: fewer strings change what another pickup hears, and ticking them "
                         "is what helps an estimate most.");
        made.onClick = [this, index]
        {
            flipString (index);
            tickButtons[index]->setOn (ticks[index].on); // as the job has it, also where it was refused
        };
        addAndMakeVisible (made);
    }
    auto& tick = *tickButtons[index];
    tick.setTitle ("String " + words::from (ticks[index].name) + " is played");
    tick.setBounds (ticks[index].area);
    tick.setOn (ticks[index].on);
    tick.setVisible (true);
}

void WaveformView::flipString (size_t index)
{
    std::vector<std::string> played;
    for (size_t i = 0; i < ticks.size(); ++i)
        if (ticks[i].on != (i == index))
            played.push_back (ticks[i].name);
    if (played.empty())
        return ui.tell ("A take plays at least one string.");
    if (played.size() == ticks.size())
        played.clear();
    ui.session.takes.setStringsPlayed (ui.session.takes.playing(), played);
}

void WaveformView::paintWave (juce::Graphics& g)
{
    const auto& t = colours();
    const auto [from, to] = loopRange();
    const bool looping = ui.session.transport.isLooping();
    if (looping)
    {
        const auto region = juce::Rectangle<float> (xOf (from), static_cast<float> (wave.getY()), xOf (to) - xOf (from),
                                                    static_cast<float> (wave.getHeight()));
        g.setColour (t.well);
        g.fillRect (region);
        g.setColour (t.ink);
        for (const auto& [x, way] :
             { std::pair<float, float> { region.getX(), 8.0f }, std::pair<float, float> { region.getRight(), -8.0f } })
        {
            juce::Path bracket;
            bracket.startNewSubPath (x + way, region.getY() + 1);
            bracket.lineTo (x, region.getY() + 1);
            bracket.lineTo (x, region.getBottom() - 1);
            bracket.lineTo (x + way, region.getBottom() - 1);
            g.strokePath (bracket, juce::PathStrokeType (2.0f));
        }
    }
    g.setColour (t.mute.withAlpha (0.6f));
    g.fillPath (quiet);
    g.setColour (t.of (ui.session.monitor.heard()));
    g.fillPath (loud);
}

void WaveformView::paintHead (juce::Graphics& g)
{
    const auto& t = colours();
    const auto blind = ui.session.blindTest.view();
    const OptionId heard = ui.session.monitor.heard();
    const float x = juce::jlimit (static_cast<float> (wave.getX()), static_cast<float> (wave.getRight()),
                                  xOf (ui.session.transport.positionSeconds()));
    g.setColour (t.ink);
    g.fillRect (x - 1.0f, static_cast<float> (wave.getY()), 2.0f, static_cast<float> (wave.getHeight()));
    if (heard == asRecorded && ! blind.isRunning)
        return;
    const juce::Rectangle<float> flag (x - 9.0f, static_cast<float> (wave.getY()) - 2.0f, 18.0f, 16.0f);
    g.setColour (t.of (heard));
    g.fillRoundedRectangle (flag, 3.0f);
    g.setColour (blind.isRunning ? t.sheet : t.onOption);
    g.setFont (type::bold (12.0f));
    type::draw (g,
                ! blind.isRunning         ? words::from (letterOf (heard))
                : blind.isX (blind.heard) ? juce::String ("X")
                                          : juce::String (blind.heard),
                flag.toNearestInt(), juce::Justification::centred, false);
}

void WaveformView::tick()
{
    play.setOn (ui.session.transport.isPlaying());
    if (! playable())
        return;
    const int x = juce::roundToInt (xOf (ui.session.transport.positionSeconds()));
    if (x == lastX)
        return;
    repaint (lastX - 12, wave.getY() - 6, 24, wave.getHeight() + 8);
    repaint (x - 12, wave.getY() - 6, 24, wave.getHeight() + 8);
    lastX = x;
}

void WaveformView::togglePlay()
{
    if (! playable())
        return;
    if (ui.session.transport.isPlaying())
        ui.session.transport.stop();
    else
        ui.session.transport.play();
    play.setOn (ui.session.transport.isPlaying());
    repaint();
}

void WaveformView::toggleLoop()
{
    ui.session.transport.setLooping (! ui.session.transport.isLooping());
    buildWave();
    repaint();
}

void WaveformView::nextTake()
{
    const auto count = static_cast<int> (ui.session.jobEditor.job()->takes.size());
    if (count < 2)
        return;
    // Every take in turn for all options, then again each option from the take nearest to it.
    const int next = ui.session.takes.follows() ? 0 : ui.session.takes.playing() + 1;
    if (next < count)
        ui.session.takes.select (next);
    else
        ui.session.takes.follow();
    ui.tell (next < count ? "Take " + juce::String (next + 1) + " for all options."
                          : juce::String ("Each option is derived from the take nearest to it."));
}

void WaveformView::setLoopEndHere (bool second)
{
    if (! playable())
        return;
    auto [from, to] = loopRange();
    const double here = ui.session.transport.positionSeconds();
    (second ? to : from) = here;
    if (to - from < 0.05)
        return ui.tell ("The loop's end comes after its start.");
    ui.session.transport.setLoop (from, to);
    ui.session.transport.setLooping (true);
    buildWave();
    repaint();
}

WaveformView::Grip WaveformView::gripAt (juce::Point<float> at) const
{
    if (! playable() || ! wave.toFloat().expanded (8, 0).contains (at))
        return Grip::none;
    const auto [from, to] = loopRange();
    if (ui.session.transport.isLooping() && std::abs (at.x - xOf (from)) < 8.0f)
        return Grip::left;
    if (ui.session.transport.isLooping() && std::abs (at.x - xOf (to)) < 8.0f)
        return Grip::right;
    return Grip::place;
}

void WaveformView::mouseMove (const juce::MouseEvent& e)
{
    const auto at = gripAt (e.position);
    setMouseCursor (at == Grip::left || at == Grip::right ? juce::MouseCursor::LeftRightResizeCursor
                                                          : juce::MouseCursor::NormalCursor);
    juce::String remarks;
    if (playable() && heading.contains (e.getPosition()))
        for (const auto& remark : picture->remarks)
            remarks << (remarks.isEmpty() ? "" : "\n") << words::from (wording::takeFault (remark)) << ". "
                    << words::from (wording::takeFaultCost (remark));
    setTooltip (remarks);
}

void WaveformView::mouseDown (const juce::MouseEvent& e)
{
    if (! playable())
        return;
    if (heading.contains (e.getPosition()) && ui.session.jobEditor.job()->takes.size() > 1)
        return nextTake();
    grip = gripAt (e.position);
    if (grip == Grip::place)
        ui.session.transport.seek (secondsAt (e.position.x));
}

void WaveformView::mouseDrag (const juce::MouseEvent& e)
{
    auto [from, to] = loopRange();
    const double at = secondsAt (e.position.x);
    if (grip == Grip::left)
        ui.session.transport.setLoop (juce::jmin (at, to - 0.1), to);
    else if (grip == Grip::right)
        ui.session.transport.setLoop (from, juce::jmax (at, from + 0.1));
    else if (grip == Grip::place)
    {
        // Dragging over the wave draws a new loop.
        const double start = secondsAt (e.mouseDownPosition.x);
        if (std::abs (e.getDistanceFromDragStartX()) < 8)
            return;
        ui.session.transport.setLoop (juce::jmin (start, at), juce::jmax (juce::jmin (start, at) + 0.1, juce::jmax (start, at)));
        ui.session.transport.setLooping (true);
    }
    else
        return;
    buildWave();
    repaint();
}

void WaveformView::mouseDoubleClick (const juce::MouseEvent& e)
{
    if (! playable() || ! wave.contains (e.getPosition()))
        return;
    ui.session.transport.setLoop (0.0, picture->seconds);
    ui.session.transport.setLooping (true);
    buildWave();
    repaint();
}
}
