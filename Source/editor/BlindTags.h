#pragma once

#include "editor/BareButton.h"
#include "session/BlindView.h"

#include <memory>

namespace coldiron
{
/** The tags face down: numbers on a hatch, one of them heard. No letter, colour, figure or curve. */
class BlindTags : public Panel
{
public:
    explicit BlindTags (UiContext&);

    /** @param row  where the tags hang, in this component's coordinates; @param each  width of one */
    void arrange (juce::Rectangle<int> row, int each, bool low);
    void startTurning(); ///< the tags turn over, in a quarter of a second
    void tick();

    void sessionChanged (const Revisions& before, const Revisions& now) override;
    void paint (juce::Graphics&) override;

private:
    BlindView view;
    struct Buttons
    {
        std::unique_ptr<BareButton> hear, up, down;
    };
    std::vector<juce::Rectangle<int>> places;
    std::vector<Buttons> buttons; ///< one for each place; keys are the window's
    bool isLow = false;
    double turned = 1.0; ///< 0: face up, 1: face down

    juce::Rectangle<int> arrow (juce::Rectangle<int> tag, bool up) const;
    juce::String wordsOf (int number) const;
    juce::String nameOf (int number) const;
    void placeButtons();
    void paintTag (juce::Graphics&, juce::Rectangle<int>, int number);
    void paintThread (juce::Graphics&, juce::Rectangle<int>, bool heard);
};
}
