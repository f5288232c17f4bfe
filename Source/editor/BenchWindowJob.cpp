// The menus of the window, and opening and saving.

#include "editor/BenchWindow.h"
#include "editor/JobWords.h"

namespace coldiron
{
/** Runs what leaves this job; asks first where it is not saved. */
void BenchWindow::leaving (std::function<void()> then)
{
    if (! bench.isChanged())
        return then();
    const juce::Component::SafePointer<BenchWindow> self (this);
    juce::AlertWindow::showOkCancelBox (juce::MessageBoxIconType::NoIcon, "Leave this job?", "Its changes are not saved.", "Leave it", "Stay", this,
                                        juce::ModalCallbackFunction::create ([self, then] (int answer)
                                                                             {
                                                                                 if (self != nullptr && answer != 0)
                                                                                     then();
                                                                             }));
}

void BenchWindow::openJob()
{
    chooser = std::make_unique<juce::FileChooser> ("Open a job", juce::File (words::from (bench.jobFile().string())), "*.json");
    chooser->launchAsync (juce::FileBrowserComponent::openMode | juce::FileBrowserComponent::canSelectFiles,
                          [this] (const juce::FileChooser& c)
                          {
                              if (c.getResult() != juce::File())
                                  leaving ([this, path = c.getResult().getFullPathName().toStdString()] { bench.openJob (path); });
                          });
}

void BenchWindow::saveJob()
{
    if (! bench.jobFile().empty())
    {
        if (bench.saveJob (bench.jobFile()))
            notice.say ("Saved " + words::from (bench.jobFile().filename().string()) + ".");
        return;
    }
    saveJobAs();
}

void BenchWindow::saveJobAs()
{
    chooser = std::make_unique<juce::FileChooser> ("Save the job", juce::File(), "*.json");
    chooser->launchAsync (juce::FileBrowserComponent::saveMode | juce::FileBrowserComponent::canSelectFiles | juce::FileBrowserComponent::warnAboutOverwriting,
                          [this] (const juce::FileChooser& c)
                          {
                              if (c.getResult() != juce::File() && bench.saveJob (c.getResult().withFileExtension ("json").getFullPathName().toStdString()))
                                  notice.say ("Saved " + c.getResult().getFileName() + ".");
                          });
}

void BenchWindow::jobMenu()
{
    juce::PopupMenu menu;
    menu.setLookAndFeel (&lookAndFeel);
    menu.addItem (5, "New job on a guitar");
    menu.addItem (1, "Open a job");
    menu.addItem (2, "Open a take");
    menu.addSeparator();
    menu.addItem (3, "Save");
    menu.addItem (4, "Save as");
    const juce::Component::SafePointer<BenchWindow> self (this);
    menu.showMenuAsync (juce::PopupMenu::Options().withTargetComponent (&openButton),
                        [self] (int choice)
                        {
                            if (self == nullptr || choice == 0)
                                return;
                            if (choice == 5)
                                self->showGuitars();
                            else if (choice == 1)
                                self->openJob();
                            else if (choice == 2)
                                self->openTake();
                            else if (choice == 3)
                                self->saveJob();
                            else
                                self->saveJobAs();
                        });
}

void BenchWindow::openTake()
{
    chooser = std::make_unique<juce::FileChooser> ("Open a take", juce::File(), "*.wav;*.aif;*.aiff;*.flac");
    chooser->launchAsync (juce::FileBrowserComponent::openMode | juce::FileBrowserComponent::canSelectFiles,
                          [this] (const juce::FileChooser& c)
                          {
                              if (c.getResult() != juce::File())
                                  bench.addTake (c.getResult().getFullPathName().toStdString());
                          });
}

void BenchWindow::viewMenu()
{
    juce::PopupMenu menu;
    menu.setLookAndFeel (&lookAndFeel);
    menu.addItem (1, "Light", true, ! isDark());
    menu.addItem (2, "Dark", true, isDark());
    menu.addSeparator();
    const float now = scaleNow ? scaleNow() : 1.0f;
    for (int percent : { 80, 100, 125, 150, 200 })
        menu.addItem (percent, juce::String (percent) + " %", true, juce::roundToInt (now * 100) == percent);
    menu.addSeparator();
    menu.addItem (3, "Wiring (W)");
    menu.addItem (4, "Keys (F1)");
    menu.addItem (5, "Open a take", true);
    const juce::Component::SafePointer<BenchWindow> self (this);
    menu.showMenuAsync (juce::PopupMenu::Options().withTargetComponent (&viewButton),
                        [self] (int choice)
                        {
                            if (self == nullptr || choice == 0)
                                return;
                            if (choice <= 2)
                            {
                                self->setDark (choice == 2);
                                if (self->onDark)
                                    self->onDark (choice == 2);
                            }
                            else if (choice == 3)
                                self->showWiring (true);
                            else if (choice == 4)
                                self->showKeys (true);
                            else if (choice == 5)
                                self->openTake();
                            else if (self->onScale)
                                self->onScale (static_cast<float> (choice) / 100.0f);
                        });
}
}
