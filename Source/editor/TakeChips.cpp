#include "editor/TakeChips.h"

#include "editor/Words.h"

namespace coldiron
{
TakeChips::TakeChips (UiContext& d) : Panel (d)
{
    setTitle ("Takes");
    setWantsKeyboardFocus (true);
}

int TakeChips::idealWidth() const { return pitch * (static_cast<int> (lines.size()) + 1); }

void TakeChips::benchChanged (const Revisions& before, const Revisions& now)
{
    if (before.job == now.job && before.transport == now.transport)
        return;
    lines = takeLines (ui.bench);
    chosen = ui.bench.take();
    const bool known = chosen >= 0 && chosen < static_cast<int> (lines.size());
    setTitle (known ? "Takes, " + juce::String (chosen + 1) + " of " + juce::String (static_cast<int> (lines.size())) + ", "
                          + words::from (lines[static_cast<size_t> (chosen)].name)
                    : juce::String ("Takes"));
    repaint();
}

void TakeChips::paint (juce::Graphics& g)
{
    const auto& t = colours();
    for (int i = 0; i <= static_cast<int> (lines.size()); ++i)
    {
        const bool plus = i == static_cast<int> (lines.size()), on = i == chosen && ! plus;
        const auto box = juce::Rectangle<int> (i * pitch, 1, pitch - 4, getHeight() - 2);
        g.setColour (on ? t.ink : t.sheet);
        g.fillRoundedRectangle (box.toFloat(), 4.0f);
        g.setColour (on ? t.ink : t.mute);
        g.drawRoundedRectangle (box.toFloat().reduced (0.5f), 4.0f, 1.0f);
        g.setColour (on ? t.sheet : t.ink);
        g.setFont (type::bold (12.0f));
        type::draw (g, plus ? juce::String ("+") : juce::String (i + 1), box, juce::Justification::centred, false);
        if (! plus && lines[static_cast<size_t> (i)].isMissing)
            g.drawLine (static_cast<float> (box.getX()) + 3.0f, static_cast<float> (box.getBottom()) - 4.0f,
                        static_cast<float> (box.getRight()) - 3.0f, static_cast<float> (box.getY()) + 4.0f, 1.6f);
    }
    if (hasKeyboardFocus (false))
        paintFocus (g, getLocalBounds().toFloat(), 5.0f, t);
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
    if (removeTake (ui.bench, take))
        ui.tell (name + " is out of the job. The file stays where it is; undo brings it back.");
}

void TakeChips::mouseDown (const juce::MouseEvent& e)
{
    const int at = placeAt (e.x);
    if (at == static_cast<int> (lines.size()))
        return ui.openTakeFile();
    if (at < 0 || at > static_cast<int> (lines.size()))
        return;
    if (e.mods.isPopupMenu())
        return menu (at);
    ui.bench.selectTake (at);
}

void TakeChips::mouseMove (const juce::MouseEvent& e)
{
    const auto at = static_cast<size_t> (juce::jmax (0, placeAt (e.x)));
    setTooltip (at < lines.size() ? words::from (lines[at].name) + (lines[at].isMissing ? ": the file is not there" : "")
                                  : juce::String ("Add a take"));
}

bool TakeChips::keyPressed (const juce::KeyPress& key)
{
    const int count = static_cast<int> (lines.size());
    if (key == juce::KeyPress::leftKey || key == juce::KeyPress::rightKey)
    {
        if (count > 0)
            ui.bench.selectTake (juce::jlimit (0, count - 1, chosen + (key == juce::KeyPress::leftKey ? -1 : 1)));
        return true;
    }
    if (key == juce::KeyPress::F2Key && chosen >= 0 && onRename)
        return (onRename (chosen), true);
    if (key == juce::KeyPress::deleteKey || key == juce::KeyPress::backspaceKey)
        return (remove (chosen), true);
    if (key == juce::KeyPress::returnKey)
        return (chosen < 0 ? ui.openTakeFile() : menu (chosen), true);
    return false;
}
}
