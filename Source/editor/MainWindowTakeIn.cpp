// Taking a guitar in: by its picture, its pickups' files, the sheet.

#include "editor/JobWords.h"
#include "editor/MainWindow.h"
#include "session/TypedOhms.h"

namespace coldiron
{
void MainWindow::showTakeIn (bool on)
{
    if (! on)
        return closeOverlay();
    if (bench.blind().isRunning)
        return; // a value would change what is judged
    auto sheet = std::make_unique<TakeInSheet> (ui);
    sheet->onPickupFile = [this] (const std::string& pickup) { openPickupFile (pickup); };
    sheet->onGuitars = [this] { showGuitars(); };
    show (std::move (sheet));
}

void MainWindow::showGuitars()
{
    if (bench.blind().isRunning)
        return;
    const juce::Component::SafePointer<MainWindow> self (this);
    // The sheet that asked may be the one that goes.
    juce::MessageManager::callAsync (
        [self]
        {
            if (self == nullptr)
                return;
            auto sheet = std::make_unique<GuitarPictures> (self->ui);
            sheet->onChosen = [self] (const std::string& preset)
            {
                self->leaving (
                    [self, preset]
                    {
                        if (self == nullptr || ! self->bench.newJob (preset))
                            return;
                        self->guitarPicked = true;
                        juce::MessageManager::callAsync (
                            [self]
                            {
                                if (self != nullptr)
                                    self->showTakeIn (true);
                            });
                    });
            };
            self->show (std::move (sheet));
        });
}

void MainWindow::openPickupFile (const std::string& pickup)
{
    chooser = std::make_unique<juce::FileChooser> ("Readings or a fitted pickup for " + words::plain (pickup), juce::File(),
                                                   "*.csv;*.json");
    chooser->launchAsync (juce::FileBrowserComponent::openMode | juce::FileBrowserComponent::canSelectFiles,
                          [this, pickup] (const juce::FileChooser& c)
                          {
                              if (c.getResult() != juce::File())
                                  readPickupFile (pickup, c.getResult().getFullPathName());
                          });
}

void MainWindow::readPickupFile (const std::string& pickup, const juce::String& file)
{
    const auto edit = pickupFileEdit (bench, pickup, file.toStdString());
    if (! edit.sound())
        return notice.say (words::from (edit.refusal));
    if (! bench.edit (edit.pointer, edit.json, edit.name))
        return;
    const auto job = bench.job();
    const auto* part = job->guitar.harness.find (pickup);
    const auto known = part != nullptr ? part->as<PickupPart>()->pickup.known : Provenance::assumed;
    notice.say ("The " + words::plain (pickup) + " pickup is "
                + (known == Provenance::measured   ? "measured"
                   : known == Provenance::fromOhms ? "known from ohms"
                                                   : "assumed still: the readings say too little")
                + ", from " + juce::File (file).getFileName() + ".");
}

/** @returns whether the file is of a pickup. Where it was dropped on one, that one is meant; else it is asked. */
bool MainWindow::takePickupFile (const juce::String& file, juce::Point<int> at)
{
    if (! isPickupFile (file.toStdString()))
        return false;
    std::vector<std::string> names;
    const auto job = bench.job();
    for (const auto& part : job->guitar.harness.parts())
        if (part.as<PickupPart>() != nullptr)
            names.push_back (part.name);
    std::string meant;
    if (auto* sheet = dynamic_cast<TakeInSheet*> (overlay.get()))
        meant = sheet->pickupAt (at - sheet->getPosition());
    if (meant.empty() && names.size() == 1)
        meant = names.front();
    if (! meant.empty())
        return (readPickupFile (meant, file), true);
    juce::PopupMenu menu;
    menu.setLookAndFeel (&lookAndFeel);
    menu.addSectionHeader ("Which pickup was read?");
    for (size_t i = 0; i < names.size(); ++i)
        menu.addItem (static_cast<int> (i) + 1, words::title (names[i]));
    const juce::Component::SafePointer<MainWindow> self (this);
    menu.showMenuAsync (juce::PopupMenu::Options().withTargetComponent (this),
                        [self, names, file] (int choice)
                        {
                            if (self != nullptr && choice > 0)
                                self->readPickupFile (names[static_cast<size_t> (choice) - 1], file);
                        });
    return true;
}

MainView MainWindow::sight() const
{
    return sightOf (bench, dynamic_cast<const WiringView*> (overlay.get()) != nullptr, guitarPicked);
}

/** The demo is opened where nothing of the person's own is on the bench yet: in the standalone, and only there. */
void MainWindow::startFirstSteps()
{
    if (! inHost && bench.jobFile().empty() && ! bench.isChanged() && bench.job()->takes.empty())
        if (const auto demo = demoJob (bench.presets()); ! demo.empty() && bench.openJob (demo))
            bench.play();
    firstSteps = std::make_unique<FirstLine> (ui, inHost);
    firstSteps->onAct = [this] (FirstSteps::Step step) { doFirstStep (step); };
    firstSteps->onEnd = [this] { endFirstSteps(); };
    firstSteps->start (sight());
    addAndMakeVisible (*firstSteps);
    resized();
}

void MainWindow::doFirstStep (FirstSteps::Step step)
{
    switch (step)
    {
    case FirstSteps::Step::openDrawing: return showWiring (true);
    case FirstSteps::Step::pickGuitar: return showGuitars();
    case FirstSteps::Step::typeOhms: return showTakeIn (true);
    case FirstSteps::Step::dropTake: return openTake();
    case FirstSteps::Step::starterSet: return showRewires (asRecorded);
    default: return;
    }
}

void MainWindow::endFirstSteps()
{
    // The line may be the one that asked.
    const juce::Component::SafePointer<MainWindow> self (this);
    juce::MessageManager::callAsync (
        [self]
        {
            if (self == nullptr || self->firstSteps == nullptr)
                return;
            self->firstSteps.reset();
            self->resized();
            self->repaint();
            if (self->onFirstStepsEnd)
                self->onFirstStepsEnd();
        });
}
}
