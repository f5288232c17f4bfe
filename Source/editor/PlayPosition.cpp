#include "editor/PlayPosition.h"

#include "editor/Words.h"

namespace coldiron
{
class PlayPosition::Value : public juce::AccessibilityValueInterface
{
public:
    explicit Value (UiContext& d) : ui (d) {}

    bool isReadOnly() const override { return false; }
    double getCurrentValue() const override { return ui.session.transport.positionSeconds(); }
    juce::String getCurrentValueAsString() const override { return words::seconds (getCurrentValue()); }
    void setValue (double seconds) override { ui.session.transport.seek (juce::jlimit (0.0, length(), seconds)); }
    void setValueAsString (const juce::String& text) override { setValue (text.getDoubleValue()); }
    AccessibleValueRange getRange() const override { return { { 0.0, juce::jmax (step, length()) }, step }; }

private:
    static constexpr double step = 0.5; ///< [s]
    UiContext& ui;

    double length() const
    {
        const auto picture = ui.session.takes.picture();
        return picture != nullptr ? picture->seconds : 0.0;
    }
};

PlayPosition::PlayPosition (UiContext& d) : ui (d)
{
    setTitle ("Position");
    setInterceptsMouseClicks (false, false);
}

std::unique_ptr<juce::AccessibilityHandler> PlayPosition::createAccessibilityHandler()
{
    return std::make_unique<juce::AccessibilityHandler> (*this, juce::AccessibilityRole::slider, juce::AccessibilityActions(),
                                                         juce::AccessibilityHandler::Interfaces (std::make_unique<Value> (ui)));
}
}
