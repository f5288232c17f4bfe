#pragma once

#include "editor/Look.h"

namespace coldiron
{
/** How it is listened to while the tags are face down: matched, always; turn over, or end without a result. */
class BlindBar : public Panel
{
public:
    explicit BlindBar (UiContext&);

    std::function<void()> onTurnOver, onStop;
    void sessionChanged (const Revisions& before, const Revisions& now) override;
    void paint (juce::Graphics&) override;
    void resized() override;

private:
    WordButton turn, stop;
    juce::Rectangle<int> words;
    juce::String level, hum, keys;

    juce::String inWords() const override { return "Level " + level + ". Mains hum " + hum + ". " + keys + "."; }
};
}
