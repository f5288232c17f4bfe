#include "editor/RecordedColumn.h"

#include "editor/Words.h"
#include "session/Session.h"
#include "wording/HumTriageWords.h"

namespace coldiron
{
RecordedColumn::RecordedColumn (UiContext& d) : ui (d), recorded (d), listened (d)
{
    setTitle ("How it was recorded");
    setFocusContainerType (FocusContainerType::focusContainer);
    for (auto* list : { &recorded, &listened })
    {
        list->onHeight = [this]
        {
            if (onHeight)
                onHeight();
        };
        addAndMakeVisible (list);
    }
    for (size_t i = 0; i < humQuestions().size(); ++i)
    {
        juce::StringArray choices { "Not asked" };
        const auto& asked = humQuestions()[i];
        for (size_t choice = 0; choice < asked.answers.size(); ++choice)
            choices.add (words::from (wording::humAnswer (asked, choice)));
        questions.push_back (std::make_unique<Segments> (ui, choices, words::from (wording::humQuestion (asked))));
        questions.back()->onChoice = [this, i] (int choice) { answer (i, choice); };
        addAndMakeVisible (*questions.back());
    }
    rebuild();
    readValues();
}

void RecordedColumn::rebuild()
{
    knobs.clear();
    levers.clear();
    movable = ui.session.takes.playing() >= 0;
    for (const auto& control : ui.session.controls.of (asRecorded))
        if (control.isKnob())
            knobs.push_back (std::make_unique<Knob> (ui, asRecorded, control.name));
        else
            levers.push_back (std::make_unique<LeverRail> (ui, asRecorded, control));
    for (auto& knob : knobs)
    {
        addAndMakeVisible (*knob);
        knob->setEnabled (movable);
    }
    for (auto& lever : levers)
    {
        addAndMakeVisible (*lever);
        lever->setEnabled (movable);
    }
}

void RecordedColumn::readValues()
{
    const auto job = ui.session.jobEditor.job();
    recorded.show (loadValuesOf (*job, GuitarValue::Side::recording));
    listened.show (loadValuesOf (*job, GuitarValue::Side::listening));
    for (size_t i = 0; i < questions.size(); ++i)
    {
        const auto said = humQuestions()[i].given (job->hum);
        questions[i]->setChosen (said ? static_cast<int> (*said) + 1 : 0);
    }
}

void RecordedColumn::sessionChanged (const Revisions& before, const Revisions& now)
{
    if (before.job != now.job || before.transport != now.transport)
    {
        const auto controls = ui.session.controls.of (asRecorded);
        if (movable != (ui.session.takes.playing() >= 0) || ! standFor (controls, knobs, levers))
            rebuild();
        readValues();
        if (onHeight)
            onHeight();
    }
    for (auto& knob : knobs)
        knob->refresh();
    for (auto& lever : levers)
        lever->refresh();
    repaint();
}

void RecordedColumn::answer (size_t question, int choice)
{
    const auto& asked = humQuestions()[question];
    ui.session.jobEditor.edit ("/hum/" + asked.key, choice == 0 ? "" : asked.answers[static_cast<size_t> (choice - 1)],
                               "Hum: " + asked.key);
}

int RecordedColumn::idealHeight (int width) { return place (width); }
void RecordedColumn::resized() { place (getWidth()); }

/** Places everything from the top. @returns the height it took */
int RecordedColumn::place (int width)
{
    texts.clear();
    int y = 0;
    const auto head = [&] (const juce::String& words)
    {
        texts.push_back ({ { 0, y, width, 22 }, words, true });
        y += 26;
    };
    const auto para = [&] (const juce::String& words, bool ink)
    {
        if (words.isEmpty())
            return;
        juce::AttributedString text;
        text.append (words, type::text (12.5f));
        juce::TextLayout laid;
        laid.createLayout (text, static_cast<float> (width));
        const int height = juce::roundToInt (std::ceil (laid.getHeight())) + 6;
        texts.push_back ({ { 0, y, width, height }, words, false, ink });
        y += height;
    };

    para (movable ? juce::String ("Set these as they stood when the take was played.")
                  : juce::String ("Once a take has landed: where each control stood."),
          false);
    y += 4;
    if (! knobs.empty())
    {
        int each = 68;
        for (const auto& knob : knobs)
            each = juce::jmax (each, juce::jmin (110, knob->idealWidth()));
        const int columns = juce::jlimit (1, static_cast<int> (knobs.size()), width / each),
                  pitch = juce::jmin (110, width / columns);
        for (size_t i = 0; i < knobs.size(); ++i)
            knobs[i]->setBounds (static_cast<int> (i) % columns * pitch, y + static_cast<int> (i) / columns * 94, pitch, 93);
        y += (static_cast<int> (knobs.size()) + columns - 1) / columns * 94 + 2;
    }
    int x = 0, row = 0;
    for (auto& lever : levers)
    {
        const int wanted = juce::jmin (width, lever->idealWidth());
        if (x > 0 && x + wanted > width)
        {
            x = 0;
            y += row + 2;
            row = 0;
        }
        lever->setBounds (x, y, wanted, lever->idealHeight (false));
        row = juce::jmax (row, lever->idealHeight (false));
        x += wanted + 14;
    }
    y += row + 12;

    const bool sideBySide = width >= 380;
    const int half = sideBySide ? (width - 20) / 2 : width;
    const int top = y;
    texts.push_back ({ { 0, y, half, 22 }, "Recorded through", true });
    const auto placeList = [&] (ValueList& list, int left, int from)
    {
        list.setSize (half, juce::jmax (1, list.getHeight()));
        list.setBounds (left, from, half, list.idealHeight());
        return list.getBottom();
    };
    y = placeList (recorded, 0, y + 24) + 12;
    const int second = sideBySide ? top : y;
    texts.push_back ({ { sideBySide ? half + 20 : 0, second, half, 22 }, "Listened through", true });
    y = juce::jmax (y, placeList (listened, sideBySide ? half + 20 : 0, second + 24) + 12);

    head ("Hum, before any option");
    const auto job = ui.session.jobEditor.job();
    for (size_t i = 0; i < questions.size(); ++i)
    {
        const auto& asked = humQuestions()[i];
        const auto said = asked.given (job->hum);
        const int wide = questions[i]->idealWidth();
        if (width >= wide + 220)
        {
            questions[i]->setBounds (width - wide, y, wide, 32);
            texts.push_back ({ { 0, y, width - wide - 10, 32 }, words::from (wording::humQuestion (asked)), false, true });
            y += 36;
        }
        else
        {
            para (words::from (wording::humQuestion (asked)), true);
            questions[i]->setBounds (0, y, juce::jmin (width, wide), 32);
            y += 36;
        }
        if (said)
            para (words::from (wording::humAnswerMeans (asked, *said)), false);
    }
    para (words::from (wording::humAdvice (job->hum)), true);
    para (words::from (wording::humCaution (job->hum)), false);
    return y;
}

void RecordedColumn::paint (juce::Graphics& g)
{
    const auto& t = ui.colours();
    for (const auto& text : texts)
    {
        if (text.isHead)
        {
            g.setColour (t.mute);
            g.setFont (type::name (15.0f));
            type::draw (g, text.words, text.area, juce::Justification::centredLeft, false);
            continue;
        }
        juce::AttributedString words;
        words.append (text.words, type::text (12.5f), text.isInk ? t.ink : t.mute);
        words.setWordWrap (juce::AttributedString::byWord);
        if (text.area.getHeight() == 32)
            words.setJustification (juce::Justification::centredLeft);
        words.draw (g, text.area.toFloat());
    }
}

std::unique_ptr<juce::AccessibilityHandler> RecordedColumn::createAccessibilityHandler()
{
    const auto words = [this]
    {
        juce::StringArray all;
        for (const auto& text : texts)
            if (! text.isHead)
                all.add (text.words);
        return all.joinIntoString (" ");
    };
    return accessible (*this, juce::AccessibilityRole::group, { .description = words });
}
}
