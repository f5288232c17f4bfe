#pragma once

#include "editor/Look.h"

namespace coldiron
{
/** The mains hum of the place: a wave that grows from nothing to loud, the thumb on it. */
class HumWave : public juce::Component, public juce::SettableTooltipClient
{
public:
    explicit HumWave (UiContext&);
    void paint (juce::Graphics&) override;
    void mouseDown (const juce::MouseEvent&) override;
    void mouseDrag (const juce::MouseEvent& e) override { setFrom (e.position.x); }
    void mouseWheelMove (const juce::MouseEvent&, const juce::MouseWheelDetails&) override;
    bool keyPressed (const juce::KeyPress&) override;
    void focusGained (FocusChangeType) override { repaint(); }
    void focusLost (FocusChangeType) override { repaint(); }
    void step (double db);
    void flip(); ///< on and off

private:
    UiContext& ui;
    double before = -40.0;
    void setFrom (float x);
};

/** How it is listened to: level, mains hum, source, meters. */
class ListenBar : public Panel
{
public:
    ListenBar (UiContext&, bool inHost);

    void benchChanged (const Revisions& before, const Revisions& now) override;
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

    void paintMeter (juce::Graphics&, juce::Rectangle<int>, const juce::String& label, double peak, bool clipped);
};
}
