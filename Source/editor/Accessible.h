#pragma once

#include <juce_gui_basics/juce_gui_basics.h>

#include <functional>
#include <vector>

namespace coldiron
{
/** What a screen reader is told of a component that JUCE has no handler for. Each function is asked anew every time; null:
    the component has nothing of the kind. They live in the component that they speak of, and may hold it by reference. */
struct AccessibleWords
{
    std::function<juce::String()> description = {};      ///< what is only drawn, in a sentence or two
    std::function<juce::String()> value = {};            ///< what changes while one stands on it
    std::function<void (const juce::String&)> type = {}; ///< takes a typed value; null: the value is read only
    std::function<bool()> isChecked = {};                ///< null: cannot be
    std::function<bool()> isSelected = {};               ///< null: cannot be
};

/** A handler of that role. Its help is the component's tooltip where it has one. */
std::unique_ptr<juce::AccessibilityHandler> accessible (juce::Component&, juce::AccessibilityRole, AccessibleWords = {},
                                                        juce::AccessibilityActions = {});

/** Tells a screen reader that the component's value, or its title, is another one now. */
void tellChange (juce::Component&, juce::AccessibilityEvent = juce::AccessibilityEvent::valueChanged);

/** Has a screen reader say it now: what has just happened, and what was refused. */
void announce (const juce::String&, bool urgent = false);

/** Adds them, to be seen, in the order in which the Tab key goes through them; JUCE would go by where they stand. */
void addInOrder (juce::Component& parent, const std::vector<juce::Component*>& children);

/** Scrolls so that what has the keyboard is seen, unless the mouse brought it there. */
void revealFocus (juce::Viewport&, juce::Component::FocusChangeType);

/** Something drawn that nobody presses: no pixels and no mouse, but a place, a role and words for screen readers. */
class DrawnPart : public juce::Component
{
public:
    DrawnPart (const juce::String& title, juce::AccessibilityRole, std::function<juce::String()> description);

private:
    const juce::AccessibilityRole role;
    const std::function<juce::String()> description;

    std::unique_ptr<juce::AccessibilityHandler> createAccessibilityHandler() override;
};
}
