#include "editor/JobMenu.h"

#include "editor/JobFiles.h"
#include "editor/Sheets.h"
#include "editor/Words.h"
#include "offer/Starter.h"
#include "session/Session.h"
#include "session/TakeExport.h"

namespace coldiron
{
namespace
{
enum Item {
    newItem = 1,
    openItem,
    openTakeItem,
    saveItem,
    saveAsItem,
    notesItem,
    cardItem,
    drawingItem = 20,
    ohmsItem,
    spiceItem,
    rendersItem,
    matchedItem,
    recentItems = 900,
    starterItems = 1000
};
}

JobMenu::JobMenu (UiContext& d, JobFiles& f, Sheets& s) : ui (d), files (f), sheets (s) {}

juce::PopupMenu JobMenu::exportMenu() const
{
    juce::PopupMenu menu;
    const OptionId heard = ui.session.monitor.heard();
    const auto of = heard == asRecorded ? juce::String ("the guitar as it is") : words::from (letterOf (heard));
    menu.addItem (drawingItem, "Wiring drawing of " + of + " (SVG)");
    menu.addItem (ohmsItem, "Ohm table of " + of + " (CSV)");
    menu.addItem (spiceItem, "Netlist of " + of + " for a circuit simulator");
    menu.addSeparator();
    const auto picture = ui.session.takes.picture();
    const bool playable = picture != nullptr && picture->fault.empty() && ui.session.exports.rendering() == nullptr;
    menu.addItem (rendersItem, "All options as sound, true level", playable);
    menu.addItem (matchedItem, "All options as sound, levels matched", playable);
    return menu;
}

void JobMenu::show (juce::Component& button)
{
    juce::PopupMenu menu, starters, recent;
    menu.setLookAndFeel (&button.getLookAndFeel());
    const auto presets = ui.session.jobEditor.presets();
    const auto sets = presets.list ("starters");
    Diagnostics ignored;
    for (size_t i = 0; i < sets.size(); ++i)
        if (const auto read = readStarter (sets[i], presets, ignored))
            starters.addItem (starterItems + static_cast<int> (i), words::from (read->name));
    const auto paths = recentJobs ? recentJobs() : juce::StringArray();
    for (int i = 0; i < paths.size() && i < 10; ++i)
        recent.addItem (recentItems + i,
                        juce::File (paths[i]).getFileNameWithoutExtension() + "  "
                            + juce::File (paths[i]).getParentDirectory().getFileName(),
                        juce::File (paths[i]).existsAsFile());

    menu.addItem (newItem, "New job on a guitar");
    menu.addItem (openItem, "Open a job");
    menu.addSubMenu ("Recent jobs", recent, ! paths.isEmpty());
    menu.addItem (saveItem, "Save");
    menu.addItem (saveAsItem, "Save as");
    menu.addSeparator();
    menu.addItem (openTakeItem, "Add a take");
    menu.addItem (cardItem, "Take card: how to record");
    menu.addSubMenu ("Starter set", starters, ! sets.empty() && ui.session.options.ids().size() < 8);
    menu.addItem (notesItem, "Notes");
    menu.addSeparator();
    menu.addSubMenu ("Export", exportMenu());
    const juce::Component::SafePointer<juce::Component> alive (&button);
    menu.showMenuAsync (juce::PopupMenu::Options().withTargetComponent (&button),
                        [this, alive, sets, paths] (int item)
                        {
                            if (alive == nullptr || item == 0)
                                return;
                            if (item >= starterItems)
                                sheets.showStarter (sets[static_cast<size_t> (item - starterItems)]);
                            else if (item >= recentItems)
                                files.openJob (paths[item - recentItems]);
                            else
                                choose (item);
                        });
}

void JobMenu::choose (int item)
{
    const auto& exports = ui.session.exports;
    const OptionId heard = ui.session.monitor.heard();
    switch (item)
    {
    case newItem: return sheets.showGuitars();
    case openItem: return files.openJob();
    case openTakeItem: return files.openTake();
    case saveItem: return files.saveJob();
    case saveAsItem: return files.saveJobAs();
    case notesItem: return sheets.showNotes (true);
    case cardItem: return files.exportText ("Save the take card", exports.takeCard());
    case drawingItem: return files.exportText ("Save the wiring drawing", exports.drawing (heard));
    case ohmsItem: return files.exportText ("Save the ohm table", exports.ohmTable (heard));
    case spiceItem: return files.exportText ("Save the netlist", exports.netlist (heard));
    case rendersItem: return files.exportTakes (false);
    case matchedItem: return files.exportTakes (true);
    default: return;
    }
}
}
