#include "editor/TakeChips.h"

#include "editor/Words.h"
#include "session/Session.h"

namespace coldiron
{
TakeChips::TakeChips (UiContext& d) : RadioGroup (d, "Takes"), plus (d, "Add a take")
{
    plus.setTooltip ("Add a take");
    plus.setTriggeredOnMouseDown (true);
    plus.onClick = [this] { ui.openTakeFile(); };
    addAndMakeVisible (plus);
}

int TakeChips::idealWidth() const { return pitch * (static_cast<int> (lines.size()) + 1); }

void TakeChips::sessionChanged (const Revisions& before, const Revisions& now)
{
    if (before.job == now.job && before.transport == now.transport)
        return;
    lines = takeLines (ui.session.jobEditor);
    juce::StringArray titles;
    for (const auto& line : lines)
        titles.add ("Take " + juce::String (titles.size() + 1) + ", " + words::from (line.name)
                    + (line.isMissing ? ", the file is not there" : ""));
    setChoices (titles);
    setChosen (ui.session.takes.playing());
    resized();
    repaint();
}

void TakeChips::resized()
{
    for (int i = 0; i < count(); ++i)
        place (i, { i * pitch, 0, pitch, getHeight() });
    plus.setBounds (count() * pitch, 0, pitch, getHeight());
}

void TakeChips::paint (juce::Graphics& g)
{
    const auto& t = ui.colours();
    for (int i = 0; i <= static_cast<int> (lines.size()); ++i)
    {
        const bool isPlus = i == static_cast<int> (lines.size()), on = i == chosen() && ! isPlus;
        const auto box = juce::Rectangle<int> (i * pitch, 1, pitch - 4, getHeight() - 2);
        g.setColour (on ? t.ink : t.sheet);
        g.fillRoundedRectangle (box.toFloat(), 4.0f);
        g.setColour (on ? t.ink : t.mute);
        g.drawRoundedRectangle (box.toFloat().reduced (0.5f), 4.0f, 1.0f);
        g.setColour (on ? t.sheet : t.ink);
        g.setFont (type::bold (12.0f));
        type::draw (g, isPlus ? juce::String ("+") : juce::String (i + 1), box, juce::Justification::centred, false);
        if (! isPlus && lines[static_cast<size_t> (i)].isMissing)
            g.drawLine (static_cast<float> (box.getX()) + 3.0f, static_cast<float> (box.getBottom()) - 4.0f,
                        static_cast<float> (box.getRight()) - 3.0f, static_cast<float> (box.getY()) + 4.0f, 1.6f);
    }
    if (! plus.hasKeyboardFocus (false))
        paintGroupFocus (g, 5.0f);
}

void TakeChips::menu (int take)
{
    if (take < 0 || take >= static_cast<int> (lines.size()))
        return;
    juce::PopupMenu menu;
    menu.setLookAndFeel (&getLookAndFeel());
    menu.addSectionHeader (words::from (lines[static_cast<size_t> (take)].name));
    menu.addItem (1, "Rename");
    menu.addItem (2, "Find file");
    menu.addItem (3, "Remove from the job");
    menu.addSeparator();
    menu.addItem (4, "Add a take");
    const juce::Component::SafePointer<TakeChips> self (this);
    menu.showMenuAsync (juce::PopupMenu::Options().withTargetComponent (this),
                        [self, take] (int choice)
                        {
                            if (self == nullptr || choice == 0)
                                return;
                            if (choice == 1 && self->onRename)
                                self->onRename (take);
                            else if (choice == 2 && self->onRelink)
                                self->onRelink (take);
                            else if (choice == 3)
                                self->remove (take);
                            else if (choice == 4)
                                self->ui.openTakeFile();
                        });
}

void TakeChips::remove (int take)
{
    if (take < 0 || take >= static_cast<int> (lines.size()))
        return;
    const auto name = words::from (lines[static_cast<size_t> (take)].name);
    if (removeTake (ui.session.jobEditor, ui.session.takes, take))
        ui.tell (name + " is out of the job. The file stays where it is; undo brings it back.");
}

void TakeChips::select (int take)
{
    if (count() > 0)
        ui.session.takes.select (juce::jlimit (0, count() - 1, take));
    setChosen (ui.session.takes.playing());
}

void TakeChips::pressed (int take, juce::ModifierKeys mods) { mods.isPopupMenu() ? menu (take) : select (take); }

juce::String TakeChips::tipOf (int take)
{
    const auto& line = lines[static_cast<size_t> (take)];
    return words::from (line.name) + (line.isMissing ? ": the file is not there" : "");
}

bool TakeChips::keyPressed (const juce::KeyPress& key)
{
    if (key == juce::KeyPress::leftKey || key == juce::KeyPress::rightKey)
        return (select (chosen() + (key == juce::KeyPress::leftKey ? -1 : 1)), true);
    if (key == juce::KeyPress::F2Key && chosen() >= 0 && onRename)
        return (onRename (chosen()), true);
    if (key == juce::KeyPress::deleteKey || key == juce::KeyPress::backspaceKey)
        return (remove (chosen()), true);
    if (key == juce::KeyPress::returnKey)
        return (chosen() < 0 ? ui.openTakeFile() : menu (chosen()), true);
    return false;
}
}
