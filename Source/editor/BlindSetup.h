#pragma once

#include "editor/BareButton.h"
#include "editor/Overlays.h"
#include "editor/RadioGroup.h"

namespace coldiron
{
/** What to judge blind: which versions to rank, or which two to tell apart in how many trials; and what was found before. */
class BlindSetup : public Overlay
{
public:
    explicit BlindSetup (UiContext&);

    std::function<void()> onStarted;
    void sessionChanged (const Revisions& before, const Revisions& now) override;
    juce::Point<int> wants() const override { return { 760, 520 }; }
    void paint (juce::Graphics&) override;
    void resized() override;

private:
    struct Chip
    {
        OptionId option;
        bool on = false;
        std::unique_ptr<BareButton> button = {};
    };

    std::vector<Chip> toRank, toTell;
    WordButton rank, tell;
    Segments trials;
    juce::Rectangle<int> left, right, before;
    juce::String refusal;

    void placeChips (std::vector<Chip>&, juce::Rectangle<int>);
    std::vector<OptionId> chosen (const std::vector<Chip>&) const;
    void paintChips (juce::Graphics&, const std::vector<Chip>&);
    void makeButtons (std::vector<Chip>&, const juce::String& what);
    void flip (std::vector<Chip>&, size_t index);
    juce::String inWords() const override;
    void paintBefore (juce::Graphics&);
    void start (bool ranking);
};
}
