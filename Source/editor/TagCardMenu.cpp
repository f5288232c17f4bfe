#include "editor/TagCard.h"
#include "editor/Words.h"
#include "session/Session.h"

#include <algorithm>

namespace coldiron
{
void TagCard::showMenu()
{
    auto& session = ui.session;
    juce::PopupMenu menu;
    const auto ids = session.options.ids();
    const auto found = std::find (ids.begin(), ids.end(), shown);
    const int place = found == ids.end() ? -1 : static_cast<int> (found - ids.begin());
    const bool room = ids.size() < 8;
    menu.addItem (1, "Hear");
    if (shown == asRecorded)
        menu.addItem (2, "New option from a rewire", room);
    else
    {
        menu.addItem (3, "Add a rewire");
        if (const auto choices = session.options.rewires (shown); ! choices.empty())
        {
            juce::PopupMenu off;
            const auto* option = session.jobEditor.job()->find (letterOf (shown));
            for (size_t i = 0; i < choices.size(); ++i)
                off.addItem (100 + static_cast<int> (i), option != nullptr && i < option->rewires.size()
                                                             ? words::from (option->rewires[i].name)
                                                             : words::plain (choices[i].preset));
            menu.addSubMenu ("Take a rewire off", off);
        }
        menu.addSeparator();
        menu.addItem (4, "Rename");
        menu.addItem (5, "Duplicate", room);
        menu.addItem (6, "Move left", place > 0);
        menu.addItem (7, "Move right", place >= 0 && place + 1 < static_cast<int> (ids.size()));
        menu.addSeparator();
        menu.addItem (8, "Remove");
    }
    menu.setLookAndFeel (&getLookAndFeel());
    const juce::Component::SafePointer<TagCard> self (this);
    menu.showMenuAsync (juce::PopupMenu::Options().withTargetComponent (this),
                        [self, place] (int choice)
                        {
                            if (self == nullptr || choice == 0)
                                return;
                            auto& d = self->ui;
                            const OptionId id = self->shown;
                            if (choice >= 100)
                            {
                                auto list = d.session.options.rewires (id);
                                list.erase (list.begin() + (choice - 100));
                                d.session.options.setRewires (id, list);
                                return;
                            }
                            switch (choice)
                            {
                            case 1: d.session.monitor.hear (id); break;
                            case 2: d.addRewireTo (asRecorded); break;
                            case 3: d.addRewireTo (id); break;
                            case 4: self->startRenaming(); break;
                            case 5: d.session.monitor.hear (d.session.options.duplicate (id)); break;
                            case 6: d.session.options.move (id, place - 1); break;
                            case 7: d.session.options.move (id, place + 1); break;
                            case 8: d.session.options.remove (id); break;
                            default: break;
                            }
                        });
}
}
