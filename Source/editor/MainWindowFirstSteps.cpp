// The line of the first minutes.

#include "editor/MainWindow.h"

#include "session/Session.h"

namespace coldiron
{
MainView MainWindow::sight() const { return sightOf (session, sheet.isWiring(), guitarPicked); }

/** The demo is opened where nothing of the person's own is open yet: in the standalone, and only there. */
void MainWindow::startFirstSteps()
{
    if (! ui.inHost && session.jobEditor.file().empty() && ! session.jobEditor.isChanged()
        && session.jobEditor.job()->takes.empty())
        if (const auto demo = demoJob (session.jobEditor.presets()); ! demo.empty() && session.jobEditor.open (demo))
            session.transport.play();
    firstSteps = std::make_unique<FirstLine> (ui, ui.inHost);
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
    case FirstSteps::Step::openDrawing: return sheet.showWiring (true);
    case FirstSteps::Step::pickGuitar: return sheet.showGuitars();
    case FirstSteps::Step::typeOhms: return sheet.showTakeIn (true);
    case FirstSteps::Step::dropTake: return files.openTake();
    case FirstSteps::Step::starterSet: return sheet.showRewires (asRecorded);
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
            if (self->holder.onFirstStepsEnd)
                self->holder.onFirstStepsEnd();
        });
}
}
