#pragma once

#include "editor/Overlays.h"
#include "editor/RadioGroup.h"
#include "editor/Slide.h"
#include "engine/OutputChain.h"

namespace coldiron
{
/** How it is listened to, beyond the bar: where the coils face, buzz, hiss, what follows the jack, headroom. */
class SoundSheet : public Overlay
{
public:
    explicit SoundSheet (UiContext&, bool inHost);

    void sessionChanged (const Revisions&, const Revisions&) override;
    void paint (juce::Graphics&) override;
    void resized() override;
    juce::Point<int> wants() const override { return { 780, 500 }; }

private:
    const bool inHost;
    Slide facing, buzz, hiss, drive, trim;
    Segments after, headroom;
    WordButton file;
    std::unique_ptr<juce::FileChooser> chooser;
    juce::Rectangle<int> left, right, coils, advice, afterNote, headroomNote;

    void follow();
    void choose (OutputSound);
    void openFile();
    juce::String headroomWords() const;
    juce::String adviceWords() const;
    juce::String afterWords() const;
    juce::String coilsInWords() const;
    juce::String inWords() const override;
    void paintCoils (juce::Graphics&, juce::Rectangle<int>) const;
};
}
