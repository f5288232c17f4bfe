#include "editor/Sheets.h"

#include "editor/BlindSetup.h"
#include "editor/GuitarPictures.h"
#include "editor/JobFiles.h"
#include "editor/NotesSheet.h"
#include "editor/RecoverSheet.h"
#include "editor/RewireList.h"
#include "editor/SoundSheet.h"
#include "editor/TakeInSheet.h"
#include "editor/WiringView.h"
#include "editor/Words.h"
#include "session/Session.h"
#include "session/TypedOhms.h"
#include "session/UnsavedWork.h"

namespace coldiron
{
Sheets::Sheets (UiContext& d, juce::Component& over, DrawingCache& cache, JobFiles& f)
    : ui (d), window (over), drawings (cache), files (f)
{
}

Sheets::~Sheets() = default;

void Sheets::later (std::function<void()> then)
{
    juce::MessageManager::callAsync (
        [alive = juce::Component::SafePointer<juce::Component> (&window), then = std::move (then)]
        {
            if (alive != nullptr)
                then();
        });
}

void Sheets::show (std::unique_ptr<Overlay> next)
{
    close();
    overlay = std::move (next);
    overlay->onClose = [this] { later ([this] { close(); }); };
    window.addAndMakeVisible (*overlay);
    if (onPlace)
        onPlace();
    overlay->start();
}

void Sheets::close()
{
    if (overlay == nullptr)
        return;
    overlay.reset();
    if (window.isShowing())
        window.grabKeyboardFocus();
    window.repaint();
}

bool Sheets::isWiring() const { return dynamic_cast<WiringView*> (overlay.get()) != nullptr; }
bool Sheets::tells() const { return overlay != nullptr && dynamic_cast<KeySheet*> (overlay.get()) == nullptr; }

void Sheets::showWiring (bool on) { on ? show (std::make_unique<WiringView> (ui, drawings)) : close(); }
void Sheets::showSound (bool on) { on ? show (std::make_unique<SoundSheet> (ui, ui.inHost)) : close(); }
void Sheets::showKeys (bool on) { on ? show (std::make_unique<KeySheet> (ui, ui.inHost)) : close(); }
void Sheets::toggleSound() { showSound (dynamic_cast<SoundSheet*> (overlay.get()) == nullptr); }
void Sheets::toggleTakeIn() { showTakeIn (dynamic_cast<TakeInSheet*> (overlay.get()) == nullptr); }

void Sheets::showRewires (OptionId target)
{
    if (target == asRecorded && ui.session.options.ids().size() >= optionIds.size())
        return ui.tell ("All eight letters are taken. Remove an option first.");
    show (std::make_unique<RewireList> (ui, target));
}

void Sheets::showStarter (const std::string& preset)
{
    showRewires (asRecorded);
    if (auto* list = dynamic_cast<RewireList*> (overlay.get()))
        list->showStarter (preset);
}

void Sheets::showNotes (bool on)
{
    if (! on)
        return close();
    if (ui.session.blindTest.view().isRunning)
        return ui.tell ("Notes wait till the tags are turned over: they would tell the letter.");
    show (std::make_unique<NotesSheet> (ui, ui.session.monitor.heard()));
}

void Sheets::showRecover (UnsavedWork& unsaved, std::vector<Recovery> left)
{
    auto sheet = std::make_unique<RecoverSheet> (ui, std::move (left));
    sheet->onOpen = [this, &unsaved] (const Recovery& work)
    {
        if (unsaved.takeUp (work))
            ui.tell ("Open again, as it was left. Save it to keep it.");
    };
    show (std::move (sheet));
}

void Sheets::showBlindSetup()
{
    auto setup = std::make_unique<BlindSetup> (ui);
    setup->onStarted = [this]
    {
        later (
            [this]
            {
                if (onBlindTest)
                    onBlindTest();
            });
    };
    show (std::move (setup));
}

void Sheets::showTakeIn (bool on)
{
    if (! on)
        return close();
    if (ui.session.blindTest.view().isRunning)
        return; // a value would change what is judged
    auto sheet = std::make_unique<TakeInSheet> (ui);
    sheet->onPickupFile = [this] (const std::string& pickup) { files.openPickupFile (pickup); };
    sheet->onGuitars = [this] { showGuitars(); };
    show (std::move (sheet));
}

void Sheets::showGuitars()
{
    if (ui.session.blindTest.view().isRunning)
        return;
    const auto pick = [this] (const std::string& preset)
    {
        files.leaving (
            [this, preset]
            {
                if (! ui.session.jobEditor.newJob (preset))
                    return;
                if (onGuitarPicked)
                    onGuitarPicked();
                later ([this] { showTakeIn (true); });
            });
    };
    later (
        [this, pick]
        {
            auto sheet = std::make_unique<GuitarPictures> (ui);
            sheet->onChosen = pick;
            show (std::move (sheet));
        });
}

bool Sheets::takePickupFile (const juce::String& file, juce::Point<int> at)
{
    if (! isPickupFile (file.toStdString()))
        return false;
    std::vector<std::string> names;
    const auto job = ui.session.jobEditor.job();
    for (const auto& part : job->guitar.harness.parts())
        if (part.as<PickupPart>() != nullptr)
            names.push_back (part.name);
    std::string meant;
    if (auto* sheet = dynamic_cast<TakeInSheet*> (overlay.get()))
        meant = sheet->pickupAt (at - sheet->getPosition());
    if (meant.empty() && names.size() == 1)
        meant = names.front();
    if (! meant.empty())
        return (files.readPickupFile (meant, file), true);
    juce::PopupMenu menu;
    menu.setLookAndFeel (&window.getLookAndFeel());
    menu.addSectionHeader ("Which pickup was read?");
    for (size_t i = 0; i < names.size(); ++i)
        menu.addItem (static_cast<int> (i) + 1, words::title (names[i]));
    const juce::Component::SafePointer<juce::Component> alive (&window);
    menu.showMenuAsync (juce::PopupMenu::Options().withTargetComponent (&window),
                        [this, alive, names, file] (int choice)
                        {
                            if (alive != nullptr && choice > 0)
                                files.readPickupFile (names[static_cast<size_t> (choice) - 1], file);
                        });
    return true;
}
}
