#include "editor/MainWindow.h"

#include "editor/JobWords.h"
#include "editor/NotesSheet.h"
#include "editor/RecoverSheet.h"

namespace coldiron
{
MainWindow::MainWindow (Bench& b, bool host)
    : bench (b), inHost (host), ui (b), openButton (ui, "Job"), saveButton (ui, "Save"), undoButton (ui, "Undo"),
      redoButton (ui, "Redo"), guitarButton (ui, "Guitar"), viewButton (ui, "View"), blindButton (ui, "Blind test"),
      waveform (ui), strip (ui), listen (ui, host), plot (ui), decide (ui), guitar (ui, drawings), notice (ui), blindTags (ui),
      blindBar (ui), blindPage (ui)
{
    lookAndFeel.use (ui.colours());
    setLookAndFeel (&lookAndFeel);
    setWantsKeyboardFocus (true);
    setFocusContainerType (FocusContainerType::keyboardFocusContainer);

    // In the order of the job, which is the order of the Tab key.
    for (auto* child : std::initializer_list<juce::Component*> { &openButton, &saveButton, &undoButton, &redoButton,
                                                                 &guitarButton, &blindButton, &viewButton, &waveform, &strip,
                                                                 &listen, &plot, &decide, &guitar })
        addAndMakeVisible (child);
    for (auto* hidden : std::initializer_list<juce::Component*> { &blindTags, &blindBar, &blindPage, &notice })
        addChildComponent (hidden);

    openButton.onClick = [this] { jobMenu(); };
    saveButton.onClick = [this] { saveJob(); };
    undoButton.onClick = [this] { bench.undo(); };
    redoButton.onClick = [this] { bench.redo(); };
    guitarButton.onClick = [this] { showGuitar (! guitarOut); };
    setUpBlind();
    viewButton.onClick = [this] { viewMenu(); };
    guitar.onOpenWiring = [this] { showWiring (true); };
    guitar.onTakeIn = [this] { showTakeIn (true); };
    decide.onSweep = [this] (const juce::String& knob) { plot.showSweep (knob); };
    drawings.onReady = [this]
    {
        guitar.drawingReady();
        if (overlay != nullptr)
            overlay->repaint();
    };
    ui.addRewireTo = [this] (OptionId id) { showRewires (id); };
    ui.rename = [this] (OptionId id) { strip.rename (id); };
    ui.inHost = host;
    ui.openTakeFile = [this] { openTake(); };
    ui.findTakeFile = [this] (int take) { findTake (take); };
    ui.openNotes = [this] { showNotes (true); };
    ui.openSound = [this] { showSound (dynamic_cast<SoundSheet*> (overlay.get()) == nullptr); };
    ui.say = [this] (const juce::String& words) { notice.say (words); };
    notice.onChange = [this] { placeNotice(); };
    tips = std::make_unique<juce::TooltipWindow> (this, 600);

    seen = bench.revisions();
    auto none = seen;
    none.job = none.transport = none.heard = none.settings = none.reports = seen.job - 1;
    for (auto* panel : std::initializer_list<Panel*> { &waveform, &strip, &listen, &plot, &decide, &guitar, &blindTags, &blindBar,
                                                       &blindPage, &notice })
        panel->benchChanged (none, seen);
    client = jobwords::client (bench);
    showUndo();
    startTimerHz (30);
}

MainWindow::~MainWindow()
{
    stopTimer();
    closeOverlay(); // keeps what was typed
    if (autosave != nullptr && (inHost || ! bench.isChanged()))
        autosave->drop(); // a host keeps the job itself
    else
        keepUnsaved();
    setLookAndFeel (nullptr);
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
    const auto now = bench.revisions();
    if (now == seen)
        return;
    const auto before = seen;
    seen = now;
    if (before.job != now.job)
    {
        client = jobwords::client (bench);
        for (auto* button : { &undoButton, &redoButton, &saveButton })
            button->repaint();
    }
    for (auto* panel : std::initializer_list<Panel*> { &waveform, &strip, &listen, &plot, &decide, &guitar, &blindTags, &blindBar,
                                                       &blindPage, &notice })
        panel->benchChanged (before, now);
    if (overlay != nullptr)
        overlay->benchChanged (before, now);
    if (before.job != now.job)
        resized();
    else if (before.heard != now.heard)
        showBlind();
    showUndo();
    repaint (arranged.header);
}

void MainWindow::showUndo()
{
    const bool blind = bench.blind().isRunning; // what could be undone would change what is judged
    undoButton.setEnabled (! blind && ! bench.undoName().empty());
    redoButton.setEnabled (! blind && ! bench.redoName().empty());
    undoButton.setTooltip (bench.undoName().empty() ? "Nothing to undo" : "Undo: " + words::from (bench.undoName()));
    redoButton.setTooltip (bench.redoName().empty() ? "Nothing to redo" : "Redo: " + words::from (bench.redoName()));
}

void MainWindow::timerCallback()
{
    refresh();
    waveform.tick();
    blindTags.tick();
    listen.tick();
    notice.tick();
    if (firstSteps != nullptr)
        firstSteps->see (sight());
    followExport();
    noteJobFile();
    if (autosave != nullptr && ++ticksSinceKept >= 60) // every two seconds, and only after a change
        keepUnsaved();
}

void MainWindow::paint (juce::Graphics& g)
{
    const auto& t = ui.colours();
    g.fillAll (t.window);
    auto head = arranged.header.reduced (16, 0);

    // The mark: a tag on its side, with an eyelet and a joint.
    const auto middle = static_cast<float> (head.getCentreY());
    const auto x = static_cast<float> (head.getX());
    juce::Path mark;
    mark.startNewSubPath (x, middle - 7);
    mark.lineTo (x + 6, middle - 13);
    mark.lineTo (x + 31, middle - 13);
    mark.lineTo (x + 31, middle + 13);
    mark.lineTo (x + 6, middle + 13);
    mark.lineTo (x, middle + 7);
    mark.closeSubPath();
    g.setColour (t.ink);
    g.fillPath (mark);
    g.setColour (t.window);
    g.fillEllipse (x + 6, middle - 3, 6.0f, 6.0f);
    g.fillRect (x + 14, middle - 1.5f, 12.0f, 3.0f);
    head.removeFromLeft (42);

    g.setColour (t.ink);
    const auto name = type::name (21.0f);
    g.setFont (name);
    type::draw (g, "Coldiron", head, juce::Justification::centredLeft, false);
    head.removeFromLeft (juce::roundToInt (type::width (name, "Coldiron")) + 10);
    g.setColour (t.line);
    g.fillRect (head.getX(), head.getCentreY() - 12, 1, 24);
    head.removeFromLeft (14);
    head.setRight (titleArea.getRight());

    g.setColour (t.ink);
    const auto bold = type::bold (15.0f);
    g.setFont (bold);
    const auto title =
        words::from (bench.job()->title) + (bench.isChanged() ? juce::String::fromUTF8 (" \xe2\x80\xa2") : juce::String());
    type::draw (g, title, head, juce::Justification::centredLeft, true);
    head.removeFromLeft (juce::roundToInt (type::width (bold, title)) + 14);
    if (client.isNotEmpty() && head.getWidth() > 120)
    {
        g.setColour (t.mute);
        g.setFont (type::italic (14.0f));
        type::draw (g, juce::String::fromUTF8 ("\xe2\x80\x9c") + client + juce::String::fromUTF8 ("\xe2\x80\x9d"), head,
                    juce::Justification::centredLeft, true);
    }
}

void MainWindow::resized()
{
    arranged = layout (getLocalBounds(), static_cast<int> (bench.ids().size()), firstSteps != nullptr);
    if (firstSteps != nullptr)
        firstSteps->setBounds (arranged.firstLine);
    auto head = arranged.header.reduced (16, 0).withTrimmedTop (arranged.header.getHeight() / 2 - 17).withHeight (34);
    guitarButton.setVisible (arranged.guitarFolded);
    for (auto* button : std::initializer_list<WordButton*> { &viewButton, &blindButton, &redoButton, &undoButton, &saveButton,
                                                             &openButton, &guitarButton })
    {
        if (! button->isVisible())
            continue;
        button->setBounds (head.removeFromRight (button->idealWidth()));
        head.removeFromRight (6);
    }
    titleArea = head;
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
    if (arranged.guitarFolded && guitarOut)
        guitar.toFront (false);
    if (overlay != nullptr)
    {
        const auto wanted = overlay->wants();
        overlay->setBounds (arranged.overlay.withSizeKeepingCentre (juce::jmin (wanted.x, arranged.overlay.getWidth()),
                                                                    juce::jmin (wanted.y, arranged.overlay.getHeight())));
        overlay->toFront (false);
    }
    placeNotice();
}

void MainWindow::placeNotice()
{
    const int width = juce::jmin (720, getWidth() - 64), height = notice.idealHeight (width);
    notice.setBounds ((getWidth() - width) / 2, getHeight() - height - 24, width, height);
    notice.toFront (false);
}

void MainWindow::show (std::unique_ptr<Overlay> next)
{
    closeOverlay();
    overlay = std::move (next);
    const juce::Component::SafePointer<MainWindow> self (this);
    overlay->onClose = [self]
    {
        juce::MessageManager::callAsync (
            [self]
            {
                if (self != nullptr)
                    self->closeOverlay();
            });
    };
    addAndMakeVisible (*overlay);
    resized();
    overlay->start();
}

void MainWindow::closeOverlay()
{
    if (overlay == nullptr)
        return;
    overlay.reset();
    if (isShowing())
        grabKeyboardFocus();
    repaint();
}

void MainWindow::showWiring (bool on) { on ? show (std::make_unique<WiringView> (ui, drawings)) : closeOverlay(); }
void MainWindow::showSound (bool on) { on ? show (std::make_unique<SoundSheet> (ui, inHost)) : closeOverlay(); }
void MainWindow::showKeys (bool on) { on ? show (std::make_unique<KeySheet> (ui, inHost)) : closeOverlay(); }

void MainWindow::showRewires (OptionId target)
{
    if (target == asRecorded && bench.ids().size() >= 8)
        return notice.say ("All eight letters are taken. Remove an option first.");
    auto list = std::make_unique<RewireList> (ui, target);
    show (std::move (list));
}

void MainWindow::showNotes (bool on)
{
    if (! on)
        return closeOverlay();
    if (bench.blind().isRunning)
        return notice.say ("Notes wait till the tags are turned over: they would tell the letter.");
    auto sheet = std::make_unique<NotesSheet> (ui, bench.heard());
    show (std::move (sheet));
}

void MainWindow::showRecover (std::vector<Recovery> left)
{
    auto sheet = std::make_unique<RecoverSheet> (ui, std::move (left));
    sheet->onOpen = [this] (const Recovery& work) { takeUp (work); };
    show (std::move (sheet));
}

void MainWindow::showGuitar (bool out)
{
    guitarOut = out;
    resized();
}

bool MainWindow::letterPressed (OptionId id, bool hold)
{
    const auto ids = bench.ids();
    if (id != asRecorded && std::find (ids.begin(), ids.end(), id) == ids.end())
        return false;
    if (hold && ! comparedFrom)
        comparedFrom = bench.heard();
    bench.hear (id);
    return true;
}

bool MainWindow::keyPressed (const juce::KeyPress& key)
{
    const auto mods = key.getModifiers();
    if (mods.isCommandDown())
    {
        switch (key.getKeyCode())
        {
        case 'B':
        case 'b': showBlindSetup(); return true;
        case 'Z':
        case 'z':
            if (bench.blind().isRunning)
                return true;
            return mods.isShiftDown() ? (bench.redo(), true) : (bench.undo(), true);
        case 'Y':
        case 'y':
            if (! bench.blind().isRunning)
                bench.redo();
            return true;
        case 'S':
        case 's': saveJob(); return true;
        case 'O':
        case 'o': openJob(); return true;
        default: return false;
        }
    }
    if (key == juce::KeyPress::F1Key)
        return (showKeys (true), true);
    if (key == juce::KeyPress::escapeKey && overlay != nullptr)
        return (closeOverlay(), true);
    if (key == juce::KeyPress::escapeKey && guitarOut)
        return (showGuitar (false), true);
    if (key == juce::KeyPress::spaceKey && ! inHost)
        return (waveform.togglePlay(), true);
    if (blindKey (key))
        return true;
    if (key == juce::KeyPress::leftKey || key == juce::KeyPress::rightKey)
        return (strip.hearNext (key == juce::KeyPress::leftKey ? -1 : 1), true);

    const auto c =
        static_cast<juce::juce_wchar> (juce::CharacterFunctions::toUpperCase (static_cast<juce::juce_wchar> (key.getKeyCode())));
    if (c >= 'A' && c <= 'H')
    {
        compareKey = key.getKeyCode();
        return letterPressed (optionAt (static_cast<int> (c - 'A') + 1), mods.isShiftDown());
    }
    switch (c)
    {
    case '0': return letterPressed (asRecorded, false);
    case 'M': listen.toggleMatched(); return true;
    case 'R': listen.hum().flip(); return true;
    case '[': listen.hum().step (-2.0); return true;
    case ']': listen.hum().step (2.0); return true;
    case 'L': waveform.toggleLoop(); return true;
    case 'I': waveform.setLoopEndHere (false); return true;
    case 'O': waveform.setLoopEndHere (true); return true;
    case 'T': waveform.nextTake(); return true;
    case 'K': decide.focusFirstKnob(); return true;
    case 'S': showSound (dynamic_cast<SoundSheet*> (overlay.get()) == nullptr); return true;
    case 'W': showWiring (dynamic_cast<WiringView*> (overlay.get()) == nullptr); return true;
    case 'U': showTakeIn (dynamic_cast<TakeInSheet*> (overlay.get()) == nullptr); return true;
    case 'V':
        showGuitar (arranged.guitarFolded);
        guitar.focusFirstValue();
        return true;
    case 'J': showNotes (true); return true;
    case 'N': showRewires (asRecorded); return true;
    case 'P':
        if (bench.heard() != asRecorded)
            showRewires (bench.heard());
        return true;
    default: return false;
    }
}

bool MainWindow::keyStateChanged (bool)
{
    if (comparedFrom && ! juce::KeyPress::isKeyCurrentlyDown (compareKey))
    {
        bench.hear (*comparedFrom);
        comparedFrom.reset();
        return true;
    }
    return false;
}

bool MainWindow::isInterestedInFileDrag (const juce::StringArray&) { return true; }

void MainWindow::filesDropped (const juce::StringArray& files, int x, int y)
{
    for (const auto& file : files)
    {
        if (takePickupFile (file, { x, y }))
            continue;
        if (file.endsWithIgnoreCase (".json"))
            leaving ([this, path = file.toStdString()] { bench.openJob (path); });
        else if (bench.addTake (file.toStdString()))
            takeCame (juce::File (file).getFileName());
    }
}
}
