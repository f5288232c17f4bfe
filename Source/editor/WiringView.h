#pragma once

#include "editor/DrawingCache.h"
#include "editor/Overlays.h"
#include "editor/WiringHand.h"

namespace coldiron
{
/** The wiring of the option heard, large, with its legend; rewired by hand with the mouse or by keys alone. Wheel or plus
    and minus to come nearer, drag the paper to move. */
class WiringView : public Overlay
{
public:
    WiringView (UiContext&, DrawingCache&);

    const WiringHand& hand() const { return held; }
    const std::string& cursor() const { return standing; } ///< the point that the keys stand on; empty: none yet
    juce::Point<float> placeOf (const std::string& point); ///< on screen, for tests and pictures; the view's own pixels
    juce::Point<float> placeOf (const DrawnGrip&);

    void sessionChanged (const Revisions& before, const Revisions& now) override;
    void paint (juce::Graphics&) override;
    void resized() override;
    void mouseMove (const juce::MouseEvent&) override;
    void mouseExit (const juce::MouseEvent&) override;
    void mouseDown (const juce::MouseEvent&) override;
    void mouseDrag (const juce::MouseEvent&) override;
    void mouseUp (const juce::MouseEvent&) override;
    void mouseWheelMove (const juce::MouseEvent&, const juce::MouseWheelDetails&) override;
    void mouseDoubleClick (const juce::MouseEvent&) override;
    bool keyPressed (const juce::KeyPress&) override;

private:
    enum class Typing { nothing, target, value };

    DrawingCache& cache;
    WiringHand held;
    juce::TextEditor field;
    Typing typing = Typing::nothing;
    std::shared_ptr<const Drawing> drawing; ///< the newest; stays on screen until the next is worked out
    bool inPlace = true;                    ///< what is shown may change; else a new option is made
    uint32_t seenJob = 0;                   ///< revision + 1
    OptionId seenOption = asRecorded;
    bool fresh = false;            ///< the drawing shows the wiring as it is
    std::string standing, pointed; ///< by keys; under the mouse
    const DrawnGrip* hovered = nullptr;
    bool byMouse = false, moved = false, panning = false;
    juce::Point<float> mouse;
    float zoom = 1.0f;
    juce::Point<float> offset, atDown;

    juce::Rectangle<float> page() const;
    juce::Rectangle<float> sheetArea() const; ///< the page, nearer and moved
    void readSession();
    void setZoom (float, juce::Point<float> about);
    void showPoint (const std::string&);
    Shape::Spot inDrawing (juce::Point<float>) const;
    juce::Point<float> onScreen (Shape::Spot) const;
    double reach (float pixels) const;
    void hover (juce::Point<float>);
    void finish();
    void startTyping (Typing);
    void endTyping (bool take);
    void walk (const std::string& to);
    void paintHand (juce::Graphics&);
    void paintWords (juce::Graphics&, juce::Point<float> at, const juce::String& first, const juce::String& second, bool bad);
    juce::Rectangle<int> bubblePlace (juce::Point<float> at, int width, int height) const;
    void paintFoot (juce::Graphics&);
    bool leadIsInside (const std::string& point) const;
    juce::String titleWords() const;
    juce::String jointsInWords (const std::string& point) const; ///< "bare", "2 joints"
    juce::String footWords() const;
    juce::String cursorInWords() const; ///< the point the keys stand on, what is held, and what letting go would come to
    juce::String inWords() const override { return titleWords() + ". " + footWords(); }
    std::unique_ptr<juce::AccessibilityHandler> createAccessibilityHandler() override;
};
}
