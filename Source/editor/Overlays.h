#pragma once

#include "editor/Layout.h"
#include "editor/Look.h"

namespace coldiron
{
/** A sheet that lies over the window until it is closed by Escape or its button. */
class Overlay : public Panel
{
public:
    explicit Overlay (UiContext&);
    std::function<void()> onClose;

    /** Takes the keyboard to where a person begins. */
    virtual void start() { grabKeyboardFocus(); }

    /** The size it would have, were there room; all the room when it says nothing. */
    virtual juce::Point<int> wants() const { return { mostWidth, mostHeight }; }
    void sessionChanged (const Revisions&, const Revisions&) override { repaint(); }
    bool keyPressed (const juce::KeyPress&) override;
    void paint (juce::Graphics&) override;
    void resized() override;

protected:
    WordButton close;
    void paintTitle (juce::Graphics&, const juce::String&);
};

/** The keys, each with what it does. */
class KeySheet : public Overlay
{
public:
    KeySheet (UiContext&, bool inHost);
    void paint (juce::Graphics&) override;
    juce::Point<int> wants() const override { return { 736, 508 }; }

private:
    const bool inHost;

    std::vector<std::pair<juce::String, juce::String>> rows() const; ///< each key and what it does
    juce::String foot() const;
    juce::String inWords() const override;
};

/** One line of what just happened, or the faults of what could not be done. */
class Notice : public Panel
{
public:
    explicit Notice (UiContext&);
    void say (const juce::String&, bool aloud = true); ///< not aloud: a screen reader is not interrupted
    void sessionChanged (const Revisions& before, const Revisions& now) override;
    void tick();
    void paint (juce::Graphics&) override;
    void mouseUp (const juce::MouseEvent&) override { hideNow(); }
    int idealHeight (int width) const;
    std::function<void()> onChange;

private:
    juce::StringArray lines;
    bool isFault = false;
    int ticksLeft = 0;
    void shown (bool aloud);
    void hideNow();
    std::unique_ptr<juce::AccessibilityHandler> createAccessibilityHandler() override;
};
}
