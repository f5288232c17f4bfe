#pragma once

#include "editor/MainWindow.h"
#include "editor/WiringView.h"

namespace coldiron
{
/** A mouse and a keyboard for the wiring view, for tests and pictures. */
struct WiringHands
{
    explicit WiringHands (MainWindow& w) : window (w) { waitUntilIdle(); }

    MainWindow& window;
    WiringView* view = nullptr;

    static void runFor (int milliseconds) { juce::MessageManager::getInstance()->runDispatchLoopUntil (milliseconds); }

    /** Until the drawing is the wiring's. @returns false after a minute */
    bool waitUntilIdle()
    {
        view = nullptr;
        for (auto* child : window.getChildren())
            if (auto* found = dynamic_cast<WiringView*> (child))
                view = found;
        window.refresh();
        if (view != nullptr)
            view->placeOf (std::string()); // asks for the drawing
        const bool done = window.settleDrawings (60.0);
        runFor (30);
        if (view != nullptr)
            view->placeOf (std::string());
        return done;
    }

    /** As the window system hands a key on: to what has the focus, then to its parents. */
    void press (const juce::KeyPress& key)
    {
        juce::Component* at = view;
        for (auto* child : view->getChildren())
            if (dynamic_cast<juce::TextEditor*> (child) != nullptr && child->isVisible())
                at = child;
        for (; at != nullptr && ! at->keyPressed (key); at = at->getParentComponent()) {}
        runFor (5);
    }

    void press (const char* words) { press (juce::KeyPress::createFromDescription (words)); }
    void press (juce::juce_wchar letter) { press (juce::KeyPress (static_cast<int> (letter), {}, letter)); }

    void type (const juce::String& text)
    {
        for (auto c : text)
            press (juce::KeyPress (static_cast<int> (c), {}, c));
    }

    /** Walks with Tab alone to a point; false where it is never met. */
    bool walkTo (const std::string& point)
    {
        for (int i = 0; i < 200 && view->cursor() != point; ++i)
            press ("tab");
        return view->cursor() == point;
    }

    juce::Point<float> at (const char* point) { return view->placeOf (std::string (point)); }

    juce::MouseEvent event (juce::Point<float> at, juce::Point<float> down, bool dragged) const
    {
        const auto now = juce::Time::getCurrentTime();
        return { juce::Desktop::getInstance().getMainMouseSource(),
                 at,
                 juce::ModifierKeys::leftButtonModifier,
                 0.0f,
                 0.0f,
                 0.0f,
                 0.0f,
                 0.0f,
                 view,
                 view,
                 now,
                 down,
                 now,
                 1,
                 dragged };
    }

    void drag (juce::Point<float> from, juce::Point<float> to, bool letGo = true)
    {
        view->mouseMove (event (from, from, false));
        view->mouseDown (event (from, from, false));
        for (int i = 1; i <= 8; ++i)
            view->mouseDrag (event (from + (to - from) * (static_cast<float> (i) / 8.0f), from, true));
        if (letGo)
            view->mouseUp (event (to, from, true));
    }
};
}
