#pragma once

#include "editor/MainWindow.h"

/** A window that is shown nowhere and has the keyboard for good: keys and mouse go the way JUCE sends those of the window
    system, through its peer, but no X server and no window manager can take the focus away in between. */
namespace offscreen
{
using namespace coldiron;

class Peer : public juce::ComponentPeer
{
public:
    using juce::ComponentPeer::ComponentPeer;

    void* getNativeHandle() const override { return nullptr; }
    void setVisible (bool) override {}
    void setTitle (const juce::String&) override {}
    void setBounds (const juce::Rectangle<int>& wanted, bool) override
    {
        bounds = wanted;
        handleMovedOrResized();
    }
    juce::Rectangle<int> getBounds() const override { return bounds; }
    using juce::ComponentPeer::globalToLocal;
    using juce::ComponentPeer::localToGlobal;
    juce::Point<float> localToGlobal (juce::Point<float> p) override { return p + bounds.getPosition().toFloat(); }
    juce::Point<float> globalToLocal (juce::Point<float> p) override { return p - bounds.getPosition().toFloat(); }
    void setMinimised (bool) override {}
    bool isMinimised() const override { return false; }
    void setFullScreen (bool) override {}
    bool isFullScreen() const override { return false; }
    void setIcon (const juce::Image&) override {}
    bool contains (juce::Point<int> p, bool) const override { return bounds.withZeroOrigin().contains (p); }
    OptionalBorderSize getFrameSizeIfPresent() const override { return OptionalBorderSize { {} }; }
    juce::BorderSize<int> getFrameSize() const override { return {}; }
    bool setAlwaysOnTop (bool) override { return true; }
    void toFront (bool) override {}
    void toBehind (juce::ComponentPeer*) override {}
    bool isFocused() const override { return true; }
    void grabFocus() override {}
    void repaint (const juce::Rectangle<int>&) override {}
    void performAnyPendingRepaintsNow() override {}
    void setAlpha (float) override {}
    juce::StringArray getAvailableRenderingEngines() override { return { "none" }; }

private:
    juce::Rectangle<int> bounds;

    void textInputRequired (juce::Point<int>, juce::TextInputTarget&) override {}
};

/** The frame a window hangs in. Give it the window first, then size and show it. */
class Frame : public juce::Component
{
public:
    Frame (juce::Component& content, int width, int height)
    {
        setSize (width, height);
        content.setSize (width, height);
        addAndMakeVisible (content);
        addToDesktop (0);
        setVisible (true);
    }

    ~Frame() override { removeFromDesktop(); }

    /** To what has the keyboard, then up, then Tab: as JUCE does. @returns whether it was used */
    bool press (const juce::KeyPress& pressed) { return getPeer()->handleKeyPress (pressed); }

    void click (juce::Point<float> at)
    {
        mouse (at, {});
        mouse (at, juce::ModifierKeys::leftButtonModifier);
        mouse (at, {});
    }

    void click (const juce::Component& part) { click (getLocalPoint (&part, part.getLocalBounds().getCentre()).toFloat()); }

    /** A file let go over the window. @returns whether something took it */
    bool drop (const juce::String& file, juce::Point<int> at)
    {
        juce::ComponentPeer::DragInfo info;
        info.files.add (file);
        info.position = at;
        getPeer()->handleDragMove (info);
        return getPeer()->handleDragDrop (info);
    }

private:
    juce::int64 clock = juce::Time::currentTimeMillis();

    void mouse (juce::Point<float> at, juce::ModifierKeys buttons)
    {
        clock = std::max (clock + 20, juce::Time::currentTimeMillis()); // JUCE orders events and tells double clicks by time
        getPeer()->handleMouseEvent (juce::MouseInputSource::InputSourceType::mouse, at, buttons, 0.0f, 0.0f, clock);
    }

    juce::ComponentPeer* createNewPeer (int styleFlags, void*) override { return new Peer (*this, styleFlags); }
};
}
