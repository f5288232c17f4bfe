// The menus of the window, and opening and saving.

#include "editor/JobWords.h"
#include "editor/MainWindow.h"

namespace coldiron
{
/** Runs what leaves this job; asks first where it is not saved. */
void MainWindow::leaving (std::function<void()> then)
{
    if (! bench.isChanged())
        return then();
    const juce::Component::SafePointer<MainWindow> self (this);
    juce::AlertWindow::showOkCancelBox (juce::MessageBoxIconType::NoIcon, "Leave this job?",
                                        "Its changes are not saved and would be lost.", "Leave it", "Stay", this,
                                        juce::ModalCallbackFunction::create (
                                            [self, then] (int answer)
                                            {
                                                if (self != nullptr && answer != 0)
                                                    then();
                                            }));
}

void MainWindow::openJob()
{
    chooser = std::make_unique<juce::FileChooser> ("Open a job", juce::File (words::from (bench.jobFile().string())), "*.json");
    chooser->launchAsync (juce::FileBrowserComponent::openMode | juce::FileBrowserComponent::canSelectFiles,
                          [this] (const juce::FileChooser& c)
                          {
                              if (c.getResult() != juce::File())
                                  leaving ([this, path = c.getResult().getFullPathName().toStdString()]
                                           { bench.openJob (path); });
                          });
}

void MainWindow::saveJob()
{
    if (! bench.jobFile().empty())
    {
        if (bench.saveJob (bench.jobFile()))
            notice.say ("Saved " + words::from (bench.jobFile().filename().string()) + ".");
        return;
    }
    saveJobAs();
}

void MainWindow::saveJobAs()
{
    chooser = std::make_unique<juce::FileChooser> ("Save the job", juce::File(), "*.json");
    chooser->launchAsync (juce::FileBrowserComponent::saveMode | juce::FileBrowserComponent::canSelectFiles
                              | juce::FileBrowserComponent::warnAboutOverwriting,
                          [this] (const juce::FileChooser& c)
                          {
                              if (c.getResult() != juce::File()
                                  && bench.saveJob (c.getResult().withFileExtension ("json").getFullPathName().toStdString()))
                                  notice.say ("Saved " + c.getResult().getFileName() + ".");
                          });
}

void MainWindow::showStarter (const std::string& preset)
{
    showRewires (asRecorded);
    if (auto* list = dynamic_cast<RewireList*> (overlay.get()))
        list->showStarter (preset);
}

void MainWindow::openTake()
{
    chooser = std::make_unique<juce::FileChooser> ("Open a take", juce::File(), "*.wav;*.aif;*.aiff;*.flac");
    chooser->launchAsync (juce::FileBrowserComponent::openMode | juce::FileBrowserComponent::canSelectFiles,
                          [this] (const juce::FileChooser& c)
                          {
                              if (c.getResult() != juce::File() && bench.addTake (c.getResult().getFullPathName().toStdString()))
                                  takeCame (c.getResult().getFileName());
                          });
}

void MainWindow::takeCame (const juce::String& name)
{
    notice.say (name
                + " is the take now. Note where every control stood, and tick the strings it plays: that is what helps an "
                  "estimate most.");
}

void MainWindow::findTake (int take)
{
    const auto job = bench.job();
    if (take < 0 || take >= static_cast<int> (job->takes.size()))
        return openTake();
    const auto name = words::from (job->takes[static_cast<size_t> (take)].file.filename().string());
    chooser = std::make_unique<juce::FileChooser> ("Where is " + name + " now?", juce::File(), "*.wav;*.aif;*.aiff;*.flac");
    chooser->launchAsync (
        juce::FileBrowserComponent::openMode | juce::FileBrowserComponent::canSelectFiles,
        [this, take] (const juce::FileChooser& c)
        {
            if (c.getResult() != juce::File() && relinkTake (bench, take, c.getResult().getFullPathName().toStdString()))
                notice.say (c.getResult().getFileName() + " is found. Its setting and strings are as they were.");
        });
}

void MainWindow::viewMenu()
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
    if (onSoundDevice)
        menu.addItem (6, "Sound device");
    const juce::Component::SafePointer<MainWindow> self (this);
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
                            else if (choice == 6)
                                self->onSoundDevice();
                            else if (self->onScale)
                                self->onScale (static_cast<float> (choice) / 100.0f);
                        });
}
}
