#include "editor/Plot.h"

#include "editor/Words.h"
#include "session/Session.h"

#include <algorithm>
#include <cmath>

namespace coldiron
{
namespace
{
constexpr double leastHz = 60.0, mostHz = 16000.0;

/** The sweep is there and turning the knob is not seen: no more than 0.3 dB anywhere. */
bool isStill (const std::vector<SweepCurve>& sweep)
{
    double most = 0.0;
    for (const auto& curve : sweep)
        for (size_t i = 0; i < curve.circuitDb.size() && i < sweep.front().circuitDb.size(); ++i)
            most = juce::jmax (most, std::abs (curve.circuitDb[i] - sweep.front().circuitDb[i]));
    return ! sweep.empty() && most <= 0.3;
}
}

double Plot::valueAt (const std::vector<double>& hz, const std::vector<double>& db, double wanted)
{
    if (hz.empty() || db.size() != hz.size())
        return -300.0; // a band that is not computed yet
    const auto above = std::lower_bound (hz.begin(), hz.end(), wanted);
    if (above == hz.begin())
        return db.front();
    if (above == hz.end())
        return db.back();
    const auto i = static_cast<size_t> (above - hz.begin());
    const double share = std::log (wanted / hz[i - 1]) / std::log (hz[i] / hz[i - 1]);
    return db[i - 1] + (db[i] - db[i - 1]) * share;
}

Plot::Plot (UiContext& d)
    : Panel (d), kind (d, { "Change to the take", "Whole circuit" }, "What is drawn"),
      curves ("Curves", juce::AccessibilityRole::image, [this] { return curvesInWords(); }), strings (d)
{
    addAndMakeVisible (curves);
    setTitle ("Look");
    addAndMakeVisible (kind);
    addChildComponent (strings);
    kind.setTooltip ("What each option does to the take, or the response of the whole guitar into its cable and input.");
    kind.onChoice = [this] (int)
    {
        build();
        repaint();
    };
}

std::vector<OptionId> Plot::versions() const
{
    auto ids = ui.session.options.ids();
    ids.insert (ids.begin(), asRecorded);
    return ids;
}

void Plot::resized()
{
    kind.setBounds (12, 10, kind.idealWidth(), 30);
    const int room = getWidth() - kind.getRight() - 24, wanted = strings.idealWidth (room);
    strings.setBounds (getWidth() - wanted - 12, 10, wanted, 30);
    strings.resized(); // one chip or all, at the same size
    area = getLocalBounds().withTrimmedTop (48).withTrimmedBottom (34).withTrimmedLeft (50).withTrimmedRight (42);
    curves.setBounds (area);
    build();
}

void Plot::sessionChanged (const Revisions& before, const Revisions& now)
{
    strings.sessionChanged (before, now);
    if (before.job != now.job)
        resized();
    build();
    repaint();
}

void Plot::showSweep (const juce::String& knob)
{
    sweepKnob = knob;
    repaint();
}

float Plot::xOf (double hz) const
{
    return static_cast<float> (area.getX() + area.getWidth() * std::log (hz / leastHz) / std::log (mostHz / leastHz));
}

double Plot::hzAt (float x) const
{
    return leastHz * std::pow (mostHz / leastHz, (static_cast<double> (x) - area.getX()) / area.getWidth());
}

float Plot::yOf (double db) const
{
    return static_cast<float> (area.getY() + area.getHeight() * (topDb() - db) / (topDb() - bottomDb()));
}

double Plot::shift (const Report& report) const
{
    return ! whole() && ui.session.monitor.levelMatched() && report.option != asRecorded ? report.matchDb : 0.0;
}

juce::Path Plot::pathOf (const std::vector<double>& hz, const std::vector<double>& db, double shiftDb) const
{
    juce::Path path;
    bool started = false;
    float lastX = -10.0f;
    for (size_t i = 0; i < hz.size() && i < db.size(); ++i)
    {
        if (hz[i] < leastHz * 0.94 || hz[i] > mostHz * 1.05)
            continue;
        const float x = xOf (hz[i]);
        if (x - lastX < 1.0f)
            continue;
        lastX = x;
        const float y = yOf (juce::jmax (db[i] + shiftDb, static_cast<double> (bottomDb()) - 60.0));
        if (started)
            path.lineTo (x, y);
        else
            path.startNewSubPath (x, y);
        started = true;
    }
    return path;
}

void Plot::build()
{
    drawn.clear();
    if (area.isEmpty())
        return;
    double most = 12.0;
    for (OptionId id : versions())
        if (const auto report = ui.session.reports.report (id); report != nullptr && ! report->silent)
            for (size_t i = 0; i < report->curve.hz.size(); ++i)
                if (report->curve.hz[i] >= leastHz && report->curve.hz[i] <= mostHz)
                    most = juce::jmax (most, report->curve.changeDb[i] + (whole() ? 0.0 : shift (*report)));
    highest = static_cast<float> (juce::jlimit (12.0, 24.0, std::ceil (most / 6.0) * 6.0));
    for (OptionId id : versions())
    {
        const auto report = ui.session.reports.report (id);
        if (report == nullptr || report->curve.hz.empty())
            continue;
        Drawn one;
        one.silent = report->silent;
        one.failed = ! report->fault.empty();
        const auto& db = whole() ? report->curve.circuitDb : report->curve.changeDb;
        one.curve = pathOf (report->curve.hz, db, shift (*report));
        one.yAtEnd = yOf (valueAt (report->curve.hz, db, mostHz) + shift (*report));
        const auto& low = report->curve.lowDb;
        const auto& high = report->curve.highDb;
        if (! whole() && report->figures.confidence.isEstimated() && low.size() == report->curve.hz.size()
            && high.size() == low.size())
        {
            auto upper = pathOf (report->curve.hz, high, shift (*report));
            std::vector<juce::Point<float>> back;
            for (size_t i = 0; i < low.size(); ++i)
                if (report->curve.hz[i] >= leastHz && report->curve.hz[i] <= mostHz)
                    back.push_back ({ xOf (report->curve.hz[i]), yOf (low[i] + shift (*report)) });
            std::reverse (back.begin(), back.end());
            for (const auto& p : back)
                upper.lineTo (p);
            upper.closeSubPath();
            one.band = upper;
        }
        drawn[id] = std::move (one);
    }
}

void Plot::paint (juce::Graphics& g)
{
    paintSheet (g);
    const auto& t = colours();
    g.setColour (t.mute);
    g.setFont (type::text (12.5f));
    auto top = getLocalBounds().reduced (16, 10).withHeight (30).withTrimmedLeft (kind.getWidth() + 8);
    if (strings.isVisible())
        top.setRight (strings.getX() - 8);
    const auto sweep = ui.session.reports.sweep();
    const bool still = isStill (sweep); // its curves would lie on one another, their numbers scattered along them
    const juce::String about = sweepKnob.isNotEmpty()
                                   ? (still ? sweepKnob + " changes nothing here" : "turning " + sweepKnob + ", 10 to 0")
                               : whole()                           ? juce::String ("volts at the input, dB")
                               : ui.session.monitor.levelMatched() ? juce::String ("levels matched")
                                                                   : juce::String();
    const int aboutWidth = juce::roundToInt (type::width (type::text (12.5f), about)) + 4;
    if (aboutWidth <= top.getWidth())
        type::draw (g, about, top, juce::Justification::centredRight, true);
    paintAxes (g);
    if (aboutWidth > top.getWidth()) // the strings stand there: within the plot then
    {
        const juce::Rectangle<int> place (area.getX() + 8, area.getY() + 4, aboutWidth + 8, 20);
        g.setColour (t.sheet);
        g.fillRect (place);
        g.setColour (t.mute);
        g.setFont (type::text (12.5f));
        type::draw (g, about, place, juce::Justification::centred, true);
    }
    {
        const juce::Graphics::ScopedSaveState save (g);
        g.reduceClipRegion (area.expanded (0, 1));
        paintCurves (g);
        if (sweepKnob.isNotEmpty() && ! still)
            paintSweep (g, sweep);
    }
    paintKey (g);
    paintNoise (g);
    paintLetters (g);
    if (hoverX >= 0.0f)
        paintHover (g);
}

void Plot::paintAxes (juce::Graphics& g)
{
    const auto& t = colours();
    g.setFont (type::text (12.0f));
    const int step = whole() ? 12 : 6;
    for (int db = static_cast<int> (bottomDb()); db <= static_cast<int> (topDb()); db += step)
    {
        const float y = yOf (db);
        const bool zero = db == 0;
        g.setColour (zero && ! whole() ? t.ink : t.line);
        g.fillRect (static_cast<float> (area.getX()), y - (zero && ! whole() ? 1.1f : 0.5f), static_cast<float> (area.getWidth()),
                    zero && ! whole() ? 2.2f : 1.0f);
        g.setColour (t.mute);
        const auto words = db == 0 ? juce::String ("0") : words::db (db, true, 0).upToFirstOccurrenceOf (" ", false, false);
        type::draw (g, words, area.getX() - 46, juce::roundToInt (y) - 8, 38, 16, juce::Justification::centredRight, false);
    }
    for (double hz : { 100.0, 200.0, 500.0, 1000.0, 2000.0, 5000.0, 10000.0 })
    {
        const float x = xOf (hz);
        g.setColour (t.line);
        g.fillRect (x - 0.5f, static_cast<float> (area.getY()), 1.0f, static_cast<float> (area.getHeight()));
        g.setColour (t.mute);
        auto words = hz < 1000.0 ? juce::String (juce::roundToInt (hz)) : juce::String (juce::roundToInt (hz / 1000.0)) + " k";
        if (hz == 10000.0)
            words << "Hz";
        type::draw (g, words, juce::roundToInt (x) - 30, area.getBottom() + 8, 60, 16, juce::Justification::centred, false);
    }
}

void Plot::paintCurves (juce::Graphics& g)
{
    const auto& t = colours();
    const OptionId heard = ui.session.monitor.heard();
    for (const auto& [id, one] : drawn) // several bands muddle each other
        if (! one.band.isEmpty() && hasBandDrawn (id))
        {
            g.setColour (t.of (id).withAlpha (0.16f));
            g.fillPath (one.band);
        }
    for (const auto& [id, one] : drawn)
    {
        if (id == heard || one.silent || (id == asRecorded && ! whole()))
            continue;
        g.setColour (t.of (id));
        strokeDashed (g, one.curve, id, 2.2f);
    }
    const auto found = drawn.find (heard);
    if (found == drawn.end() || found->second.silent || (heard == asRecorded && ! whole()))
        return;
    g.setColour (t.sheet);
    g.strokePath (found->second.curve, juce::PathStrokeType (7.0f, juce::PathStrokeType::curved));
    g.setColour (t.of (heard));
    strokeDashed (g, found->second.curve, heard, 3.4f);
    if (const auto report = ui.session.reports.report (heard);
        whole() && report != nullptr && report->complete && report->figures.resonance.peakHz.has_value())
    {
        const float x = xOf (*report->figures.resonance.peakHz),
                    y = yOf (valueAt (report->curve.hz, report->curve.circuitDb, *report->figures.resonance.peakHz));
        g.setColour (t.sheet);
        g.fillEllipse (juce::Rectangle<float> (11, 11).withCentre ({ x, y }));
        g.setColour (t.of (heard));
        g.drawEllipse (juce::Rectangle<float> (9, 9).withCentre ({ x, y }), 2.2f);
        g.setColour (t.ink);
        g.setFont (type::bold (12.0f));
        type::draw (g, words::hertz (*report->figures.resonance.peakHz), juce::roundToInt (x) - 40,
                    juce::jmax (area.getY(), juce::roundToInt (y) - 24), 80, 16, juce::Justification::centred, false);
    }
}

void Plot::paintSweep (juce::Graphics& g, const std::vector<SweepCurve>& sweep)
{
    const auto& t = colours();
    const OptionId heard = ui.session.monitor.heard();
    const auto report = ui.session.reports.report (heard);
    std::vector<float> labels;
    for (const auto& curve : sweep)
    {
        const auto& db = whole() ? curve.circuitDb : curve.changeDb;
        const double add = report != nullptr ? shift (*report) : 0.0;
        g.setColour (t.of (heard).withAlpha (0.8f));
        g.strokePath (pathOf (curve.hz, db, add), juce::PathStrokeType (1.2f));
        // The number stands on its curve, apart from the others.
        for (double hz : { 1500.0, 3000.0, 700.0, 6000.0, 350.0 })
        {
            const float x = xOf (hz), y = yOf (valueAt (curve.hz, db, hz) + add);
            const bool clash =
                std::any_of (labels.begin(), labels.end(), [y] (float other) { return std::abs (other - y) < 14.0f; });
            if (clash || y < static_cast<float> (area.getY()) + 8 || y > static_cast<float> (area.getBottom()) - 8)
                continue;
            labels.push_back (y);
            g.setColour (t.sheet);
            g.fillRect (x - 8, y - 8, 16.0f, 16.0f);
            g.setColour (t.ink);
            g.setFont (type::text (12.0f));
            type::draw (g, words::knob (curve.knob), juce::roundToInt (x) - 12, juce::roundToInt (y) - 8, 24, 16,
                        juce::Justification::centred, false);
            break;
        }
    }
}

void Plot::paintHover (juce::Graphics& g)
{
    const auto& t = colours();
    const double hz = hzAt (hoverX);
    g.setColour (t.mute);
    g.fillRect (hoverX - 0.5f, static_cast<float> (area.getY()), 1.0f, static_cast<float> (area.getHeight()));
    struct Row
    {
        OptionId id;
        juce::String value;
    };
    std::vector<Row> rows;
    for (const auto& [id, one] : drawn)
    {
        const auto report = ui.session.reports.report (id);
        if (report == nullptr || (id == asRecorded && ! whole()))
            continue;
        const auto& c = report->curve;
        auto value = one.silent ? juce::String (report->fault.empty() ? "silent" : "not computed")
                                : words::db (valueAt (c.hz, whole() ? c.circuitDb : c.changeDb, hz) + shift (*report));
        if (! one.band.isEmpty() && c.lowDb.size() == c.hz.size()) // what is drawn may be of the report before
            value << "  " << words::db (valueAt (c.hz, c.lowDb, hz) + shift (*report)).upToFirstOccurrenceOf (" ", false, false)
                  << " to "
                  << words::db (valueAt (c.hz, c.highDb, hz) + shift (*report)).upToFirstOccurrenceOf (" ", false, false);
        rows.push_back ({ id, value });
    }
    float width = 90.0f;
    for (const auto& row : rows)
        width = juce::jmax (width, type::width (type::text (12.0f), row.value) + 56.0f);
    juce::Rectangle<float> box (0, static_cast<float> (area.getBottom()) - 30 - 17.0f * static_cast<float> (rows.size()), width,
                                24.0f + 17.0f * static_cast<float> (rows.size()));
    box.setX (hoverX + 12 + width > static_cast<float> (area.getRight()) ? hoverX - 12 - width : hoverX + 12);
    g.setColour (t.sheet.withAlpha (0.95f));
    g.fillRoundedRectangle (box, 4.0f);
    g.setColour (t.line);
    g.drawRoundedRectangle (box, 4.0f, 1.0f);
    auto inner = box.reduced (10, 4).toNearestInt();
    g.setColour (t.ink);
    g.setFont (type::bold (12.0f));
    type::draw (g, words::hertz (hz), inner.removeFromTop (17), juce::Justification::centredLeft, false);
    for (const auto& row : rows)
    {
        auto line = inner.removeFromTop (17);
        g.setColour (t.of (row.id));
        g.setFont (row.id == asRecorded ? type::bold (12.0f) : type::name (15.0f));
        type::draw (g, row.id == asRecorded ? juce::String ("Now") : words::from (letterOf (row.id)), line.removeFromLeft (30),
                    juce::Justification::centredLeft, false);
        g.setColour (t.ink);
        g.setFont (type::text (12.0f));
        type::draw (g, row.value, line, juce::Justification::centredLeft, false);
    }
}

void Plot::mouseMove (const juce::MouseEvent& e)
{
    hoverX = area.contains (e.getPosition()) ? e.position.x : -1.0f;
    pointed.reset();
    if (e.x > area.getRight())
        for (const auto& [id, y] : letterY)
            if (std::abs (e.position.y - y) < 10.0f)
                pointed = id;
    repaint();
}

bool Plot::hasBandDrawn (OptionId id) const { return id == ui.session.monitor.heard() || id == pointed; }

void Plot::mouseExit (const juce::MouseEvent&)
{
    hoverX = -1.0f;
    pointed.reset();
    repaint();
}
}
