// The menu of the job: new, starter sets, open, recent, save, what can be exported, the take card.

#include "analysis/OhmTable.h"
#include "editor/JobWords.h"
#include "editor/MainWindow.h"
#include "files/WriteFile.h"
#include "job/KeptFiles.h"
#include "paper/DrawingSvg.h"
#include "paper/Spice.h"
#include "paper/TakeCard.h"

#include <sstream>

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

/** A title as the name of a file. */
juce::String fileName (const Bench& bench, const juce::String& what, const juce::String& ending)
{
    auto title = words::from (bench.job()->title)
                     .retainCharacters ("abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789 -")
                     .trim();
    return (title.isEmpty() ? juce::String ("job") : title) + ", " + what + ending;
}

std::string quoted (const std::string& text) { return "\"" + text + "\""; }

/** The ohm table for a spreadsheet. */
std::string ohmsCsv (const Harness& harness)
{
    std::ostringstream csv;
    bool headed = false;
    for (const auto& row : ohmTable (harness))
    {
        if (! std::exchange (headed, true))
        {
            for (const auto& [lever, position] : row.levers)
                csv << quoted (lever) << ",";
            csv << "ohms,low,high,volume_at_5,remark\n";
        }
        for (const auto& [lever, position] : row.levers)
            csv << quoted (position) << ",";
        if (row.words().empty())
            csv << row.ohms << "," << row.lowOhms << "," << row.highOhms << "," << row.volumeDownOhms << ",\n";
        else
            csv << ",,,," << quoted (row.words()) << "\n";
    }
    return csv.str();
}
}

std::shared_ptr<const Job> MainWindow::jobNow()
{
    Diagnostics ignored;
    auto job = readJobText (bench.jobText(), bench.jobFile().parent_path(), bench.presets(), ignored);
    return job ? std::make_shared<const Job> (std::move (*job)) : bench.job();
}

juce::PopupMenu MainWindow::exportMenu()
{
    juce::PopupMenu menu;
    const OptionId heard = bench.heard();
    const auto of = heard == asRecorded ? juce::String ("the guitar as it is") : words::from (letterOf (heard));
    menu.addItem (drawingItem, "Wiring drawing of " + of + " (SVG)");
    menu.addItem (ohmsItem, "Ohm table of " + of + " (CSV)");
    menu.addItem (spiceItem, "Netlist of " + of + " for a circuit simulator");
    menu.addSeparator();
    const bool playable = bench.takePicture() != nullptr && bench.takePicture()->fault.empty() && exporting == nullptr;
    menu.addItem (rendersItem, "All options as sound, true level", playable);
    menu.addItem (matchedItem, "All options as sound, levels matched", playable);
    return menu;
}

void MainWindow::jobMenu()
{
    juce::PopupMenu menu, starters, recent;
    menu.setLookAndFeel (&lookAndFeel);
    const auto& presets = bench.presets();
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
    menu.addSubMenu ("Starter set", starters, ! sets.empty() && bench.ids().size() < 8);
    menu.addItem (notesItem, "Notes");
    menu.addSeparator();
    menu.addSubMenu ("Export", exportMenu());
    const juce::Component::SafePointer<MainWindow> self (this);
    menu.showMenuAsync (juce::PopupMenu::Options().withTargetComponent (&openButton),
                        [self, sets, paths] (int choice)
                        {
                            if (self == nullptr || choice == 0)
                                return;
                            if (choice >= starterItems)
                                return self->showStarter (sets[static_cast<size_t> (choice - starterItems)]);
                            if (choice >= recentItems)
                                return self->leaving (
                                    [self, path = paths[choice - recentItems].toStdString()]
                                    {
                                        if (self != nullptr)
                                            self->bench.openJob (path);
                                    });
                            switch (choice)
                            {
                            case newItem: return self->showGuitars();
                            case openItem: return self->openJob();
                            case openTakeItem: return self->openTake();
                            case saveItem: return self->saveJob();
                            case saveAsItem: return self->saveJobAs();
                            case notesItem: return self->showNotes (true);
                            case cardItem: return self->saveTakeCard();
                            default: return self->chooseExport (choice);
                            }
                        });
}

