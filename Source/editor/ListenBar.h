#pragma once

#include "editor/RadioGroup.h"
#include "editor/RailSlider.h"

namespace coldiron
{
/** The mains hum of the place: a wave that grows from nothing to loud, the thumb on it. */
class HumWave : public RailSlider
{
public:
    explicit HumWave (UiContext&);
    void refresh(); ///< reads the session
    void paint (juce::Graphics&) override;
    juce::Rectangle<int> rail() const override { return getLocalBounds().reduced (8, 0); }
    bool keyPressed (const juce::KeyPress&) override;
    void step (double db);
    void flip(); ///< on and off

private:
    UiContext& ui;
    double before = -40.0; ///< [dB] what it was before it was switched off

    void valueChanged() override;
};

/** How it is listened to: level, mains hum, source, meters. */
class ListenBar : public Panel
{
public:
    ListenBar (UiContext&, bool inHost);

    void sessionChanged (const Revisions& before, const Revisions& now) override;
    void tick();
    void paint (juce::Graphics&) override;
    void resized() override;
    void toggleMatched();
    HumWave& hum() { return humWave; }

private:
    Segments level, source;
    HumWave humWave;
    WordButton mains, sound;
    const bool inHost;
    juce::Rectangle<int> levelLabel, matchText, humLabel, humText, meterArea, soundText;
    std::vector<int> rules;
    double inPeak = 0.0, outPeak = 0.0;
    int inClip = 0, outClip = 0; ///< ticks the clip sign still shows

    juce::String inWords() const override;
    juce::String matchWords() const; ///< what level matching adds to what is heard; empty: nothing is shown
    juce::String headroomWords() const;
    void paintMeter (juce::Graphics&, juce::Rectangle<int>, const juce::String& label, double peak, bool clipped);
};
}
