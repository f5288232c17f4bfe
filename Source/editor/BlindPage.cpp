#include "editor/BlindPage.h"

#include "editor/Words.h"
#include "listening/Ranking.h"
#include "listening/Trials.h"
#include "session/Session.h"
#include "wording/ListeningWords.h"

namespace coldiron
{
namespace
{
OptionId optionOfVersion (const std::string& version) { return version == "recorded" ? asRecorded : optionOf (version); }
}

BlindPage::BlindPage (UiContext& d) : Panel (d), one (d, "X is 1", true), two (d, "X is 2", true), done (d, "Close", true)
{
    setTitle ("Blind test");
    for (auto* button : { &one, &two, &done })
        addChildComponent (button);
    one.onClick = [this] { ui.session.blindTest.answer (1); };
    two.onClick = [this] { ui.session.blindTest.answer (2); };
    done.onClick = [this]
    {
        if (onClose)
            onClose();
    };
}

void BlindPage::showOutcome (const BlindOutcome& o)
{
    outcome = o;
    resized();
    repaint();
}

void BlindPage::sessionChanged (const Revisions&, const Revisions&)
{
    view = ui.session.blindTest.view();
    resized();
    repaint();
}

void BlindPage::resized()
{
    const bool asks = view.isRunning && view.kind == BlindView::Kind::abx && view.answered < view.trials;
    one.setVisible (asks);
    two.setVisible (asks);
    one.setEnabled (view.canAnswer);
    two.setEnabled (view.canAnswer);
    done.setVisible (outcome.has_value());
    auto row = getLocalBounds().withSizeKeepingCentre (300, 44).translated (0, juce::jmin (70, getHeight() / 2 - 40));
    one.setBounds (row.removeFromLeft (142));
    two.setBounds (row.removeFromRight (142));
    done.setBounds (getLocalBounds().withSizeKeepingCentre (120, 40).withBottomY (getHeight() - 16));
}

void BlindPage::paint (juce::Graphics& g)
{
    paintSheet (g);
    if (outcome)
        paintOutcome (g);
    else if (view.isRunning)
        paintRunning (g);
}

BlindPage::Question BlindPage::question() const
{
    Question asked;
    if (view.kind != BlindView::Kind::abx)
    {
        asked.title = "Listen, then say which you like best.";
        asked.first = "Level matched, order shuffled. Letters, curves and settings stay hidden until you turn the tags over.";
        asked.second = "Keys 1 to " + juce::String (view.versions)
                       + " hear a tag. Up and down rank it, = ties with the one above. Enter turns them over.";
    }
    else if (view.answered < view.trials)
    {
        asked.title =
            "Trial " + juce::String (view.answered + 1) + " of " + juce::String (view.trials) + ": is X the same as 1, or as 2?";
        asked.first = words::from (view.about)
                      + ", level matched; which of them is 1 and which 2 stays hidden. What was right is told at the end.";
        asked.second = "Keys 1, 2 and X hear. Left says X is 1, Right says X is 2.";
    }
    else
    {
        asked.title = "All trials are answered.";
        asked.first = "Enter turns the tags over.";
    }
    return asked;
}

juce::String BlindPage::guessing() const
{
    const auto& result = outcome->result;
    return juce::String (result.right) + " of " + juce::String (result.trials) + " right by chance alone has the probability "
           + juce::String (guessingProbability (result.right, result.trials), 4)
           + ". Rarer than 1 time in 20: most would call the difference heard. Otherwise it may be there and "
             "too small to tell in so many trials.";
}

juce::String BlindPage::inWords() const
{
    if (! outcome)
    {
        const auto asked = question();
        return view.isRunning ? asked.title + " " + asked.first + " " + asked.second : juce::String();
    }
    const auto& result = outcome->result;
    if (result.kind == BlindResult::Kind::abx)
        return words::from (wording::blindResult (result)) + " " + guessing();
    juce::String text = "Best first: ";
    int above = 0;
    for (const auto& place : result.ranking)
    {
        for (const auto& version : place)
        {
            const auto name = result.names.find (version);
            text << words::from (wording::place (above)) << " "
                 << (optionOfVersion (version) == asRecorded ? juce::String ("Now") : words::from (version))
                 << (name != result.names.end() ? ", " + words::from (name->second) : juce::String()) << "; ";
        }
        above += static_cast<int> (place.size());
    }
    return text.dropLastCharacters (2) + ".";
}

void BlindPage::paintRunning (juce::Graphics& g)
{
    const auto& t = colours();
    const auto [title, first, second] = question();
    auto area =
        getLocalBounds().reduced (24, 8).withSizeKeepingCentre (getWidth() - 48, view.kind == BlindView::Kind::abx ? 190 : 120);
    g.setColour (t.ink);
    g.setFont (type::bold (getWidth() < 700 ? 20.0f : 25.0f)); // it has numbers
    type::draw (g, title, area.removeFromTop (44), juce::Justification::centred, true);
    g.setColour (t.mute);
    g.setFont (type::text (14.0f));
    g.drawFittedText (first, area.removeFromTop (38), juce::Justification::centred, 2, 1.0f);
    g.setFont (type::text (13.0f));
    g.drawFittedText (second, area.removeFromTop (36), juce::Justification::centred, 2, 1.0f);
}

void BlindPage::paintOutcome (juce::Graphics& g)
{
    const auto& t = colours();
    const auto& result = outcome->result;
    auto area = getLocalBounds().reduced (24, 16).withTrimmedBottom (56);
    g.setColour (t.ink);
    g.setFont (type::name (22.0f));
    type::draw (g, result.kind == BlindResult::Kind::ranking ? "What you like, best first" : "What the ear tells apart",
                area.removeFromTop (34), juce::Justification::centredLeft, true);
    if (result.kind == BlindResult::Kind::abx)
    {
        g.setFont (type::bold (16.0f));
        g.drawFittedText (words::from (wording::blindResult (result)), area.removeFromTop (44), juce::Justification::centredLeft,
                          2, 1.0f);
        g.setColour (t.mute);
        g.setFont (type::text (13.0f));
        g.drawFittedText (guessing(), area.removeFromTop (60), juce::Justification::topLeft, 3, 1.0f);
        return;
    }
    int above = 0;
    int rows = 0;
    for (const auto& place : result.ranking)
        rows += static_cast<int> (place.size());
    const int pitch = juce::jlimit (20, 34, area.getHeight() / juce::jmax (1, rows));
    for (const auto& place : result.ranking)
    {
        for (const auto& version : place)
        {
            const OptionId id = optionOfVersion (version);
            auto row = area.removeFromTop (pitch);
            g.setColour (t.mute);
            g.setFont (type::text (13.0f));
            type::draw (g, words::from (wording::place (above)), row.removeFromLeft (72), juce::Justification::centredLeft, true);
            g.setColour (t.of (id));
            g.setFont (type::name (id == asRecorded ? 17.0f : 24.0f));
            type::draw (g, id == asRecorded ? juce::String ("Now") : words::from (version), row.removeFromLeft (50),
                        juce::Justification::centredLeft, false);
            int number = 0;
            for (size_t i = 0; i < outcome->behind.size(); ++i)
                if (outcome->behind[i] == id)
                    number = static_cast<int> (i) + 1;
            const auto was = "was number " + juce::String (number);
            const auto name = result.names.find (version);
            g.setColour (t.mute);
            g.setFont (type::text (13.0f));
            type::draw (g, was, row.removeFromRight (120), juce::Justification::centredRight, true);
            g.setColour (t.ink);
            g.setFont (type::bold (14.0f));
            type::draw (g,
                        name != result.names.end() ? words::from (name->second)
                        : id == asRecorded         ? juce::String ("As recorded")
                                                   : juce::String(),
                        row, juce::Justification::centredLeft, true);
        }
        above += static_cast<int> (place.size());
    }
}
}
