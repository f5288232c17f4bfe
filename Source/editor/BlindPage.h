#pragma once

#include "editor/Look.h"
#include "session/BlindView.h"

namespace coldiron
{
/** What stands where plot and knobs are, while a blind test runs and after the tags were turned over. */
class BlindPage : public Panel
{
public:
    explicit BlindPage (UiContext&);

    std::function<void()> onClose;          ///< the result has been read
    void showOutcome (const BlindOutcome&); ///< stays until closed
    void close() { outcome.reset(); }
    bool hasOutcome() const { return outcome.has_value(); }

    void sessionChanged (const Revisions& before, const Revisions& now) override;
    void paint (juce::Graphics&) override;
    void resized() override;

private:
    BlindView view;
    std::optional<BlindOutcome> outcome;
    WordButton one, two, done;

    /** What is asked: a title, and two notes under it. */
    struct Question
    {
        juce::String title, first, second;
    };
    Question question() const;
    juce::String guessing() const; ///< of trials: what chance alone would do
    juce::String inWords() const override;
    void paintRunning (juce::Graphics&);
    void paintOutcome (juce::Graphics&);
};
}
