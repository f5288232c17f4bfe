#include "editor/BlindStage.h"

#include "editor/ListenBar.h"
#include "editor/WaveformView.h"
#include "session/Session.h"

namespace coldiron
{
BlindStage::BlindStage (UiContext& d, ListenBar& hum, WaveformView& loop)
    : tags (d), bar (d), page (d), ui (d), listen (hum), waveform (loop)
{
    bar.onTurnOver = [this] { turnOver(); };
    bar.onStop = [this] { ui.session.blindTest.stop(); };
    page.onClose = [this]
    {
        page.close();
        changed();
    };
}

void BlindStage::changed() const
{
    if (onChange)
        onChange();
}

bool BlindStage::isRunning() const { return ui.session.blindTest.view().isRunning; }

void BlindStage::begin()
{
    wantsToStop = false;
    page.close();
    tags.startTurning();
    const auto picture = ui.session.takes.picture();
    if (! ui.session.transport.isPlaying() && picture != nullptr && picture->fault.empty())
        ui.session.transport.play();
    changed();
}

void BlindStage::arrange (const MainLayout& places, juce::Rectangle<int> strips)
{
    const bool running = isRunning();
    tags.setVisible (running);
    bar.setVisible (running);
    page.setVisible (running || page.hasOutcome());
    tags.setBounds (strips);
    tags.arrange (places.options.translated (-strips.getX(), -strips.getY()),
                  places.tags.empty() ? 145 : places.tags.front().getWidth(), places.lowTags);
    bar.setBounds (places.listen);
    page.setBounds (places.look.getUnion (places.decide));
}

void BlindStage::turnOver()
{
    const auto view = ui.session.blindTest.view();
    if (! view.isRunning)
        return;
    if (! view.canTurnOver)
    {
        juce::StringArray missing;
        for (size_t i = 0; i < view.places.size(); ++i)
            if (! view.places[i])
                missing.add (juce::String (static_cast<int> (i) + 1));
        return ui.tell (view.kind == BlindView::Kind::abx ? juce::String (view.trials - view.answered) + " trials are left."
                                                          : missing.joinIntoString (", ") + (missing.size() == 1 ? " is" : " are")
                                                                + " not ranked yet. Hear it, then Up or Down.");
    }
    if (const auto outcome = ui.session.blindTest.reveal (juce::Time::getCurrentTime().formatted ("%Y-%m-%d").toStdString()))
        page.showOutcome (*outcome);
    changed();
}

bool BlindStage::keyPressed (const juce::KeyPress& key)
{
    const auto view = ui.session.blindTest.view();
    if (! view.isRunning)
        return false;
    const bool abx = view.kind == BlindView::Kind::abx;
    if (key != juce::KeyPress::escapeKey)
        wantsToStop = false;
    if (key == juce::KeyPress::escapeKey)
    {
        if (wantsToStop)
            ui.session.blindTest.stop();
        else
            ui.tell ("Escape once more ends the test without a result.");
        wantsToStop = ! wantsToStop;
    }
    else if (key == juce::KeyPress::returnKey)
        turnOver();
    else if (key == juce::KeyPress::leftKey || key == juce::KeyPress::rightKey)
    {
        const int way = key == juce::KeyPress::leftKey ? -1 : 1;
        if (! abx)
            ui.session.blindTest.hear (view.heard + way);
        else if (view.canAnswer)
            ui.session.blindTest.answer (way < 0 ? 1 : 2);
        else
            ui.tell ("Hear X first.");
    }
    else if (key == juce::KeyPress::upKey || key == juce::KeyPress::downKey)
        ui.session.blindTest.rank (view.heard, key == juce::KeyPress::upKey ? RankMove::up : RankMove::down);
    else
    {
        const int code = key.getKeyCode();
        if (code >= '1' && code <= '9')
            ui.session.blindTest.hear (code - '0');
        else if (code >= juce::KeyPress::numberPad1 && code <= juce::KeyPress::numberPad9)
            ui.session.blindTest.hear (code - juce::KeyPress::numberPad1 + 1);
        else if (abx && (code == 'X' || code == 'x'))
            ui.session.blindTest.hear (3);
        else if (code == '=')
            ui.session.blindTest.rank (view.heard, RankMove::tie);
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
