#include "editor/BlindSetup.h"

#include "editor/Words.h"
#include "session/Session.h"
#include "wording/ListeningWords.h"

#include <algorithm>

namespace coldiron
{
namespace
{
constexpr int numbersOfTrials[] = { 10, 16, 20, 25 };
juce::String shown (OptionId id) { return id == asRecorded ? juce::String ("Now") : words::from (letterOf (id)); }
}

BlindSetup::BlindSetup (UiContext& d)
    : Overlay (d), rank (d, "Rank them", true), tell (d, "Start the trials", true),
      trials (d, { "10", "16", "20", "25" }, "Number of trials")
{
    setTitle ("Blind test");
    trials.setTooltip ("Fixed before the first: stopping when it looks good makes guessing look good.");
    rank.onClick = [this] { start (true); };
    tell.onClick = [this] { start (false); };

    auto ids = ui.session.options.ids();
    ids.insert (ids.begin(), asRecorded);
    for (OptionId id : ids)
    {
        const auto report = ui.session.reports.report (id);
        const bool silent = report != nullptr && report->silent;
        toRank.push_back ({ id, ! silent });
        const OptionId heard = ui.session.monitor.heard() == asRecorded && ids.size() > 1 ? ids[1] : ui.session.monitor.heard();
        toTell.push_back ({ id, id == asRecorded || id == heard });
    }
    makeButtons (toRank, "is ranked");
    makeButtons (toTell, "is one of the two");
    std::vector<juce::Component*> stops; // column by column
    for (auto& chip : toRank)
        stops.push_back (chip.button.get());
    stops.push_back (&rank);
    for (auto& chip : toTell)
        stops.push_back (chip.button.get());
    stops.insert (stops.end(), { &trials, &tell });
    addInOrder (*this, stops);
}

void BlindSetup::makeButtons (std::vector<Chip>& chips, const juce::String& what)
{
    for (size_t i = 0; i < chips.size(); ++i)
    {
        auto button = std::make_unique<BareButton> (ui, shown (chips[i].option) + " " + what);
        button->setTriggeredOnMouseDown (true);
        button->onClick = [this, &chips, i] { flip (chips, i); };
        button->setOn (chips[i].on);
        chips[i].button = std::move (button);
    }
}

void BlindSetup::sessionChanged (const Revisions&, const Revisions&)
{
    refusal.clear();
    repaint();
}

std::vector<OptionId> BlindSetup::chosen (const std::vector<Chip>& chips) const
{
    std::vector<OptionId> ids;
    for (const auto& chip : chips)
        if (chip.on)
            ids.push_back (chip.option);
    return ids;
}

void BlindSetup::start (bool ranking)
{
    const auto ids = chosen (ranking ? toRank : toTell);
    const auto why =
        ! ranking && ids.size() != 2 ? std::string ("Choose the two to tell apart.") : ui.session.blindTest.whyNot (ids);
    const bool started = why.empty()
                         && (ranking ? ui.session.blindTest.startRanking (ids)
                                     : ui.session.blindTest.startAbx (ids[0], ids[1], numbersOfTrials[trials.chosen()]));
    if (started)
    {
        if (onStarted)
            onStarted();
        return;
    }
    refusal = words::from (why);
    announce (refusal, true);
    repaint();
}

void BlindSetup::placeChips (std::vector<Chip>& chips, juce::Rectangle<int> row)
{
    const int each = juce::jmin (44, (row.getWidth() + 6) / juce::jmax (1, static_cast<int> (chips.size())) - 6);
    for (auto& chip : chips)
    {
        const auto area = row.removeFromLeft (chip.option == asRecorded ? juce::jmax (each, 40) : each).withHeight (32);
        chip.button->setBounds (area);
        row.removeFromLeft (6);
    }
}

void BlindSetup::resized()
{
    Overlay::resized();
    auto area = getLocalBounds().reduced (20, 16).withTrimmedTop (36);
    auto top = area.removeFromTop (200);
    left = top.removeFromLeft (top.getWidth() / 2 - 14);
    top.removeFromLeft (28);
    right = top;
    area.removeFromTop (10);
    before = area;
    placeChips (toRank, left.withTrimmedTop (84).withHeight (32));
    placeChips (toTell, right.withTrimmedTop (84).withHeight (32));
    rank.setBounds (left.withTrimmedTop (160).withSize (rank.idealWidth(), 38));
    trials.setBounds (right.getX() + 62, right.getY() + 124, trials.idealWidth(), 30);
    tell.setBounds (right.withTrimmedTop (160).withSize (tell.idealWidth(), 38));
}

void BlindSetup::flip (std::vector<Chip>& chips, size_t index)
{
    // Two at a time: a third takes the place of the one chosen last but one.
    if (&chips == &toTell && ! chips[index].on && chosen (toTell).size() >= 2)
        for (auto& other : toTell)
            if (other.on)
            {
                other.on = false;
                break;
            }
    chips[index].on = ! chips[index].on;
    for (auto& chip : chips)
        chip.button->setOn (chip.on);
    refusal.clear();
    repaint();
}

void BlindSetup::paintChips (juce::Graphics& g, const std::vector<Chip>& chips)
{
    const auto& t = colours();
    for (const auto& chip : chips)
    {
        const auto box = chip.button->getBounds().toFloat().reduced (0.5f);
        g.setColour (chip.on ? t.ink : t.sheet);
        g.fillRoundedRectangle (box, 5.0f);
        g.setColour (chip.on ? t.ink : t.line);
        g.drawRoundedRectangle (box, 5.0f, 1.0f);
        g.setColour (chip.on ? t.sheet : t.mute);
        g.setFont (chip.option == asRecorded ? type::bold (12.0f) : type::name (18.0f));
        type::draw (g, shown (chip.option), chip.button->getBounds(), juce::Justification::centred, false);
    }
}

void BlindSetup::paint (juce::Graphics& g)
{
    Overlay::paint (g);
    paintTitle (g, "Blind test");
    const auto& t = colours();
    const auto head = [&] (juce::Rectangle<int> place, const juce::String& title, const juce::String& text)
    {
        g.setColour (t.ink);
        g.setFont (type::bold (15.0f));
        type::draw (g, title, place.removeFromTop (24), juce::Justification::centredLeft, true);
        g.setColour (t.mute);
        g.setFont (type::text (13.0f));
        g.drawFittedText (text, place.removeFromTop (50), juce::Justification::topLeft, 3, 1.0f);
    };
    head (left, "Which do you like best?", "Tags face down, shuffled, equally loud. Listen, rank them, turn them over.");
    head (right, "Is there a difference at all?",
          "X is one of two, anew each time. Say which; at the end, how often guessing does that well.");
    paintChips (g, toRank);
    paintChips (g, toTell);
    g.setColour (t.mute);
    g.setFont (type::text (13.0f));
    type::draw (g, "Trials", right.getX(), right.getY() + 124, 58, 30, juce::Justification::centredLeft, false);
    paintBefore (g);
}

void BlindSetup::paintBefore (juce::Graphics& g)
{
    const auto& t = colours();
    auto area = before;
    if (refusal.isNotEmpty())
    {
        g.setColour (t.ink);
        g.setFont (type::bold (13.0f));
        g.drawFittedText (refusal, area.removeFromTop (34), juce::Justification::centredLeft, 2, 1.0f);
    }
    g.setColour (t.line);
    g.fillRect (area.removeFromTop (1));
    area.removeFromTop (8);
    const auto job = ui.session.jobEditor.job();
    g.setColour (t.mute);
    g.setFont (type::name (15.0f));
    type::draw (g, job->blind.empty() ? "Nothing found yet" : "Found before", area.removeFromTop (24),
                juce::Justification::centredLeft, true);
    for (auto found = job->blind.rbegin(); found != job->blind.rend() && area.getHeight() >= 20; ++found)
    {
        auto row = area.removeFromTop (22);
        g.setColour (t.mute);
        g.setFont (type::text (12.5f));
        type::draw (g, words::from (found->date), row.removeFromLeft (92), juce::Justification::centredLeft, true);
        g.setColour (t.ink);
        g.setFont (type::text (13.0f));
        type::draw (g, words::from (wording::blindResult (*found)), row, juce::Justification::centredLeft, true);
    }
}

juce::String BlindSetup::inWords() const
{
    auto text = refusal.isEmpty() ? juce::String() : refusal + " ";
    const auto job = ui.session.jobEditor.job();
    text << (job->blind.empty() ? "Nothing found yet." : "Found before:");
    for (auto found = job->blind.rbegin(); found != job->blind.rend(); ++found)
        text << " " << words::from (found->date) << ", " << words::from (wording::blindResult (*found));
    return text;
}
}
