#include "editor/Accessible.h"

namespace coldiron
{
namespace
{
class WordsHandler : public juce::AccessibilityHandler
{
public:
    WordsHandler (juce::Component& c, juce::AccessibilityRole r, AccessibleWords w, juce::AccessibilityActions a)
        : AccessibilityHandler (c, r, std::move (a), interfacesOf (w)), words (std::move (w))
    {
    }

    juce::String getDescription() const override
    {
        return words.description ? words.description() : AccessibilityHandler::getDescription();
    }

    juce::String getHelp() const override
    {
        const auto help = AccessibilityHandler::getHelp();
        const auto* client = dynamic_cast<const juce::SettableTooltipClient*> (&getComponent());
        return help.isEmpty() && client != nullptr ? const_cast<juce::SettableTooltipClient*> (client)->getTooltip() : help;
    }

    juce::AccessibleState getCurrentState() const override
    {
        auto state = AccessibilityHandler::getCurrentState();
        if (words.isChecked)
            state = words.isChecked() ? state.withCheckable().withChecked() : state.withCheckable();
        if (words.isSelected)
            state = words.isSelected() ? state.withSelectable().withSelected() : state.withSelectable();
        return state;
    }

private:
    class Value : public juce::AccessibilityTextValueInterface
    {
    public:
        explicit Value (const AccessibleWords& w) : value (w.value), type (w.type) {}

        bool isReadOnly() const override { return ! type; }
        juce::String getCurrentValueAsString() const override { return value(); }
        void setValueAsString (const juce::String& typed) override
        {
            if (type)
                type (typed);
        }

    private:
        const std::function<juce::String()> value;
        const std::function<void (const juce::String&)> type;
    };

    const AccessibleWords words;

    static Interfaces interfacesOf (const AccessibleWords& w)
    {
        return w.value ? Interfaces (std::make_unique<Value> (w)) : Interfaces();
    }
};
}

std::unique_ptr<juce::AccessibilityHandler> accessible (juce::Component& component, juce::AccessibilityRole role,
                                                        AccessibleWords words, juce::AccessibilityActions actions)
{
    return std::make_unique<WordsHandler> (component, role, std::move (words), std::move (actions));
}

void tellChange (juce::Component& component, juce::AccessibilityEvent event)
{
    if (auto* handler = component.getAccessibilityHandler())
        handler->notifyAccessibilityEvent (event);
}

void announce (const juce::String& words, bool urgent)
{
    using Priority = juce::AccessibilityHandler::AnnouncementPriority;
    juce::AccessibilityHandler::postAnnouncement (words, urgent ? Priority::high : Priority::medium);
}

void addInOrder (juce::Component& parent, const std::vector<juce::Component*>& children)
{
    int place = 0;
    for (auto* child : children)
    {
        parent.addAndMakeVisible (child);
        child->setExplicitFocusOrder (++place);
    }
}

void revealFocus (juce::Viewport& view, juce::Component::FocusChangeType cause)
{
    auto* inside = view.getViewedComponent();
    auto* focused = juce::Component::getCurrentlyFocusedComponent();
    if (cause == juce::Component::focusChangedByMouseClick || inside == nullptr || ! inside->isParentOf (focused))
        return;
    const auto place = inside->getLocalArea (focused, focused->getLocalBounds()), seen = view.getViewArea();
    if (place.getY() < seen.getY())
        view.setViewPosition (0, place.getY());
    else if (place.getBottom() > seen.getBottom())
        view.setViewPosition (0, place.getBottom() - seen.getHeight());
}

DrawnPart::DrawnPart (const juce::String& title, juce::AccessibilityRole r, std::function<juce::String()> d)
    : role (r), description (std::move (d))
{
    setTitle (title);
    setInterceptsMouseClicks (false, false);
}

std::unique_ptr<juce::AccessibilityHandler> DrawnPart::createAccessibilityHandler()
{
    return accessible (*this, role, { .description = description });
}
}
