#include "editor/RecoverSheet.h"

#include "editor/Words.h"

namespace coldiron
{
RecoverSheet::RecoverSheet (UiContext& d, std::vector<Recovery> works)
    : Overlay (d), left (std::move (works)), openIt (d, "Open it", true), discard (d, "Throw it away"),
      later (d, "Keep for later")
{
    setTitle ("Unsaved work");
    close.setVisible (false);
    for (auto* button : { &openIt, &later, &discard })
        addAndMakeVisible (button);
    openIt.onClick = [this]
    {
        const auto work = left[shown];
        if (onOpen)
            onOpen (work);
        if (onClose)
            onClose();
    };
    later.onClick = [this] { next(); };
    discard.onClick = [this]
    {
        forget (left[shown]);
        next();
    };
}

void RecoverSheet::next()
{
    if (++shown < left.size())
        return repaint();
    shown = left.size() - 1;
    if (onClose)
        onClose();
}

juce::String RecoverSheet::titleWords() const
{
    const auto& title = left[shown].work.title;
    return title.empty() ? juce::String ("A job without a title") : words::from (title);
}

juce::String RecoverSheet::whenWords() const
{
    const auto& one = left[shown];
    const auto when = juce::Time (
        std::chrono::duration_cast<std::chrono::milliseconds> (std::chrono::file_clock::to_sys (one.when).time_since_epoch())
            .count());
    return "kept " + when.formatted ("%e %B %Y, %H:%M").trim()
           + (one.work.file.empty() ? juce::String (", never saved to a file")
                                    : ", of " + words::from (one.work.file.filename().string()));
}

juce::String RecoverSheet::countWords() const
{
    return left.size() > 1 ? juce::String (static_cast<int> (shown) + 1) + " of " + juce::String (static_cast<int> (left.size()))
                                 + ". Opening it leaves its own file as it was until you save."
                           : juce::String ("Opening it leaves its own file as it was until you save.");
}

void RecoverSheet::paint (juce::Graphics& g)
{
    Overlay::paint (g);
    paintTitle (g, "Unsaved work was left");
    const auto& t = colours();
    auto area = getLocalBounds().reduced (20, 0).withTrimmedTop (58);
    g.setColour (t.ink);
    g.setFont (type::bold (15.0f));
    type::draw (g, titleWords(), area.removeFromTop (24), juce::Justification::centredLeft, true);
    g.setColour (t.mute);
    g.setFont (type::text (13.0f));
    type::draw (g, whenWords(), area.removeFromTop (22), juce::Justification::centredLeft, true);
    type::draw (g, countWords(), area.removeFromTop (22), juce::Justification::centredLeft, true);
}

void RecoverSheet::resized()
{
    auto row = getLocalBounds().reduced (20, 16).removeFromBottom (44);
    openIt.setBounds (row.removeFromRight (130));
    row.removeFromRight (8);
    later.setBounds (row.removeFromRight (later.idealWidth()).withSizeKeepingCentre (later.idealWidth(), 36));
    row.removeFromRight (8);
    discard.setBounds (row.removeFromRight (discard.idealWidth()).withSizeKeepingCentre (discard.idealWidth(), 36));
}
}
