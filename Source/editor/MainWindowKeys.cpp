// The keys of the window.

#include "editor/MainWindow.h"

#include "session/Session.h"

namespace coldiron
{
bool MainWindow::letterPressed (OptionId id, int keyCode, bool hold)
{
    if (comparing)
        comparing->keyCode = keyCode;
    const auto ids = session.options.ids();
    if (id != asRecorded && std::find (ids.begin(), ids.end(), id) == ids.end())
        return false;
    if (hold && ! comparing)
        comparing = Comparing { session.monitor.heard(), keyCode };
    session.monitor.hear (id);
    return true;
}

/** With Ctrl, or the command key. */
bool MainWindow::commandKey (const juce::KeyPress& key)
{
    const bool blindRuns = blind.isRunning(); // what could be undone would change what is judged
    switch (key.getKeyCode())
    {
    case 'B':
    case 'b': showBlindSetup(); return true;
    case 'Z':
    case 'z':
        if (! blindRuns)
            key.getModifiers().isShiftDown() ? session.jobEditor.redo() : session.jobEditor.undo();
        return true;
    case 'Y':
    case 'y':
        if (! blindRuns)
            session.jobEditor.redo();
        return true;
    case 'S':
    case 's': files.saveJob(); return true;
    case 'O':
    case 'o': files.openJob(); return true;
    default: return false;
    }
}

bool MainWindow::keyPressed (const juce::KeyPress& key)
{
    const auto mods = key.getModifiers();
    if (mods.isCommandDown())
        return commandKey (key);
    if (key == juce::KeyPress::F1Key)
        return (sheet.showKeys (true), true);
    if (key == juce::KeyPress::escapeKey && sheet.top() != nullptr)
        return (sheet.close(), true);
    if (key == juce::KeyPress::escapeKey && guitarOut)
        return (showGuitar (false), true);
    if (key == juce::KeyPress::spaceKey && ! ui.inHost)
        return (waveform.togglePlay(), true);
    if (blind.keyPressed (key))
        return true;
    if (key == juce::KeyPress::leftKey || key == juce::KeyPress::rightKey)
        return (strip.hearNext (key == juce::KeyPress::leftKey ? -1 : 1), true);

    const auto c =
        static_cast<juce::juce_wchar> (juce::CharacterFunctions::toUpperCase (static_cast<juce::juce_wchar> (key.getKeyCode())));
    if (c >= 'A' && c <= 'H')
        return letterPressed (optionAt (static_cast<int> (c - 'A') + 1), key.getKeyCode(), mods.isShiftDown());
    switch (c)
    {
    case '0': return (session.monitor.hear (asRecorded), true);
    case 'M': listen.toggleMatched(); return true;
    case 'R': listen.hum().flip(); return true;
    case '[': listen.hum().step (-2.0); return true;
    case ']': listen.hum().step (2.0); return true;
    case 'L': waveform.toggleLoop(); return true;
    case 'I': waveform.setLoopEndHere (false); return true;
    case 'O': waveform.setLoopEndHere (true); return true;
    case 'T': waveform.nextTake(); return true;
    case 'K': decide.focusFirstKnob(); return true;
    case 'S': sheet.toggleSound(); return true;
    case 'W': sheet.toggleWiring(); return true;
    case 'U': sheet.toggleTakeIn(); return true;
    case 'V':
        showGuitar (arranged.guitarFolded);
        guitar.focusFirstValue();
        return true;
    case 'J': sheet.showNotes (true); return true;
    case 'N': sheet.showRewires (asRecorded); return true;
    case 'P':
        if (session.monitor.heard() != asRecorded)
            sheet.showRewires (session.monitor.heard());
        return true;
    default: return false;
    }
}

bool MainWindow::keyStateChanged (bool)
{
    if (comparing && ! juce::KeyPress::isKeyCurrentlyDown (comparing->keyCode))
    {
        session.monitor.hear (comparing->from);
        comparing.reset();
        return true;
    }
    return false;
}
}
