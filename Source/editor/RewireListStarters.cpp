// The starter sets in the list of rewires: a wish, the options it gives on this guitar, and what it leaves out and why.

#include "editor/JobWords.h"
#include "editor/RewireList.h"
#include "session/Session.h"
#include "session/StarterEdit.h"
#include "wording/OfferWords.h"

namespace coldiron
{
namespace
{
juce::String optionsInWords (int count)
{
    static const juce::StringArray few { "no option", "one option", "two options", "three options" };
    return count < few.size() ? few[count] : juce::String (count) + " options";
}
}

juce::String filledWords (const std::string& sentence, const RewireInfo& info,
                          const std::map<std::string, std::string>& arguments)
{
    auto text = words::from (sentence);
    for (const auto& ask : info.asks)
    {
        const auto found = arguments.find (ask.name);
        const auto value = words::plain (found != arguments.end() ? found->second : ask.standard);
        text = text.replace ("{" + words::from (ask.name) + "}", ask.kind == "pickup" ? "the " + value + " pickup" : value);
    }
    return text;
}

bool RewireList::startersFirst() const
{
    const auto job = ui.session.jobEditor.job();
    return std::all_of (job->options.begin(), job->options.end(), [] (const Option& option) { return option.rewires.empty(); });
}

void RewireList::addStarterLines (const juce::StringArray& wanted)
{
    bool headed = false;
    for (size_t i = 0; i < starters.size(); ++i)
    {
        const auto haystack =
            ("starter set " + words::from (starters[i].name + " " + starters[i].wish + " " + starters[i].says)).toLowerCase();
        if (std::any_of (wanted.begin(), wanted.end(),
                         [&] (const juce::String& word) { return word.isNotEmpty() && ! haystack.contains (word); }))
            continue;
        if (! std::exchange (headed, true))
            lines.push_back ({ true, "Starter sets: three options for a wish", -1, -1 });
        lines.push_back ({ false, words::from (starters[i].name), -1, static_cast<int> (i) });
    }
}

void RewireList::showStarter (const std::string& preset)
{
    for (size_t row = 0; row < lines.size(); ++row)
        if (lines[row].starter >= 0 && starters[static_cast<size_t> (lines[row].starter)].preset == preset)
            list.selectRow (static_cast<int> (row));
}

void RewireList::chooseStarter (int index)
{
    if (index == chosenStarter)
        return;
    choose (-1);
    chosenStarter = index;
    const auto job = ui.session.jobEditor.job();
    const int take = ui.session.takes.playing();
    const auto from =
        take >= 0 && take < static_cast<int> (job->takes.size()) ? job->takes[static_cast<size_t> (take)].setting : Setting();
    offered =
        offerStarter (starters[static_cast<size_t> (index)], job->guitar, from, job->listening, ui.session.jobEditor.presets());
    const auto edit = withStarter (ui.session.jobEditor.text(), offered);
    const auto count = static_cast<int> (edit.letters.size());
    add.setWords (count == 0 ? juce::String ("Nothing to add") : "Add " + optionsInWords (count));
    add.setEnabled (count > 0);
    resized();
    repaint();
}

void RewireList::applyStarter()
{
    auto& session = ui.session;
    const auto edit = withStarter (session.jobEditor.text(), offered);
    if (edit.letters.empty())
        return ui.tell (offered.options.empty() ? juce::String ("Nothing in this set fits this guitar; the list says why.")
                                                : juce::String ("All eight letters are taken. Remove an option first."));
    const auto name = words::from (starters[static_cast<size_t> (chosenStarter)].name);
    if (! session.jobEditor.edit ("/options", edit.options, ("Starter set: " + name).toStdString()))
        return;
    session.monitor.hear (optionOf (edit.letters.front()));
    juce::StringArray letters;
    for (const auto& letter : edit.letters)
        letters.add (words::from (letter));
    ui.tell (name + ": " + letters.joinIntoString (", ") + " hang on the take."
             + (edit.left > 0 ? " No letter was left for " + juce::String (static_cast<int> (edit.left)) + " more." : ""));
    if (onClose)
        onClose();
}

void RewireList::paintStarter (juce::Graphics& g)
{
    const auto& t = colours();
    const auto& starter = starters[static_cast<size_t> (chosenStarter)];
    const auto edit = withStarter (ui.session.jobEditor.text(), offered);
    std::vector<juce::AttributedString> paragraphs;
    const auto para = [&] (const juce::String& label, juce::Colour labelColour, const juce::String& words, const juce::Font& font,
                           juce::Colour colour)
    {
        juce::AttributedString text;
        text.setWordWrap (juce::AttributedString::byWord);
        text.setLineSpacing (3.0f);
        if (label.isNotEmpty())
            text.append (label + "  ", type::bold (13.0f), labelColour);
        text.append (words, font, colour);
        paragraphs.push_back (text);
    };
    const auto plain = type::text (13.0f);
    para ({}, t.ink, "Starter set: " + words::from (starter.name), type::bold (15.0f), t.ink);
    if (! starter.says.empty())
        para ({}, t.ink,
              juce::String::fromUTF8 ("\xe2\x80\x9c") + words::from (starter.says) + juce::String::fromUTF8 ("\xe2\x80\x9d"),
              type::italic (14.0f), t.mute);
    for (size_t i = 0; i < offered.options.size(); ++i)
    {
        para (i < edit.letters.size() ? words::from (edit.letters[i]) : juce::String ("-"), t.ink,
              words::from (offered.options[i].name), type::bold (13.0f), t.ink);
        for (const auto& [preset, filled] : offered.options[i].rewires)
            if (const auto info = std::find_if (infos.begin(), infos.end(),
                                                [&p = preset] (const RewireInfo& known) { return known.preset == p; });
                info != infos.end())
                para ({}, t.mute, filledWords (info->gives, *info, filled) + " " + filledWords (info->costs, *info, filled),
                      plain, t.mute);
    }
    if (offered.options.empty())
        para ({}, t.ink, "Nothing in this set fits this guitar:", type::bold (13.0f), t.ink);
    else if (! offered.refused.empty())
        para ({}, t.ink, "Left out", plain, t.mute);
    for (const auto& [candidate, why] : offered.refused)
        para (words::from (wording::candidateName (candidate)), t.mute, words::from (wording::offerRefusal (why)), plain, t.mute);

    float y = static_cast<float> (detail.getY());
    const float bottom = static_cast<float> (detail.getBottom());
    for (size_t i = 0; i < paragraphs.size(); ++i)
    {
        juce::TextLayout laid;
        laid.createLayout (paragraphs[i], static_cast<float> (detail.getWidth()));
        const bool last = i + 1 == paragraphs.size();
        if (y + laid.getHeight() + (last ? 0.0f : 22.0f) > bottom && i >= 2)
        {
            g.setColour (t.mute);
            g.setFont (plain);
            type::draw (g, "and " + juce::String (static_cast<int> (paragraphs.size() - i)) + " more",
                        detail.withTop (juce::roundToInt (y)).withHeight (18), juce::Justification::centredLeft, true);
            return;
        }
        laid.draw (g, { static_cast<float> (detail.getX()), y, static_cast<float> (detail.getWidth()), laid.getHeight() });
        y += laid.getHeight() + (i < 2 ? 12.0f : 8.0f);
    }
}

juce::String RewireList::starterInWords() const
{
    auto text = "Starter set: " + words::from (starters[static_cast<size_t> (chosenStarter)].name) + ". ";
    for (const auto& option : offered.options)
        text << words::from (option.name) << ". ";
    for (const auto& [candidate, why] : offered.refused)
        text << "Left out: " << words::from (wording::candidateName (candidate)) << ", "
             << words::from (wording::offerRefusal (why)) << ". ";
    return text;
}
}
