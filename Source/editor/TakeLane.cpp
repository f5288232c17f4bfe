#include "editor/TakeLane.h"

#include "editor/Words.h"

#include <cmath>
#include <utility>

namespace coldiron
{
TakeLane::TakeLane (Desk& d) : Panel (d), open (d, "Open a take"), chips (d)
{
    setTitle ("Take");
    addChildComponent (chips);
    addChildComponent (open);
    addChildComponent (nameField);
    open.onClick = [this] { picture != nullptr && desk.findTakeFile ? desk.findTakeFile (desk.bench.take()) : desk.openTakeFile(); };
    chips.onRename = [this] (int take) { renameTake (take); };
    chips.onRelink = [this] (int take)
    {
        if (desk.findTakeFile)
            desk.findTakeFile (take);
    };
    nameField.setTitle ("Name of the take");
    nameField.onReturnKey = [this] { endNaming (true); };
    nameField.onEscapeKey = [this] { endNaming (false); };
    nameField.onFocusLost = [this] { endNaming (true); };
}

void TakeLane::benchChanged (const Revisions& before, const Revisions& now)
{
    chips.benchChanged (before, now);
    if (before.transport != now.transport || before.job != now.job)
    {
        const auto shown = std::exchange (picture, desk.bench.takePicture());
        if (shown != nullptr && picture != nullptr && picture != shown && ! picture->remarks.empty())
            desk.tell (words::from (picture->name + ": " + picture->remarks.front().words + ". " + picture->remarks.front().cost));
        chips.setVisible (! chips.takes().empty());
        open.setVisible (! playable());
        open.setWords (picture == nullptr ? "Open a take" : "Find file");
        resized();
    }
    repaint();
}

void TakeLane::resized()
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
    open.setBounds (getLocalBounds().removeFromRight (open.idealWidth() + 20).withSizeKeepingCentre (open.idealWidth(), 36));
    placeTicks();
    buildWave();
}

std::pair<double, double> TakeLane::loopRange() const
{
    const auto range = desk.bench.loop();
    return range.second > range.first || ! playable() ? range : std::make_pair (0.0, picture->seconds);
}

float TakeLane::xOf (double seconds) const
{
    return playable() ? static_cast<float> (wave.getX() + wave.getWidth() * seconds / picture->seconds) : static_cast<float> (wave.getX());
}

double TakeLane::secondsAt (float x) const
{
    return playable() ? juce::jlimit (0.0, picture->seconds, (static_cast<double> (x) - wave.getX()) / wave.getWidth() * picture->seconds) : 0.0;
}

void TakeLane::buildWave()
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
        const size_t last = juce::jmax (first + 1, picture->low.size() * static_cast<size_t> (bar + 1) / static_cast<size_t> (bars));
        float low = 0.0f, high = 0.0f;
        for (size_t i = first; i < last && i < picture->low.size(); ++i)
        {
            low = juce::jmin (low, picture->low[i]);
            high = juce::jmax (high, picture->high[i]);
        }
        const float x = static_cast<float> (wave.getX() + bar * pitch + 1);
        const double at = secondsAt (x);
        const bool inside = desk.bench.isLooping() && at >= from && at <= to;
        (inside || ! desk.bench.isLooping() ? loud : quiet)
            .addRoundedRectangle (x, middle - juce::jmax (1.0f, high * scale), 2.0f, juce::jmax (2.0f, (high - low) * scale), 1.0f);
    }
}

