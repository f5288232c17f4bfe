#include "editor/GuitarPanel.h"

#include "editor/JobWords.h"
#include "session/Session.h"
#include "wording/HumTriageWords.h"
#include "wording/PartWords.h"

#include <algorithm>

namespace coldiron
{
GuitarPanel::GuitarPanel (UiContext& d, DrawingCache& c)
    : Panel (d), cache (c), list (d), takeIn (d, "Take in"), wiringButton (d, "Wiring, large")
{
    wiringButton.onClick = [this]
    {
        if (onOpenWiring)
            onOpenWiring();
    };
    addAndMakeVisible (wiringButton);
    setTitle ("Guitar");
    takeIn.setTooltip ("Pickups, how it was recorded, hum (U)");
    takeIn.onClick = [this]
    {
        if (onTakeIn)
            onTakeIn();
    };
    addAndMakeVisible (takeIn);
    list.keepBarOutside(); // in the panel's padding
    addAndMakeVisible (list);
    readRows();
}

void GuitarPanel::readRows()
{
    const auto job = ui.session.jobEditor.job();
    auto values = valuesOf (*job);
    const auto loads = loadValuesOf (*job, GuitarValue::Side::recording);
    values.insert (values.end(), loads.begin(), loads.begin() + 2);
    std::vector<ValueList::Line> levers;
    for (const auto& part : job->guitar.harness.parts())
        if (const auto* lever = part.as<SwitchPart>())
            levers.push_back ({ words::from (wording::partTitle (part)),
                                juce::String (static_cast<int> (lever->type.positions.size())) + " positions" });
    list.show (values, levers);
    humFirst = words::from (wording::humInShort (job->hum));
}

void GuitarPanel::focusFirstValue()
{
    if (! list.all().empty())
        list.all().front()->grabKeyboardFocus();
}

void GuitarPanel::sessionChanged (const Revisions& before, const Revisions& now)
{
    if (before.job != now.job)
        readRows();
    joints = opens = fits = 0;
    const OptionId heard = ui.session.monitor.heard();
    if (heard != asRecorded)
    {
        const auto job = ui.session.jobEditor.job();
        const auto& from = harnessBefore (*job, heard);
        const auto& to = harnessOf (*job, heard);
        const auto changes = changesBetween (from, to);
        joints = changes.jointsToMake (to);
        opens = changes.jointsToOpen (from);
        fits = static_cast<int> (changes.fitted.size());
    }
    resized();
    repaint();
}

void GuitarPanel::resized()
{
    auto area = getLocalBounds().reduced (16, 12);
    auto head = area.removeFromTop (30);
    takeIn.setBounds (head.removeFromRight (takeIn.idealWidth()).withHeight (28));
    neckArea = area.removeFromTop (getHeight() < 560 ? 88 : 104);
    area.removeFromTop (8);
    ironArea = area.removeFromBottom (66);
    area.removeFromBottom (6);
    const int forWiring = (getHeight() < 560 ? 90 : 132) + 56;
    const int most = juce::jmax (2, (area.getHeight() - forWiring) / ValueRow::height);
    list.setSize (area.getWidth() + ValueList::barRoom, 1); // heights depend on it
    list.setBounds (area.removeFromTop (juce::jmin (list.idealHeight(), most * ValueRow::height))
                        .withWidth (area.getWidth() + ValueList::barRoom));
    area.removeFromTop (10);
    wiringArea = area;
    wiringButton.setBounds (wiringArea);
}

void GuitarPanel::paint (juce::Graphics& g)
{
    paintSheet (g);
    const auto& t = colours();
    auto head = getLocalBounds().reduced (16, 12).removeFromTop (28);
    g.setColour (t.mute);
    g.setFont (type::name (15.0f));
    type::draw (g, "Guitar", head, juce::Justification::centredLeft, false);
    paintNeck (g);

    auto wiring = wiringArea;
    auto title = wiring.removeFromTop (22);
    const OptionId heard = ui.session.monitor.heard();
    g.setColour (t.mute);
    g.setFont (type::name (15.0f));
    type::draw (g, "Wiring", title, juce::Justification::centredLeft, false);
    g.setColour (t.of (heard));
    g.setFont (heard == asRecorded ? type::bold (12.5f) : type::name (17.0f));
    type::draw (g, heard == asRecorded ? juce::String ("Now") : words::from (letterOf (heard)), title,
                juce::Justification::centredRight, false);
    auto foot = wiring.removeFromBottom (24);
    g.setColour (t.mute);
    g.setFont (type::text (12.5f));
    type::draw (g, heard == asRecorded ? "From the back" : "Thin stays, thick is new", foot, juce::Justification::centredLeft,
                false);
    paintKey (g, static_cast<float> (foot.getRight()) - 22.0f, static_cast<float> (foot.getCentreY()), "W", t);
    if (const auto drawing = cache.get (ui.session.jobEditor.job(), heard))
        paintDrawing (g, *drawing, wiring.reduced (0, 4).toFloat(), t, false);
    else
    {
        g.setColour (t.mute);
        type::draw (g, "drawing", wiring, juce::Justification::centred, false);
    }
    paintIron (g);
}

void GuitarPanel::paintNeck (juce::Graphics& g)
{
    const auto& t = colours();
    const auto job = ui.session.jobEditor.job();
    auto area = neckArea.toFloat();
    auto labels = area.removeFromBottom (20);
    const auto strings = static_cast<int> (job->guitar.strings.size());
    double farthest = 60.0;
    for (const auto& part : job->guitar.harness.parts())
        if (const auto* pickup = part.as<PickupPart>())
            farthest = juce::jmax (farthest, pickup->bridgeMm);
    const float bridgeX = area.getRight() - 6.0f, left = area.getX() + 34.0f;
    const auto xOf = [&] (double mm)
    { return bridgeX - 12.0f - static_cast<float> (mm / (farthest + 12.0)) * (bridgeX - 12.0f - left); };
    const auto inner = area.reduced (0.0f, 14.0f);
    for (int s = 0; s < strings; ++s)
    {
        const float y = strings > 1 ? inner.getY() + inner.getHeight() * static_cast<float> (s) / static_cast<float> (strings - 1)
                                    : inner.getCentreY();
        g.setColour (t.mute);
        g.fillRect (area.getX(), y - 0.5f, bridgeX - area.getX(),
                    2.2f - 1.4f * static_cast<float> (s) / static_cast<float> (juce::jmax (1, strings - 1)) * 1.0f);
    }
    g.setColour (t.ink);
    g.fillRoundedRectangle (bridgeX - 3.0f, area.getY() + 6.0f, 6.0f, area.getHeight() - 12.0f, 3.0f);
    float lastLabel = -100.0f;
    for (const auto& part : job->guitar.harness.parts())
    {
        const auto* pickup = part.as<PickupPart>();
        if (pickup == nullptr)
            continue;
        for (const auto& coil : pickup->pickup.coils)
        {
            const float x = pickup->pickup.coils.size() > 1 ? xOf (pickup->bridgeMm) + (coil.offsetMm > 0 ? -7.0f : 7.0f)
                                                            : xOf (pickup->bridgeMm);
            const juce::Rectangle<float> bar (x - 5.5f, area.getY() + 4.0f, 11.0f, area.getHeight() - 8.0f);
            g.setColour (t.sheet);
            g.fillRoundedRectangle (bar, 5.5f);
            g.setColour (t.ink);
            g.drawRoundedRectangle (bar, 5.5f, 1.6f);
        }
        const auto label = juce::String (juce::roundToInt (pickup->bridgeMm)) + " mm";
        const float x = xOf (pickup->bridgeMm);
        if (std::abs (x - lastLabel) < 46.0f)
            continue;
        lastLabel = x;
        g.setColour (t.mute);
        g.setFont (type::text (12.0f));
        type::draw (g, label,
                    juce::Rectangle<float> (60.0f, 18.0f)
                        .withCentre ({ juce::jmin (x, area.getRight() - 30.0f), labels.getCentreY() })
                        .toNearestInt(),
                    juce::Justification::centred, false);
    }
}

void GuitarPanel::paintIron (juce::Graphics& g)
{
    const auto& t = colours();
    auto area = ironArea;
    g.setColour (t.line);
    g.fillRect (area.removeFromTop (1));
    area.removeFromTop (9);
    if (joints + opens + fits == 0)
    {
        g.setColour (t.mute);
        g.setFont (type::text (12.5f));
        g.drawFittedText (ironInWords(), area, juce::Justification::topLeft, 3, 1.0f);
        return;
    }
    const float y = static_cast<float> (area.getY()) + 10.0f, x = static_cast<float> (area.getX());
    g.setColour (t.heat);
    g.fillRect (x + 4, y - 2.0f, 26.0f, 4.0f);
    g.fillEllipse (x, y - 5.5f, 11.0f, 11.0f);
    g.fillEllipse (x + 24, y - 5.5f, 11.0f, 11.0f);
    area.removeFromLeft (39);
    g.setFont (type::bold (13.0f));
    type::draw (g, juce::String (joints) + (joints == 1 ? " joint to make" : " joints to make"), area.removeFromTop (20),
                juce::Justification::centredLeft, false);
    g.setColour (t.ink);
    g.setFont (type::text (12.5f));
    const auto open = juce::String (opens) + " to open", fit = juce::String (fits);
    const auto whole = fits > 0 ? open + ", " + fit + (fits == 1 ? " part to fit" : " parts to fit") : open;
    type::draw (g,
                type::width (type::text (12.5f), whole) <= static_cast<float> (area.getWidth()) ? whole
                                                                                                : open + ", " + fit + " to fit",
                area.removeFromTop (20), juce::Justification::centredLeft, false);
}

/** What hum asks for first, or what there is to solder. */
juce::String GuitarPanel::ironInWords() const
{
    if (joints + opens + fits > 0)
        return juce::String (joints) + (joints == 1 ? " joint to make, " : " joints to make, ") + juce::String (opens)
               + " to open, " + juce::String (fits) + (fits == 1 ? " part to fit." : " parts to fit.");
    return humFirst.isNotEmpty()                      ? humFirst
           : ui.session.monitor.heard() == asRecorded ? juce::String ("As recorded: nothing to solder.")
                                                      : juce::String ("Nothing to solder for this one.");
}

juce::String GuitarPanel::inWords() const
{
    const auto job = ui.session.jobEditor.job();
    juce::StringArray pickups;
    for (const auto& part : job->guitar.harness.parts())
        if (const auto* pickup = part.as<PickupPart>())
            pickups.add (words::plain (part.name) + " pickup " + juce::String (juce::roundToInt (pickup->bridgeMm))
                         + " mm from the bridge");
    return words::from (job->guitar.name) + ", " + juce::String (static_cast<int> (job->guitar.strings.size())) + " strings, "
           + pickups.joinIntoString (", ") + ". " + ironInWords();
}
}
