#pragma once

#include "editor/Overlays.h"
#include "editor/PickupCard.h"
#include "editor/PickupPicker.h"
#include "editor/RecordedColumn.h"

namespace coldiron
{
/** A guitar taken in: its pickups and how well each is known, its parts, how it was recorded, and hum before any option. */
class TakeInSheet : public Overlay
{
public:
    explicit TakeInSheet (UiContext&);

    std::function<void (const std::string& pickup)> onPickupFile; ///< a file of that pickup is wanted
    std::function<void()> onGuitars;                              ///< another guitar is wanted

    void sessionChanged (const Revisions& before, const Revisions& now) override;
    void paint (juce::Graphics&) override;
    void resized() override;
    bool keyPressed (const juce::KeyPress&) override;
    void focusOfChildComponentChanged (FocusChangeType) override;

    void pickPickup (const std::string& part);
    std::string pickupAt (juce::Point<int>) const; ///< the card under a point of the sheet; empty: none
    ValueList& parts() { return values; }
    PickupCard* card (const std::string& part) const;
    PickupPicker& pickups() { return picker; }
    RecordedColumn& recorded() { return column; }

private:
    WordButton guitars;
    juce::Viewport cardsView, columnView;
    juce::Component cardsInside;
    std::vector<std::unique_ptr<PickupCard>> cards;
    ValueList values;
    RecordedColumn column;
    PickupPicker picker;
    std::string picking;
    juce::Rectangle<int> places[3];

    void readCards();
    void placeCards();
    void chosen (const std::string& preset);
};
}
