#include "editor/FirstMinutes.h"

#include "editor/FirstLine.h"
#include "editor/JobFiles.h"
#include "editor/Sheets.h"
#include "session/Session.h"

namespace coldiron
{
FirstMinutes::FirstMinutes (UiContext& d, juce::Component& over, Sheets& s, JobFiles& f)
    : ui (d), window (over), sheets (s), files (f)
{
}

FirstMinutes::~FirstMinutes() = default;

MainView FirstMinutes::view() const { return sightOf (ui.session, sheets.isWiring(), guitarPicked); }

void FirstMinutes::start()
{
    auto& editor = ui.session.jobEditor;
    if (! ui.inHost && editor.file().empty() && ! editor.isChanged() && editor.job()->takes.empty())
        if (const auto demo = demoJob (editor.presets()); ! demo.empty() && editor.open (demo))
            ui.session.transport.play();
    shown = std::make_unique<FirstLine> (ui, ui.inHost);
    shown->onAct = [this] (FirstSteps::Step step)
    {
        switch (step)
        {
        case FirstSteps::Step::openDrawing: return sheets.showWiring (true);
        case FirstSteps::Step::pickGuitar: return sheets.showGuitars();
        case FirstSteps::Step::typeOhms: return sheets.showTakeIn (true);
        case FirstSteps::Step::dropTake: return files.openTake();
        case FirstSteps::Step::starterSet: return sheets.showRewires (asRecorded);
        default: return;
        }
    };
    shown->onEnd = [this] { end(); };
    shown->start (view());
    window.addAndMakeVisible (*shown);
    onPlace();
}

void FirstMinutes::tick()
{
    if (shown != nullptr)
        shown->see (view());
}

void FirstMinutes::place (juce::Rectangle<int> area)
{
    if (shown != nullptr)
        shown->setBounds (area);
}

/** The line may be the one that asked, so it goes later. */
void FirstMinutes::end()
{
    juce::MessageManager::callAsync (
        [this, alive = juce::Component::SafePointer<juce::Component> (&window)]
        {
            if (alive == nullptr || shown == nullptr)
                return;
            shown.reset();
            onPlace();
            window.repaint();
            if (onEnd)
                onEnd();
        });
}
}
