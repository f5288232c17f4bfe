#pragma once

#include "editor/DrawingCache.h"
#include "editor/Look.h"

namespace coldiron
{
/** A sheet that lies over the window until it is closed by Escape or its button. */
class Overlay : public Panel
{
public:
    explicit Overlay (Desk&);
    std::function<void()> onClose;
    void benchChanged (const Revisions&, const Revisions&) override { repaint(); }
    bool keyPressed (const juce::KeyPress&) override;
    void paint (juce::Graphics&) override;
    void resized() override;

protected:
    WordButton close;
    void paintTitle (juce::Graphics&, const juce::String&);
};

/** The wiring of the option heard, large, with its legend. Wheel or plus and minus to come nearer, drag to move. */
class WiringView : public Overlay
{
public:
    WiringView (Desk&, DrawingCache&);
    void paint (juce::Graphics&) override;
    void mouseDown (const juce::MouseEvent&) override;
    void mouseDrag (const juce::MouseEvent&) override;
    void mouseWheelMove (const juce::MouseEvent&, const juce::MouseWheelDetails&) override;
    void mouseDoubleClick (const juce::MouseEvent&) override;
    bool keyPressed (const juce::KeyPress&) override;

private:
    DrawingCache& cache;
    float zoom = 1.0f;
    juce::Point<float> offset, atDown;
    void setZoom (float, juce::Point<float> about);
    juce::Rectangle<float> page() const;
};

/** The keys, each with what it does. */
class KeySheet : public Overlay
{
public:
    KeySheet (Desk&, bool inHost);
    void paint (juce::Graphics&) override;
    static int idealHeight() { return 470; }

private:
    const bool inHost;
};

/** One line of what just happened, or the faults of what could not be done. */
class Notice : public Panel
{
public:
    explicit Notice (Desk&);
    void say (const juce::String&);
    void benchChanged (const Revisions& before, const Revisions& now) override;
    void tick();
    void paint (juce::Graphics&) override;
    void mouseUp (const juce::MouseEvent&) override { hideNow(); }
    int idealHeight (int width) const;
    std::function<void()> onChange;

private:
    juce::StringArray lines;
    bool isFault = false;
    int ticksLeft = 0;
    void hideNow();
};
}
