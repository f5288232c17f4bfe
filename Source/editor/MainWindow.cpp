#include "editor/MainWindow.h"

#include "session/Session.h"
#include "session/UnsavedWork.h"

namespace coldiron
{
MainWindow::MainWindow (Session& s, bool inHost)
    : session (s), ui (s), files (ui, *this), sheet (ui, *this, drawings, files), menu (ui, files, sheet), header (ui),
      waveform (ui), strip (ui), listen (ui, inHost), plot (ui), decide (ui), guitar (ui, drawings), blind (ui, listen, waveform),
      notice (ui), first (ui, *this, sheet, files)
{
    ui.inHost = inHost;
    lookAndFeel.use (ui.colours());
    setLookAndFeel (&lookAndFeel);
    setWantsKeyboardFocus (true);
    setFocusContainerType (FocusContainerType::keyboardFocusContainer);

    setTitle ("Coldiron");
    addInOrder (*this, { &header, &waveform, &strip, &listen, &plot, &decide, &guitar }); // the order of the job
    for (auto* hidden : std::initializer_list<juce::Component*> { &blind.tags, &blind.bar, &blind.page, &notice })
        addChildComponent (hidden);
    wire();
    tips = std::make_unique<juce::TooltipWindow> (this, 600);

    seen = session.revisions();
    auto none = seen;
    none.job = none.transport = none.heard = none.settings = none.reports = seen.job - 1;
    for (auto* panel : panels())
        panel->sessionChanged (none, seen);
    startTimerHz (30);
}

MainWindow::~MainWindow()
{
    stopTimer();
    sheet.close(); // keeps what was typed
    unsaved.reset();
    setLookAndFeel (nullptr);
}

std::array<Panel*, 11> MainWindow::panels()
{
    return { &header, &waveform, &strip, &listen, &plot, &decide, &guitar, &blind.tags, &blind.bar, &blind.page, &notice };
}

/** What one part asks of another. */
void MainWindow::wire()
{
    header.job.onClick = [this] { menu.show (header.job); };
    header.save.onClick = [this] { files.saveJob(); };
    header.guitar.onClick = [this] { showGuitar (! guitarOut); };
    header.blindTest.onClick = [this] { showBlindSetup(); };
    header.view.onClick = [this] { viewMenu(); };
    guitar.onOpenWiring = [this] { sheet.showWiring (true); };
    guitar.onTakeIn = [this] { sheet.showTakeIn (true); };
    decide.onSweep = [this] (const juce::String& knob) { plot.showSweep (knob); };
    drawings.onReady = [this]
    {
        guitar.drawingReady();
        if (auto* over = sheet.top())
            over->repaint();
    };
    sheet.onPlace = [this] { resized(); };
    sheet.onGuitarPicked = [this] { first.noteGuitarPicked(); };
    first.onPlace = [this] { resized(); };
    sheet.onBlindTest = [this] { beginBlind(); };
    blind.onChange = [this]
    {
        refresh();
        showBlind();
    };
    notice.onChange = [this] { placeNotice(); };
    ui.addRewireTo = [this] (OptionId id) { sheet.showRewires (id); };
    ui.rename = [this] (OptionId id) { strip.rename (id); };
    ui.openTakeFile = [this] { files.openTake(); };
    ui.findTakeFile = [this] (int take) { files.findTake (take); };
    ui.openNotes = [this] { sheet.showNotes (true); };
    ui.openSound = [this] { sheet.toggleSound(); };
    ui.say = [this] (const juce::String& words, bool aloud) { notice.say (words, aloud); };
}

void MainWindow::setDark (bool dark)
{
    ui.tokens = dark ? &Tokens::dark() : &Tokens::light();
    lookAndFeel.use (ui.colours());
    sendLookAndFeelChange();
    repaint();
}

void MainWindow::refresh()
{
    const auto now = session.revisions();
    if (now == seen)
        return;
    const auto before = std::exchange (seen, now);
    for (auto* panel : panels())
        panel->sessionChanged (before, now);
    if (auto* over = sheet.top())
        over->sessionChanged (before, now);
    if (before.job != now.job)
        resized();
    else if (before.heard != now.heard)
        showBlind();
}

void MainWindow::timerCallback()
{
    refresh();
    waveform.tick();
    blind.tags.tick();
    listen.tick();
    notice.tick();
    first.tick();
    files.tick();
    if (unsaved != nullptr && ++ticksSinceKept >= 60) // every two seconds, and only after a change
    {
        ticksSinceKept = 0;
        unsaved->keep();
        if (const auto fault = unsaved->newFault(); ! fault.empty())
            notice.say (words::from ("Unsaved work cannot be kept: " + fault));
    }
}

void MainWindow::keepUnsavedIn (const std::filesystem::path& folder)
{
    unsaved = std::make_unique<UnsavedWork> (session, folder);
    if (auto left = unsaved->left(); ! left.empty())
        sheet.showRecover (*unsaved, std::move (left));
}

void MainWindow::paint (juce::Graphics& g) { g.fillAll (ui.colours().window); }

void MainWindow::resized()
{
    arranged = layout (getLocalBounds(), static_cast<int> (session.options.ids().size()), first.isShown());
    first.place (arranged.firstLine);
    header.guitar.setVisible (arranged.guitarFolded);
    header.setBounds (arranged.header);
    header.resized(); // also where a button came or went
    waveform.setBounds (arranged.take);
    const auto stripArea = arranged.options.withTop (arranged.take.getBottom() - 6).expanded (4, 0).withTrimmedBottom (-6);
    strip.setBounds (stripArea);
    auto tags = arranged.tags;
    for (auto& tag : tags)
        tag.translate (-stripArea.getX(), -stripArea.getY());
    strip.arrange (tags, { arranged.compactTags, arranged.lowTags });
    listen.setBounds (arranged.listen);
    plot.setBounds (arranged.look);
    decide.setBounds (arranged.decide);
    decide.setShowsSteps (arranged.stepsInDecide);
    showBlind();
    guitar.setBounds (arranged.guitar);
    guitar.setVisible (! arranged.guitarFolded || guitarOut);
    placeOverlay();
    placeNotice();
}

void MainWindow::placeOverlay()
{
    if (arranged.guitarFolded && guitarOut)
        guitar.toFront (false);
    if (auto* over = sheet.top())
    {
        const auto wanted = over->wants();
        over->setBounds (arranged.overlay.withSizeKeepingCentre (juce::jmin (wanted.x, arranged.overlay.getWidth()),
                                                                 juce::jmin (wanted.y, arranged.overlay.getHeight())));
        over->toFront (false);
    }
}

void MainWindow::placeNotice()
{
    const int width = juce::jmin (720, getWidth() - 64), height = notice.idealHeight (width);
    notice.setBounds ((getWidth() - width) / 2, getHeight() - height - 24, width, height);
    notice.toFront (false);
}

void MainWindow::showGuitar (bool out)
{
    guitarOut = out;
    resized();
}

void MainWindow::showBlindSetup()
{
    if (blind.isRunning())
        return;
    if (session.options.ids().empty())
        return notice.say ("It takes an option to judge. Press N for the first.");
    blind.page.close();
    sheet.showBlindSetup();
}

void MainWindow::beginBlind()
{
    sheet.close();
    guitarOut = false;
    blind.begin();
}

/** What is face down hides what would tell: tags, figures, curves, knobs, meters. */
void MainWindow::showBlind()
{
    const bool running = blind.isRunning();
    if (running && sheet.tells())
        sheet.close();
    strip.setVisible (! running);
    listen.setVisible (! running);
    plot.setVisible (! blind.isPageShown());
    decide.setVisible (! blind.isPageShown());
    header.blindTest.setEnabled (! running);
    blind.arrange (arranged, strip.getBounds());
    if (arranged.guitarFolded && guitarOut)
        guitar.toFront (false);
}

void MainWindow::filesDropped (const juce::StringArray& dropped, int x, int y)
{
    for (const auto& file : dropped)
    {
        if (sheet.takePickupFile (file, { x, y }))
            continue;
        if (file.endsWithIgnoreCase (".json"))
            files.openJob (file);
        else
            files.addTake (file);
    }
}
}
