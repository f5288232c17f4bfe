#include "editor/HeaderBar.h"

#include "editor/JobWords.h"
#include "session/Session.h"

namespace coldiron
{
HeaderBar::HeaderBar (UiContext& d)
    : Panel (d), job (d, "Job"), save (d, "Save"), undo (d, "Undo"), redo (d, "Redo"), guitar (d, "Guitar"),
      blindTest (d, "Blind test"), view (d, "View")
{
    setTitle ("The job");
    addInOrder (*this, { &job, &save, &undo, &redo, &guitar, &blindTest, &view });
    undo.onClick = [this] { ui.session.jobEditor.undo(); };
    redo.onClick = [this] { ui.session.jobEditor.redo(); };
    blindTest.setTooltip ("Judge by ear alone: rank the options, or see whether a difference can be heard at all (Ctrl B).");
}

void HeaderBar::sessionChanged (const Revisions& before, const Revisions& now)
{
    if (before.job != now.job)
        wish = jobwords::client (ui.session.jobEditor);
    showUndo();
    repaint();
}

void HeaderBar::showUndo()
{
    const bool blind = ui.session.blindTest.view().isRunning; // what could be undone would change what is judged
    const auto undoName = ui.session.jobEditor.undoName(), redoName = ui.session.jobEditor.redoName();
    undo.setEnabled (! blind && ! undoName.empty());
    redo.setEnabled (! blind && ! redoName.empty());
    undo.setTooltip (undoName.empty() ? "Nothing to undo" : "Undo: " + words::from (undoName));
    redo.setTooltip (redoName.empty() ? "Nothing to redo" : "Redo: " + words::from (redoName));
}

void HeaderBar::paint (juce::Graphics& g)
{
    const auto& t = colours();
    auto head = getLocalBounds().reduced (16, 0);

    // The mark: a tag on its side, with an eyelet and a joint.
    const auto middle = static_cast<float> (head.getCentreY());
    const auto x = static_cast<float> (head.getX());
    juce::Path mark;
    mark.startNewSubPath (x, middle - 7);
    mark.lineTo (x + 6, middle - 13);
    mark.lineTo (x + 31, middle - 13);
    mark.lineTo (x + 31, middle + 13);
    mark.lineTo (x + 6, middle + 13);
    mark.lineTo (x, middle + 7);
    mark.closeSubPath();
    g.setColour (t.ink);
    g.fillPath (mark);
    g.setColour (t.window);
    g.fillEllipse (x + 6, middle - 3, 6.0f, 6.0f);
    g.fillRect (x + 14, middle - 1.5f, 12.0f, 3.0f);
    head.removeFromLeft (42);

    g.setColour (t.ink);
    const auto name = type::name (21.0f);
    g.setFont (name);
    type::draw (g, "Coldiron", head, juce::Justification::centredLeft, false);
    head.removeFromLeft (juce::roundToInt (type::width (name, "Coldiron")) + 10);
    g.setColour (t.line);
    g.fillRect (head.getX(), head.getCentreY() - 12, 1, 24);
    head.removeFromLeft (14);
    head.setRight (titleArea.getRight());

    g.setColour (t.ink);
    const auto bold = type::bold (15.0f);
    g.setFont (bold);
    const auto title = words::from (ui.session.jobEditor.job()->title)
                       + (ui.session.jobEditor.isChanged() ? juce::String::fromUTF8 (" \xe2\x80\xa2") : juce::String());
    type::draw (g, title, head, juce::Justification::centredLeft, true);
    head.removeFromLeft (juce::roundToInt (type::width (bold, title)) + 14);
    if (wish.isNotEmpty() && head.getWidth() > 120)
    {
        g.setColour (t.mute);
        g.setFont (type::italic (14.0f));
        type::draw (g, juce::String::fromUTF8 ("\xe2\x80\x9c") + wish + juce::String::fromUTF8 ("\xe2\x80\x9d"), head,
                    juce::Justification::centredLeft, true);
    }
}

void HeaderBar::resized()
{
    auto head = getLocalBounds().reduced (16, 0).withTrimmedTop (getHeight() / 2 - 17).withHeight (34);
    for (auto* button : { &view, &blindTest, &redo, &undo, &save, &job, &guitar })
    {
        if (! button->isVisible())
            continue;
        button->setBounds (head.removeFromRight (button->idealWidth()));
        head.removeFromRight (6);
    }
    titleArea = head;
}

juce::String HeaderBar::inWords() const
{
    return words::from (ui.session.jobEditor.job()->title) + (ui.session.jobEditor.isChanged() ? ", not saved" : "")
           + (wish.isNotEmpty() ? ". The client: " + wish : juce::String());
}
}
