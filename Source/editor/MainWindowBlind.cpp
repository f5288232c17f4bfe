// The window while tags are face down.

#include "editor/MainWindow.h"

namespace coldiron
{
void MainWindow::setUpBlind()
{
    blindBar.onTurnOver = [this] { turnTagsOver(); };
    blindBar.onStop = [this] { bench.stopBlind(); };
    blindPage.onClose = [this]
    {
        blindPage.close();
        showBlind();
    };
    blindButton.setTooltip ("Judge by ear alone: rank the options, or see whether a difference can be heard at all (Ctrl B).");
    blindButton.onClick = [this] { showBlindSetup(); };
}

void MainWindow::showBlindSetup()
{
    if (bench.blind().isRunning)
        return;
    if (bench.ids().empty())
        return notice.say ("It takes an option to judge. Press N for the first.");
    blindPage.close();
    auto setup = std::make_unique<BlindSetup> (ui);
    setup->onStarted = [this]
    {
        const juce::Component::SafePointer<MainWindow> self (this);
        juce::MessageManager::callAsync (
            [self]
            {
                if (self != nullptr)
                    self->beginBlind();
            });
    };
    show (std::move (setup));
}

void MainWindow::beginBlind()
{
    closeOverlay();
    guitarOut = false;
    wantsToStop = false;
    blindPage.close();
    blindTags.startTurning();
    const auto picture = bench.takePicture();
    if (! bench.isPlaying() && picture != nullptr && picture->fault.empty())
        bench.play();
    refresh();
    showBlind();
}

/** What is face down hides what would tell: tags, figures, curves, knobs, meters. */
void MainWindow::showBlind()
{
    const bool running = bench.blind().isRunning, page = running || blindPage.hasOutcome();
    if (running && overlay != nullptr && dynamic_cast<KeySheet*> (overlay.get()) == nullptr)
        closeOverlay();
    strip.setVisible (! running);
    listen.setVisible (! running);
    blindTags.setVisible (running);
    blindBar.setVisible (running);
    plot.setVisible (! page);
    decide.setVisible (! page);
    blindPage.setVisible (page);
    blindButton.setEnabled (! running);
    const auto strips = strip.getBounds();
    blindTags.setBounds (strips);
    blindTags.arrange (arranged.options.translated (-strips.getX(), -strips.getY()),
                       arranged.tags.empty() ? 145 : arranged.tags.front().getWidth(), arranged.lowTags);
    blindBar.setBounds (arranged.listen);
    blindPage.setBounds (arranged.look.getUnion (arranged.decide));
    if (arranged.guitarFolded && guitarOut)
        guitar.toFront (false);
}

void MainWindow::turnTagsOver()
{
    const auto view = bench.blind();
    if (! view.isRunning)
        return;
    if (! view.canTurnOver)
    {
        juce::StringArray missing;
        for (size_t i = 0; i < view.places.size(); ++i)
            if (! view.places[i])
                missing.add (juce::String (static_cast<int> (i) + 1));
        return notice.say (view.kind == BlindView::Kind::abx
                               ? juce::String (view.trials - view.answered) + " trials are left."
                               : missing.joinIntoString (", ") + (missing.size() == 1 ? " is" : " are")
                                     + " not ranked yet. Hear it, then Up or Down.");
    }
    if (const auto outcome = bench.reveal (juce::Time::getCurrentTime().formatted ("%Y-%m-%d").toStdString()))
        blindPage.showOutcome (*outcome);
    refresh();
    showBlind();
}

/** @returns whether a test runs: then every key is its own, and none may tell what is behind a number */
bool MainWindow::blindKey (const juce::KeyPress& key)
{
    const auto view = bench.blind();
    if (! view.isRunning)
        return false;
    const bool abx = view.kind == BlindView::Kind::abx;
    if (key != juce::KeyPress::escapeKey)
        wantsToStop = false;
    if (key == juce::KeyPress::escapeKey)
    {
        if (wantsToStop)
            bench.stopBlind();
        else
            notice.say ("Escape once more ends the test without a result.");
        wantsToStop = ! wantsToStop;
    }
    else if (key == juce::KeyPress::returnKey)
        turnTagsOver();
    else if (key == juce::KeyPress::leftKey || key == juce::KeyPress::rightKey)
    {
        const int way = key == juce::KeyPress::leftKey ? -1 : 1;
        if (! abx)
            bench.hearBlind (view.heard + way);
        else if (view.canAnswer)
            bench.answerBlind (way < 0 ? 1 : 2);
        else
            notice.say ("Hear X first.");
    }
    else if (key == juce::KeyPress::upKey || key == juce::KeyPress::downKey)
        bench.rankBlind (view.heard, key == juce::KeyPress::upKey ? RankMove::up : RankMove::down);
    else
    {
        const int code = key.getKeyCode();
        if (code >= '1' && code <= '9')
            bench.hearBlind (code - '0');
        else if (code >= juce::KeyPress::numberPad1 && code <= juce::KeyPress::numberPad9)
            bench.hearBlind (code - juce::KeyPress::numberPad1 + 1);
        else if (abx && (code == 'X' || code == 'x'))
            bench.hearBlind (3);
        else if (code == '=')
            bench.rankBlind (view.heard, RankMove::tie);
        else if (code == 'R' || code == 'r')
            listen.hum().flip();
        else if (code == '[' || code == ']')
            listen.hum().step (code == '[' ? -2.0 : 2.0);
        else if (code == 'L' || code == 'l')
            waveform.toggleLoop();
    }
    return true;
}
}
