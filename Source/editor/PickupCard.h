#pragma once

#include "editor/Values.h"

namespace coldiron
{
/** How a pickup is known: assumed, from ohms, measured, the rung it stands on filled. Drawn in a strip of 40 px. */
void paintLadder (juce::Graphics&, juce::Rectangle<int>, Provenance, const Tokens&);

/** One pickup as it is taken in: what it is, how well it is known and what the next rung needs, its ohms and place. */
class PickupCard : public juce::Component
{
public:
    PickupCard (UiContext&, std::string part);

    std::function<void()> onChoose; ///< another pickup is wanted
    std::function<void()> onOpenFile;
    std::function<void()> onHeight;

    const std::string& pickup() const { return part; }
    void refresh();
    int idealHeight (int width);
    ValueList& values() { return list; }

    void paint (juce::Graphics&) override;
    void resized() override;

private:
    UiContext& ui;
    const std::string part;
    WordButton choose, open;
    ValueList list;
    Provenance known = Provenance::assumed;
    juce::String next, where;
    juce::Rectangle<int> foot;

    int footHeight (int width);
    std::unique_ptr<juce::AccessibilityHandler> createAccessibilityHandler() override;
    static bool isNarrow (int width);
};
}
