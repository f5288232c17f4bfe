#include "editor/PickupCard.h"

#include "editor/Words.h"
#include "session/Session.h"

namespace coldiron
{
namespace
{
constexpr int titleHeight = 34, ladderHeight = 46, gap = 4;

int linesHeight (const juce::String& words, int width)
{
    juce::AttributedString text;
    text.append (words, type::text (12.5f));
    juce::TextLayout laid;
    laid.createLayout (text, static_cast<float> (width));
    return juce::roundToInt (std::ceil (laid.getHeight())) + 4;
}

void paintLines (juce::Graphics& g, const juce::String& words, juce::Rectangle<int> area, juce::Colour colour)
{
    juce::AttributedString text;
    text.append (words, type::text (12.5f), colour);
    text.setWordWrap (juce::AttributedString::byWord);
    text.draw (g, area.toFloat());
}
}

void paintLadder (juce::Graphics& g, juce::Rectangle<int> area, Provenance known, const Tokens& t)
{
    static const char* const names[] { "assumed", "from ohms", "measured" };
    const float y = static_cast<float> (area.getY()) + 10.0f,
                each = static_cast<float> (juce::jmin (area.getWidth(), 330)) / 3.0f;
    const auto xOf = [&] (int i) { return static_cast<float> (area.getX()) + each * (static_cast<float> (i) + 0.5f); };
    g.setColour (t.ink);
    g.fillRect (xOf (0), y - 0.8f, xOf (2) - xOf (0), 1.6f);
    for (int i = 0; i < 3; ++i)
    {
        const bool here = i == static_cast<int> (known), below = i < static_cast<int> (known);
        const float size = here ? 15.0f : 10.0f;
        const auto bead = juce::Rectangle<float> (size, size).withCentre ({ xOf (i), y });
        g.setColour (here || below ? t.ink : t.sheet);
        g.fillEllipse (bead);
        g.setColour (t.ink);
        g.drawEllipse (bead, 1.6f);
        g.setColour (here ? t.ink : t.mute);
        g.setFont (here ? type::bold (12.5f) : type::text (12.5f));
        type::draw (g, names[i], juce::Rectangle<float> (xOf (i) - each / 2.0f, y + 10.0f, each, 18.0f).toNearestInt(),
                    juce::Justification::centred, false);
    }
}

PickupCard::PickupCard (UiContext& d, std::string p)
    : ui (d), part (std::move (p)), choose (d, "Another"), open (d, "Open its file"), list (d)
{
    setTitle (words::title (part) + " pickup");
    setFocusContainerType (FocusContainerType::focusContainer);
    open.setTooltip ("Bench readings (CSV) or a fitted pickup");
    choose.onClick = [this] { onChoose(); };
    open.onClick = [this] { onOpenFile(); };
    list.onHeight = [this]
    {
        if (onHeight)
            onHeight();
    };
    addAndMakeVisible (choose);
    addAndMakeVisible (list);
    addAndMakeVisible (open);
    refresh();
}

void PickupCard::refresh()
{
    const auto job = ui.session.jobEditor.job();
    std::vector<GuitarValue> mine;
    for (const auto& value : valuesOf (*job))
        if (value.part == part && (value.kind == GuitarValue::Kind::pickupOhms || value.kind == GuitarValue::Kind::bridgeMm))
            mine.push_back (value);
    if (mine.empty())
        return; // the guitar has changed; the sheet makes other cards
    known = mine.front().known;
    std::string switches;
    if (const auto jack = jackValueOf (*job, part, switches))
    {
        mine.insert (mine.begin() + 1, *jack);
        where = "At the jack: " + words::from (switches) + ".";
    }
    else
        where = "No switch position leaves it alone at the jack: read its leads, disconnected.";
    const auto* found = job->guitar.harness.find (part);
    const auto name = words::from (found->as<PickupPart>()->pickup.name);
    choose.setWords (name.isEmpty() ? juce::String ("Another") : name);
    choose.setTitle ("Another pickup, now " + (name.isEmpty() ? juce::String ("without a name") : name));
    choose.shortens = true;
    choose.setTooltip (name + (name.isEmpty() ? juce::String() : juce::String (". ")) + "Another pickup, by construction");
    next = known == Provenance::assumed    ? "To be surer, type its ohms: turns and inductance are scaled from them."
           : known == Provenance::fromOhms ? "To be surer: three meter readings, or a sweep: coldiron fit. Open or drop the file."
                                           : "Measured: as sure as a bench makes it. Typed ohms would take its place.";
    list.show (mine);
    resized();
    repaint();
}

/** The readings stand first, so that the third pickup's are in sight too; the ladder and what leads up it stand under them. */
int PickupCard::idealHeight (int width)
{
    list.setSize (width - 24, juce::jmax (1, list.getHeight()));
    return titleHeight + list.idealHeight() + gap + linesHeight (where, width - 24) + gap + ladderHeight + footHeight (width - 24)
           + 16;
}

/** Words and button side by side; where that is too narrow, the button under the words. */
int PickupCard::footHeight (int width)
{
    const int beside = width - open.idealWidth() - 10;
    return isNarrow (width) ? linesHeight (next, width) + 32 : juce::jmax (30, linesHeight (next, beside));
}

bool PickupCard::isNarrow (int width) { return width < 320; }

void PickupCard::resized()
{
    auto area = getLocalBounds().reduced (12, 8);
    auto head = area.removeFromTop (titleHeight);
    const int title = juce::roundToInt (type::width (type::name (16.0f), getTitle())) + 10;
    choose.setBounds (
        head.withTrimmedLeft (title).removeFromRight (juce::jmin (choose.idealWidth(), head.getWidth() - title)).withHeight (30));
    list.setSize (area.getWidth(), juce::jmax (1, list.getHeight()));
    list.setBounds (area.removeFromTop (list.idealHeight()));
    area.removeFromTop (gap + linesHeight (where, area.getWidth()) + gap + ladderHeight);
    foot = area.removeFromTop (footHeight (area.getWidth()));
    open.setBounds (isNarrow (foot.getWidth()) ? foot.withTrimmedTop (foot.getHeight() - 30).withWidth (open.idealWidth())
                                               : foot.withTrimmedLeft (foot.getWidth() - open.idealWidth()).withHeight (30));
}

void PickupCard::paint (juce::Graphics& g)
{
    const auto& t = ui.colours();
    g.setColour (t.line);
    g.drawRoundedRectangle (getLocalBounds().toFloat().reduced (0.5f), 6.0f, 1.0f);
    const auto area = getLocalBounds().reduced (12, 8);
    g.setColour (t.ink);
    g.setFont (type::name (16.0f));
    type::draw (g, getTitle(), area.withHeight (30), juce::Justification::centredLeft, false);
    paintLines (g, where, area.withTop (list.getBottom() + gap).withHeight (linesHeight (where, area.getWidth())), t.mute);
    paintLadder (g, area.withTop (foot.getY() - ladderHeight).withHeight (ladderHeight), known, t);
    paintLines (g, next, isNarrow (foot.getWidth()) ? foot.withBottom (open.getY()) : foot.withRight (open.getX() - 10), t.mute);
}

std::unique_ptr<juce::AccessibilityHandler> PickupCard::createAccessibilityHandler()
{
    const auto words = [this]
    {
        return juce::String (known == Provenance::measured   ? "Measured. "
                             : known == Provenance::fromOhms ? "From ohms. "
                                                             : "Assumed. ")
               + where + " " + next;
    };
    return accessible (*this, juce::AccessibilityRole::group, { .description = words });
}
}
