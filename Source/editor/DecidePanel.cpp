#include "editor/DecidePanel.h"

#include "editor/JobWords.h"
#include "session/Session.h"

namespace coldiron
{
DecidePanel::DecidePanel (UiContext& d) : Panel (d), agree (d, "Agree", true), notes (d, "Notes")
{
    setTitle ("Decide");
    inside.setInterceptsMouseClicks (false, true);
    scroll.setViewedComponent (&inside, false);
    scroll.setScrollBarsShown (true, false);
    scroll.setScrollBarThickness (10);
    scroll.setWantsKeyboardFocus (false);
    addAndMakeVisible (scroll);
    addChildComponent (agree);
    addAndMakeVisible (notes);
    scroll.onMove = [this] { repaint (hintArea); };
    notes.onClick = [this]
    {
        if (ui.openNotes)
            ui.openNotes();
    };
    agree.onClick = [this]
    {
        const auto letter = letterOf (shown);
        const bool already = agreedLetter() == words::from (letter);
        auto& session = ui.session;
        if (! already && ! session.agreement.heardAtTrueLevel (shown))
        {
            session.agreement.hearAtTrueLevel (shown);
            return ui.tell (session.transport.isPlaying()
                                ? "Level is true now: what the rewire does to loudness is heard. A second of it, then agree."
                                : "Level is true now. Play, or open a take: a second of it, then agree.");
        }
        if (already ? session.agreement.takeBack() : session.agreement.agree (shown))
            ui.tell (already ? juce::String ("The agreement is taken back.")
                             : "Agreed on " + words::from (letter) + ". Nothing is soldered until you say so.");
    };
}

juce::String DecidePanel::agreedLetter() const { return jobwords::agreed (ui.session.jobEditor); }

void DecidePanel::setShowsSteps (bool shows)
{
    showsSteps = shows;
    resized();
}

void DecidePanel::touched (const std::string& knob, bool on)
{
    ui.session.reports.wantSweep (shown, on ? knob : std::string());
    if (onSweep)
        onSweep (on ? words::plain (knob) : juce::String());
}

void DecidePanel::rebuild()
{
    shown = ui.session.monitor.heard();
    knobs.clear();
    levers.clear();
    for (const auto& control : ui.session.controls.of (shown))
    {
        if (control.isKnob())
        {
            knobs.push_back (std::make_unique<Knob> (ui, shown, control.name));
            auto* knob = knobs.back().get();
            knob->onTouch = [this, name = control.name] (bool on) { touched (name, on); };
            inside.addAndMakeVisible (knob);
        }
        else
        {
            levers.push_back (std::make_unique<LeverRail> (ui, shown, control));
            inside.addAndMakeVisible (levers.back().get());
        }
    }
    const bool isOption = shown != asRecorded;
    const bool movable = isOption || ui.session.takes.playing() >= 0; // of a take: where the controls stood
    for (auto& knob : knobs)
        knob->setEnabled (movable);
    for (auto& lever : levers)
        lever->setEnabled (movable);

    steps.clear();
    const auto job = ui.session.jobEditor.job();
    if (isOption)
    {
        const auto changes = changesBetween (harnessBefore (*job, shown), harnessOf (*job, shown));
        for (const auto& step : changes.made)
            steps.add (jobwords::made (harnessOf (*job, shown), step));
    }
    resized();
}

void DecidePanel::sessionChanged (const Revisions& before, const Revisions& now)
{
    if (before.job != now.job || shown != ui.session.monitor.heard())
    {
        try
        {
            ohmReadings = ohmTable (harnessOf (*ui.session.jobEditor.job(), ui.session.monitor.heard()));
        }
        catch (const std::exception&)
        {
            ohmReadings.clear(); // nothing a meter could read
        }
        const auto controls = ui.session.controls.of (ui.session.monitor.heard());
        if (shown != ui.session.monitor.heard() || ! standFor (controls, knobs, levers))
            rebuild();
    }
    for (auto& knob : knobs)
        knob->refresh();
    for (auto& lever : levers)
        lever->refresh();
    agree.setVisible (shown != asRecorded);
    const auto letter = words::from (letterOf (shown));
    agree.setWords (agreedLetter() == letter                        ? "Agreed on " + letter
                    : ui.session.agreement.heardAtTrueLevel (shown) ? "Agree on " + letter
                                                                    : "Hear " + letter + " at true level first");
    repaint();
}

/** Knobs in rows, switches under them. Compact, up to six knobs stand side by side. */
void DecidePanel::placeControls (int width, bool compact)
{
    const int count = static_cast<int> (knobs.size()), pitchY = (compact ? Knob::compactHeight : Knob::height) + 1;
    int y = 0;
    if (count > 0)
    {
        int each = compact ? 48 : 68;
        for (const auto& knob : knobs)
            each = compact ? each : juce::jmax (each, knob->idealWidth());
        const int columns = juce::jlimit (1, count, width / juce::jmin (each, 110));
        const int pitch = width / columns;
        for (int i = 0; i < count; ++i)
            knobs[static_cast<size_t> (i)]->setBounds (i % columns * pitch, y + i / columns * pitchY, pitch, pitchY - 1);
        y += (count + columns - 1) / columns * pitchY + 2;
    }
    int x = 6, rowHeight = 0;
    for (auto& lever : levers)
    {
        const int wanted = juce::jmin (width - 6, lever->idealWidth());
        if (x > 6 && x + wanted > width)
        {
            x = 6;
            y += rowHeight + 2;
            rowHeight = 0;
        }
        lever->setBounds (x, y, wanted, lever->idealHeight (compact));
        rowHeight = juce::jmax (lever->idealHeight (compact), rowHeight);
        x += wanted + 14;
    }
    contentHeight = y + (levers.empty() ? 0 : rowHeight + 2);
}

/** Full size with the figures, else compact with them, else compact without, else scrolled with a word on what is below. */
void DecidePanel::resized()
{
    auto area = getLocalBounds().reduced (10, 10);
    area.removeFromTop (30);
    auto foot = area.removeFromBottom (44).reduced (4, 0);
    notes.setBounds (foot.removeFromRight (notes.idealWidth()).withSizeKeepingCentre (notes.idealWidth(), 38));
    foot.removeFromRight (6);
    agree.setBounds (foot);
    area.removeFromBottom (4);
    const int width = area.getWidth();
    constexpr int figures = 52, hintHeight = 18;
    figuresArea = stepsArea = hintArea = {};
    placeControls (width, false);
    if (contentHeight + figures > area.getHeight())
        placeControls (width, true);
    if (showsSteps && area.getHeight() > contentHeight + figures + 6 + 120)
    {
        auto rest = area.withTrimmedTop (contentHeight + 6);
        figuresArea = rest.removeFromTop (figures).reduced (6, 0);
        rest.removeFromTop (8);
        stepsArea = rest.reduced (6, 0);
        area = area.withHeight (contentHeight + 6);
    }
    else if (contentHeight + figures <= area.getHeight())
        figuresArea = area.removeFromBottom (figures).reduced (6, 0);
    const bool scrolls = contentHeight > area.getHeight();
    if (scrolls)
    {
        hintArea = area.removeFromBottom (hintHeight).reduced (6, 0);
        placeControls (width - 12, true);
        int whole = 0; // no control is cut through while nothing is scrolled
        for (const auto* child : inside.getChildren())
            if (child->getBottom() <= area.getHeight())
                whole = juce::jmax (whole, child->getBottom());
        area = area.withHeight (whole > 0 ? whole : area.getHeight());
    }
    scroll.setBounds (area);
    inside.setSize (scrolls ? width - 12 : width, juce::jmax (contentHeight, area.getHeight()));
}

juce::String DecidePanel::hint() const
{
    const auto seen = scroll.getViewArea();
    int below = 0;
    for (const auto* child : inside.getChildren())
        below += child->getBottom() > seen.getBottom() + 4 ? 1 : 0;
    return below == 0   ? juce::String()
           : below == 1 ? juce::String ("1 more control below, scroll")
                        : juce::String (below) + " more controls below, scroll";
}

void DecidePanel::paint (juce::Graphics& g)
{
    paintSheet (g);
    const auto& t = colours();
    auto head = getLocalBounds().reduced (16, 12).removeFromTop (28);
    if (shown == asRecorded)
    {
        g.setColour (t.ink);
        g.setFont (type::bold (14.0f));
        type::draw (g, heading(), head, juce::Justification::centredLeft, true);
    }
    else
    {
        const auto box = head.removeFromLeft (24).withSizeKeepingCentre (24, 24);
        g.setColour (t.of (shown));
        g.fillRoundedRectangle (box.toFloat(), 3.0f);
        g.setColour (t.onOption);
        g.setFont (type::name (19.0f));
        type::draw (g, words::from (letterOf (shown)), box, juce::Justification::centred, false);
        head.removeFromLeft (10);
        g.setColour (t.ink);
        g.setFont (type::bold (14.0f));
        type::draw (g, heading(), head, juce::Justification::centredLeft, true);
    }
    if (! figuresArea.isEmpty())
        paintFigures (g);
    if (! stepsArea.isEmpty() && ! steps.isEmpty())
        paintSteps (g);
    if (! hintArea.isEmpty())
    {
        g.setColour (t.mute);
        g.setFont (type::text (12.0f));
        type::draw (g, hint(), hintArea, juce::Justification::centred, false);
    }
    if (shown == asRecorded)
    {
        g.setColour (t.mute);
        g.setFont (type::text (13.0f));
        g.drawFittedText (ui.session.takes.playing() >= 0 ? "Set these as they stood in the take."
                                                          : "Nothing is soldered until you say so.",
                          agree.getBounds(), juce::Justification::centredLeft, 2, 1.0f);
    }
}

juce::String DecidePanel::ohmsNow() const
{
    const auto setting = ui.session.controls.setting (shown);
    for (const auto& reading : ohmReadings)
    {
        const bool here = std::all_of (reading.levers.begin(), reading.levers.end(),
                                       [&] (const auto& lever)
                                       {
                                           const auto found = setting.levers.find (lever.first);
                                           return found != setting.levers.end() && found->second == lever.second;
                                       });
        if (here)
            return reading.kind == OhmReading::Kind::open      ? juce::String ("open")
                   : reading.kind == OhmReading::Kind::shorted ? juce::String ("short")
                                                               : words::ohms (reading.ohms);
    }
    return "-";
}

DecidePanel::Figures DecidePanel::figures() const
{
    const auto report = ui.session.reports.report (shown);
    const bool known = report != nullptr && report->complete;
    juce::String clarity = "Clarity", clarityValue = "-";
    if (known && ! report->silent)
    {
        if (report->figures.clarityDb)
            clarityValue = words::db (*report->figures.clarityDb);
        const auto heard = std::find_if (report->figures.volumes.begin(), report->figures.volumes.end(),
                                         [] (const VolumeFigures& volume) { return volume.heard; });
        if (heard != report->figures.volumes.end())
            for (const auto& step : heard->steps)
                if (std::abs (step.knob - 4.0) < 0.1 && step.clarityDb)
                {
                    clarity = "Clarity, "
                              + words::from (heard->knob).replace ("-volume", "").replace ("-", " ").replace ("volume", "vol")
                              + " 4"; // which knob, since there may be several
                    clarityValue = words::db (*step.clarityDb);
                }
    }
    const juce::String level =
        known ? words::db (report->figures.loudnessLu.value_or (report->figures.levelDb)) : juce::String ("-");
    const juce::String hum = known ? words::humInWords (*report) : juce::String ("-");
    return { { { "At the jack", ohmsNow() }, { "Level", level }, { clarity, clarityValue }, { "Hum", hum } } };
}

void DecidePanel::paintFigures (juce::Graphics& g)
{
    const auto& t = colours();
    auto area = figuresArea;
    g.setColour (t.line);
    g.fillRect (area.removeFromTop (1));
    area.removeFromTop (6);
    const auto cells = figures();
    const int left = area.getWidth() * 58 / 100;
    for (size_t i = 0; i < cells.size(); ++i)
    {
        const juce::Rectangle<int> cell (area.getX() + (i % 2 == 0 ? 0 : left), area.getY() + static_cast<int> (i / 2) * 22,
                                         i % 2 == 0 ? left - 14 : area.getWidth() - left, 20);
        g.setColour (t.mute);
        g.setFont (type::text (12.5f));
        const int value = juce::roundToInt (std::ceil (type::bold (12.5f).getStringWidthFloat (cells[i].second))) + 4;
        type::draw (g, cells[i].first, cell.withTrimmedRight (value), juce::Justification::centredLeft, true);
        g.setColour (t.ink);
        g.setFont (type::bold (12.5f));
        type::draw (g, cells[i].second, cell, juce::Justification::centredRight, false);
    }
}

void DecidePanel::paintSteps (juce::Graphics& g)
{
    const auto& t = colours();
    auto area = stepsArea;
    g.setColour (t.line);
    g.fillRect (area.removeFromTop (1));
    area.removeFromTop (8);
    g.setColour (t.mute);
    g.setFont (type::name (15.0f));
    type::draw (g, "Bench steps", area.removeFromTop (24), juce::Justification::centredLeft, false);
    const int room = area.getHeight() / 26;
    const int shownSteps = steps.size() <= room ? steps.size() : room - 1;
    for (int i = 0; i < shownSteps; ++i)
    {
        auto row = area.removeFromTop (26);
        const auto box = row.removeFromLeft (26).withSizeKeepingCentre (26, 20).toFloat();
        g.setColour (t.heat);
        g.drawRoundedRectangle (box.reduced (1.0f), 4.0f, 2.0f);
        g.setColour (t.ink);
        g.setFont (type::bold (12.0f));
        type::draw (g, juce::String (i + 1), box.toNearestInt(), juce::Justification::centred, false);
        row.removeFromLeft (8);
        g.setFont (type::text (13.0f));
        type::draw (g, steps[i], row, juce::Justification::centredLeft, true);
    }
    if (shownSteps < steps.size())
    {
        g.setColour (t.mute);
        g.setFont (type::text (12.5f));
        type::draw (g, "and " + juce::String (steps.size() - shownSteps) + " more, numbered in the drawing",
                    area.removeFromTop (26).withTrimmedLeft (34), juce::Justification::centredLeft, true);
    }
}

void DecidePanel::focusFirstKnob()
{
    if (! knobs.empty() && knobs.front()->isEnabled())
        knobs.front()->grabKeyboardFocus();
    else if (! levers.empty() && levers.front()->isEnabled())
        levers.front()->grabKeyboardFocus();
}

juce::String DecidePanel::heading() const
{
    if (shown == asRecorded)
        return ui.session.takes.playing() >= 0 ? "As recorded: where the controls stood" : "As it is: no take yet";
    const auto job = ui.session.jobEditor.job();
    const auto* option = job->find (letterOf (shown));
    return option == nullptr ? juce::String() : words::from (option->name);
}

juce::String DecidePanel::inWords() const
{
    juce::StringArray all { shown == asRecorded ? heading() : words::from (letterOf (shown)) + ", " + heading() };
    for (const auto& [name, value] : figures())
        all.add (name + " " + value);
    for (int i = 0; i < steps.size(); ++i)
        all.add ("Step " + juce::String (i + 1) + ": " + steps[i]);
    return all.joinIntoString (". ");
}
}
