// Which curve is whose: letters at the end, and what a band means.

#include "editor/Plot.h"
#include "editor/Words.h"
#include "session/Session.h"

#include <algorithm>

namespace coldiron
{
void Plot::paintLetters (juce::Graphics& g)
{
    const auto& t = colours();
    struct End
    {
        OptionId option;
        float y;
    };
    std::vector<End> ends;
    for (const auto& [id, one] : drawn)
        if (! one.silent)
            ends.push_back ({ id, juce::jlimit (static_cast<float> (area.getY()) + 4, static_cast<float> (area.getBottom()) - 4,
                                                id == asRecorded && ! whole() ? yOf (0.0) : one.yAtEnd) });
    std::sort (ends.begin(), ends.end(), [] (const End& a, const End& b) { return a.y < b.y; });
    const float apart = 20.0f;
    for (int round = 0; round < 40; ++round) // push neighbours apart, keep all within the plot
        for (size_t i = 0; i + 1 < ends.size(); ++i)
            if (const float need = apart - (ends[i + 1].y - ends[i].y); need > 0.0f)
            {
                ends[i].y -= need / 2;
                ends[i + 1].y += need / 2;
            }
    if (! ends.empty())
    {
        const float over = ends.back().y - static_cast<float> (area.getBottom()) + 4,
                    under = static_cast<float> (area.getY()) + 4 - ends.front().y;
        for (auto& end : ends)
            end.y += over > 0 ? -over : under > 0 ? under : 0.0f;
    }
    const OptionId heard = ui.session.monitor.heard();
    letterY.clear();
    for (const auto& end : ends)
    {
        letterY[end.option] = end.y;
        const juce::Rectangle<float> box (static_cast<float> (area.getRight()) + 5, end.y - 9,
                                          end.option == asRecorded ? 34.0f : 20.0f, 18.0f);
        const auto letter = end.option == asRecorded ? juce::String ("Now") : words::from (letterOf (end.option));
        if (end.option == heard)
        {
            g.setColour (t.of (end.option));
            g.fillRoundedRectangle (box, 3.0f);
            g.setColour (end.option == asRecorded ? t.sheet : t.onOption);
        }
        else
            g.setColour (t.of (end.option));
        g.setFont (end.option == asRecorded ? type::bold (12.0f) : type::name (17.0f));
        type::draw (g, letter, box.toNearestInt(), juce::Justification::centred, false);
    }
}

void Plot::paintNoise (juce::Graphics& g)
{
    const auto report = ui.session.reports.report (ui.session.monitor.heard());
    if (whole() || report == nullptr || ! report->figures.trust.trustedToHz || *report->figures.trust.trustedToHz >= 15000.0)
        return;
    const auto& t = colours();
    const float x = xOf (*report->figures.trust.trustedToHz);
    const float dash[] = { 3.0f, 3.0f };
    g.setColour (t.mute);
    g.drawDashedLine ({ x, static_cast<float> (area.getY()), x, static_cast<float> (area.getBottom()) }, dash, 2, 1.4f);
    const auto font = type::text (12.0f);
    const juce::String line1 = "from here the take's",
                       line2 = "noise comes up by " + words::db (report->figures.trust.liftDb, false, 0);
    const int width = juce::roundToInt (juce::jmax (type::width (font, line1), type::width (font, line2))) + 6;
    auto box = juce::Rectangle<int> (juce::roundToInt (x) + 4, area.getBottom() - 40, width, 34);
    if (box.getRight() > area.getRight())
        box.setX (juce::roundToInt (x) - 4 - width);
    g.setColour (t.sheet.withAlpha (0.9f));
    g.fillRect (box);
    g.setColour (t.ink);
    g.setFont (font);
    type::draw (g, line1, box.removeFromTop (17), juce::Justification::centredLeft, false);
    type::draw (g, line2, box, juce::Justification::centredLeft, false);
}

void Plot::paintKey (juce::Graphics& g)
{
    const auto& t = colours();
    juce::String shown, others, silent;
    OptionId first = asRecorded;
    const auto add = [] (juce::String& list, OptionId id)
    { list << (list.isEmpty() ? "" : ", ") << (id == asRecorded ? juce::String ("Now") : words::from (letterOf (id))); };
    for (const auto& [id, one] : drawn)
    {
        if (! one.band.isEmpty())
        {
            add (hasBandDrawn (id) ? shown : others, id);
            first = hasBandDrawn (id) && first == asRecorded ? id : first;
        }
        if (one.silent && ! one.failed)
            add (silent, id);
    }
    auto box = area.reduced (10, 8);
    g.setFont (type::text (12.0f));
    if (silent.isNotEmpty())
    {
        auto line = box.removeFromBottom (16);
        g.setColour (t.mute);
        type::draw (g, silent + (silent.containsChar (',') ? " are" : " is") + " silent at this setting.", line,
                    juce::Justification::centredLeft, true);
    }
    if ((shown.isEmpty() && others.isEmpty()) || hoverX >= 0.0f)
        return;
    const int only = ui.session.monitor.onlyString();
    const auto job = ui.session.jobEditor.job();
    const auto& sounding = job->guitar.strings;
    const auto spread = only >= 0 && only < static_cast<int> (sounding.size())
                            ? " on " + words::from (sounding[static_cast<size_t> (only)].name) + " alone,"
                            : juce::String (" from string to string,");
    const auto line1 = shown.isEmpty() ? others
                                             + (others.containsChar (',') ? " are estimates: other coils than the take's."
                                                                          : " is an estimate: other coils than the take's.")
                                       : "Shaded: where " + shown + " may lie" + spread;
    const auto line2 =
        shown.isEmpty()
            ? juce::String ("Hear one, or point at its letter, for its range.")
            : "for it uses other coils."
                  + (others.isEmpty() ? juce::String()
                                      : " " + others + (others.containsChar (',') ? " are" : " is") + " shown without.");
    const auto font = type::text (12.0f);
    const int wide = juce::roundToInt (juce::jmax (type::width (font, line1), type::width (font, line2)));
    auto place = box.removeFromBottom (34).withWidth (wide + 40);
    g.setColour (t.sheet);
    g.fillRect (place.expanded (4, 2));
    if (! shown.isEmpty())
    {
        auto swatch = place.removeFromLeft (24).withSizeKeepingCentre (22, 20).toFloat();
        g.setColour (t.of (first).withAlpha (0.16f));
        g.fillRect (swatch);
        juce::Path line;
        line.startNewSubPath (swatch.getX(), swatch.getCentreY());
        line.lineTo (swatch.getRight(), swatch.getCentreY());
        g.setColour (t.of (first));
        strokeDashed (g, line, first, 2.2f);
        place.removeFromLeft (8);
    }
    g.setColour (t.mute);
    type::draw (g, line1, place.removeFromTop (17), juce::Justification::centredLeft, false);
    type::draw (g, line2, place, juce::Justification::centredLeft, false);
}

/** Each curve by its value at a few frequencies; the one heard first. */
juce::String Plot::curvesInWords() const
{
    const OptionId heard = ui.session.monitor.heard();
    juce::String text =
        whole() ? "Response of the whole guitar, in dB"
                : juce::String ("Change to the take, in dB") + (ui.session.monitor.levelMatched() ? ", levels matched" : "");
    const auto add = [&] (OptionId id)
    {
        const auto report = ui.session.reports.report (id);
        if (report == nullptr || report->curve.hz.empty() || (id == asRecorded && ! whole()))
            return;
        text << ". " << (id == asRecorded ? juce::String ("Now") : words::from (letterOf (id)))
             << (id == heard ? ", heard: " : ": ");
        if (report->silent)
        {
            text << "silent";
            return;
        }
        const auto& db = whole() ? report->curve.circuitDb : report->curve.changeDb;
        juce::StringArray values;
        for (double hz : { 100.0, 400.0, 1000.0, 2500.0, 5000.0, 10000.0 })
            values.add (words::db (valueAt (report->curve.hz, db, hz) + shift (*report)) + " at " + words::hertz (hz));
        text << values.joinIntoString (", ");
        if (whole() && report->complete && report->figures.resonance.peakHz)
            text << ", resonance at " << words::hertz (*report->figures.resonance.peakHz);
        if (! whole() && report->figures.confidence.isEstimated())
            text << ", an estimate";
    };
    add (heard);
    for (OptionId id : versions())
        if (id != heard)
            add (id);
    return text + ".";
}
}
