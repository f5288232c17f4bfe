#pragma once

#include "editor/Look.h"
#include "editor/UiContext.h"
#include "editor/Words.h"
#include "session/FirstSteps.h"

namespace coldiron
{
/** The line of the first minutes, at the foot of the window, with a button that does what it says where there is one. */
class FirstLine : public Panel
{
public:
    FirstLine (UiContext&, bool inHost);

    std::function<void (FirstSteps::Step)> onAct;
    std::function<void()> onEnd; ///< done, or not wanted

    void start (const MainView&);
    void see (const MainView&);
    const FirstSteps* steps() const { return line.get(); }
    WordButton& actButton() { return act; }

    void sessionChanged (const Revisions&, const Revisions&) override {}
    void paint (juce::Graphics&) override;
    void resized() override;

private:
    const bool inHost;
    std::unique_ptr<FirstSteps> line;
    WordButton act, goOn, enough;

    void refresh();
    juce::String inWords() const override { return line != nullptr ? words::from (line->words (inHost)) : juce::String(); }
};
}