void TakeLane::placeTicks()
{
    ticks.clear();
    const auto job = desk.bench.job();
    const int take = desk.bench.take();
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

void TakeLane::flipString (size_t index)
{
    std::vector<std::string> played;
    for (size_t i = 0; i < ticks.size(); ++i)
        if (ticks[i].on != (i == index))
            played.push_back (ticks[i].name);
    if (played.empty())
        return desk.tell ("A take plays at least one string.");
    if (played.size() == ticks.size())
        played.clear();
    desk.bench.setStringsPlayed (desk.bench.take(), played);
}

void TakeLane::paintWave (juce::Graphics& g)
{
    const auto& t = colours();
    const auto [from, to] = loopRange();
    const bool looping = desk.bench.isLooping();
    if (looping)
    {
        const auto region = juce::Rectangle<float> (xOf (from), static_cast<float> (wave.getY()), xOf (to) - xOf (from), static_cast<float> (wave.getHeight()));
        g.setColour (t.well);
        g.fillRect (region);
        g.setColour (t.ink);
        for (const auto& [x, way] : { std::pair<float, float> { region.getX(), 8.0f }, std::pair<float, float> { region.getRight(), -8.0f } })
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
    g.setColour (t.of (desk.bench.heard()));
    g.fillPath (loud);
}

void TakeLane::paintHead (juce::Graphics& g)
{
    const auto& t = colours();
    const auto blind = desk.bench.blind();
    const Tag heard = desk.bench.heard();
    const float x = juce::jlimit (static_cast<float> (wave.getX()), static_cast<float> (wave.getRight()), xOf (desk.bench.positionSeconds()));
    g.setColour (t.ink);
    g.fillRect (x - 1.0f, static_cast<float> (wave.getY()), 2.0f, static_cast<float> (wave.getHeight()));
    if (heard == asRecorded && ! blind.isRunning)
        return;
    const juce::Rectangle<float> flag (x - 9.0f, static_cast<float> (wave.getY()) - 2.0f, 18.0f, 16.0f);
    g.setColour (t.of (heard));
    g.fillRoundedRectangle (flag, 3.0f);
    g.setColour (blind.isRunning ? t.sheet : t.onOption);
    g.setFont (type::bold (12.0f));
    type::draw (g, ! blind.isRunning ? words::from (letterOf (heard)) : blind.isX (blind.heard) ? juce::String ("X") : juce::String (blind.heard), flag.toNearestInt(), juce::Justification::centred, false);
}

void TakeLane::tick()
{
    if (! playable())
        return;
    const int x = juce::roundToInt (xOf (desk.bench.positionSeconds()));
    if (x == lastX)
        return;
    repaint (lastX - 12, wave.getY() - 6, 24, wave.getHeight() + 8);
    repaint (x - 12, wave.getY() - 6, 24, wave.getHeight() + 8);
    lastX = x;
}

void TakeLane::togglePlay()
{
    if (! playable())
        return;
    if (desk.bench.isPlaying())
        desk.bench.stop();
    else
        desk.bench.play();
    repaint();
}

void TakeLane::toggleLoop()
{
    desk.bench.setLooping (! desk.bench.isLooping());
    buildWave();
    repaint();
}

void TakeLane::nextTake()
{
    const auto count = static_cast<int> (desk.bench.job()->takes.size());
    if (count < 2)
        return;
    // Every take in turn for all options, then again each option from the take nearest to it.
    const int next = desk.bench.takesFollow() ? 0 : desk.bench.take() + 1;
    if (next < count)
        desk.bench.selectTake (next);
    else
        desk.bench.followTakes();
    desk.tell (next < count ? "Take " + juce::String (next + 1) + " for all options." : juce::String ("Each option is derived from the take nearest to it."));
}

void TakeLane::setLoopEndHere (bool second)
{
    if (! playable())
        return;
    auto [from, to] = loopRange();
    const double here = desk.bench.positionSeconds();
    (second ? to : from) = here;
    if (to - from < 0.05)
        return desk.tell ("The loop's end comes after its start.");
    desk.bench.setLoop (from, to);
    desk.bench.setLooping (true);
    buildWave();
    repaint();
}

TakeLane::Grip TakeLane::gripAt (juce::Point<float> at) const
{
    if (! playable() || ! wave.toFloat().expanded (8, 0).contains (at))
        return Grip::none;
    const auto [from, to] = loopRange();
    if (desk.bench.isLooping() && std::abs (at.x - xOf (from)) < 8.0f)
        return Grip::left;
    if (desk.bench.isLooping() && std::abs (at.x - xOf (to)) < 8.0f)
        return Grip::right;
    return Grip::place;
}

void TakeLane::mouseMove (const juce::MouseEvent& e)
{
    const auto at = gripAt (e.position);
    setMouseCursor (at == Grip::left || at == Grip::right ? juce::MouseCursor::LeftRightResizeCursor : juce::MouseCursor::NormalCursor);
    bool onTick = false;
    for (const auto& tick : ticks)
        onTick = onTick || tick.area.contains (e.getPosition());
    juce::String remarks;
    if (playable() && heading.contains (e.getPosition()))
        for (const auto& remark : picture->remarks)
            remarks << (remarks.isEmpty() ? "" : "\n") << words::from (remark.words) << ". " << words::from (remark.cost);
    setTooltip (! onTick && remarks.isNotEmpty() ? remarks : onTick ? juce::String ("Tick the strings this phrase plays: fewer strings change what another pickup hears, and ticking them is what helps an estimate most.") : juce::String());
}

void TakeLane::mouseDown (const juce::MouseEvent& e)
{
    if (! playable())
        return;
    if (button.expanded (4).contains (e.getPosition()))
        return togglePlay();
    for (size_t i = 0; i < ticks.size(); ++i)
        if (ticks[i].area.contains (e.getPosition()))
            return flipString (i);
    if (heading.contains (e.getPosition()) && desk.bench.job()->takes.size() > 1)
        return nextTake();
    grip = gripAt (e.position);
    if (grip == Grip::place)
        desk.bench.seek (secondsAt (e.position.x));
}

void TakeLane::mouseDrag (const juce::MouseEvent& e)
{
    auto [from, to] = loopRange();
    const double at = secondsAt (e.position.x);
    if (grip == Grip::left)
        desk.bench.setLoop (juce::jmin (at, to - 0.1), to);
    else if (grip == Grip::right)
        desk.bench.setLoop (from, juce::jmax (at, from + 0.1));
    else if (grip == Grip::place)
    {
        // Dragging over the wave draws a new loop.
        const double start = secondsAt (e.mouseDownPosition.x);
        if (std::abs (e.getDistanceFromDragStartX()) < 8)
            return;
        desk.bench.setLoop (juce::jmin (start, at), juce::jmax (juce::jmin (start, at) + 0.1, juce::jmax (start, at)));
        desk.bench.setLooping (true);
    }
    else
        return;
    buildWave();
    repaint();
}

void TakeLane::mouseDoubleClick (const juce::MouseEvent& e)
{
    if (! playable() || ! wave.contains (e.getPosition()))
        return;
    desk.bench.setLoop (0.0, picture->seconds);
    desk.bench.setLooping (true);
    buildWave();
    repaint();
}
}