void MainWindow::chooseExport (int choice)
{
    const OptionId heard = bench.heard();
    const auto job = jobNow();
    const auto which = heard == asRecorded ? juce::String ("as it is") : words::from (letterOf (heard));
    if (choice == drawingItem)
        exportDrawing (heard);
    else if (choice == ohmsItem)
        exportText ("Save the ohm table", fileName (bench, which + " ohms", ".csv"),
                    [job, heard] { return ohmsCsv (jobwords::harnessOf (*job, heard)); });
    else if (choice == spiceItem)
        exportText ("Save the netlist", fileName (bench, which, ".cir"),
                    [job, heard] { return spiceNetlist (*job, heard == asRecorded ? nullptr : job->find (letterOf (heard))); });
    else if (choice == rendersItem || choice == matchedItem)
        exportTakes (choice == matchedItem);
}

/** Asks where, makes the text and writes it, whole or not at all. */
void MainWindow::exportText (const juce::String& what, const juce::String& file, std::function<std::string()> make)
{
    chooser = std::make_unique<juce::FileChooser> (
        what, juce::File::getSpecialLocation (juce::File::userDocumentsDirectory).getChildFile (file));
    chooser->launchAsync (juce::FileBrowserComponent::saveMode | juce::FileBrowserComponent::canSelectFiles
                              | juce::FileBrowserComponent::warnAboutOverwriting,
                          [this, make = std::move (make)] (const juce::FileChooser& c)
                          {
                              const auto target = c.getResult();
                              if (target == juce::File())
                                  return;
                              try
                              {
                                  if (const auto why = whyKept (target.getFullPathName().toStdString(), keptFiles (*bench.job()));
                                      ! why.empty())
                                      throw WriteError (target.getFileName().toStdString() + ": " + why);
                                  writeFile (target.getFullPathName().toStdString(), make());
                                  notice.say ("Saved " + target.getFileName() + ".");
                              }
                              catch (const std::exception& fault)
                              {
                                  notice.say (words::from (fault.what()));
                              }
                          });
}

void MainWindow::exportDrawing (OptionId id)
{
    const auto job = bench.job();
    exportText (
        "Save the wiring drawing",
        fileName (bench, (id == asRecorded ? juce::String ("as it is") : words::from (letterOf (id))) + " wiring", ".svg"),
        [job, id] { return drawingSvg (drawWiring (jobwords::harnessBefore (*job, id), jobwords::harnessOf (*job, id))); });
}

void MainWindow::saveTakeCard()
{
    const auto job = bench.job();
    exportText ("Save the take card", fileName (bench, "take card", ".html"),
                [job] { return takeCardHtml (job->guitar, job->title, job->wish); });
}

void MainWindow::exportTakes (bool matched)
{
    chooser = std::make_unique<juce::FileChooser> ("A folder for the sounds",
                                                   juce::File::getSpecialLocation (juce::File::userDocumentsDirectory));
    chooser->launchAsync (juce::FileBrowserComponent::openMode | juce::FileBrowserComponent::canSelectDirectories,
                          [this, matched] (const juce::FileChooser& c)
                          {
                              if (c.getResult() != juce::File())
                                  exporting = std::make_unique<TakeExport> (bench.renderPlan (matched),
                                                                            c.getResult().getFullPathName().toStdString());
                          });
}

/** Says how far the sounds are, a few times a second, and what was written. */
void MainWindow::followExport()
{
    if (exporting == nullptr)
        return;
    if (! exporting->isDone())
        return notice.say ("Writing sounds: " + juce::String (juce::roundToInt (exporting->progress() * 100.0)) + " %");
    const auto fault = exporting->fault();
    const auto count = static_cast<int> (exporting->written().size());
    notice.say (fault.empty() ? juce::String (count) + " sounds written: now.wav and one for each letter." : words::from (fault));
    exporting.reset();
}
}
