#pragma once

#include "editor/Overlays.h"
#include "session/Autosave.h"

namespace coldiron
{
/** Work that an earlier run left unsaved: open it, leave it for later, or throw it away. */
class RecoverSheet : public Overlay
{
public:
    RecoverSheet (UiContext&, std::vector<Recovery>);

    std::function<void (const Recovery&)> onOpen;
    void start() override { openIt.grabKeyboardFocus(); }
    void paint (juce::Graphics&) override;
    void resized() override;
    juce::Point<int> wants() const override { return { 620, 230 }; }

private:
    std::vector<Recovery> left;
    size_t shown = 0;
    WordButton openIt, discard, later;

    void next();
    juce::String titleWords() const;
    juce::String whenWords() const;
    juce::String countWords() const;
    juce::String inWords() const override { return titleWords() + ", " + whenWords() + ". " + countWords(); }
};
}
