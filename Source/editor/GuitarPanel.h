#pragma once

#include "editor/BareButton.h"
#include "editor/DrawingCache.h"
#include "editor/Values.h"

namespace coldiron
{
/** The guitar as it came in: strings and pickups at their true distances, values that are typed where they stand, the small
    drawing, the iron's work. */
class GuitarPanel : public Panel
{
public:
    GuitarPanel (UiContext&, DrawingCache&);

    std::function<void()> onOpenWiring;
    std::function<void()> onTakeIn; ///< the sheet where a guitar is taken in
    const ValueList& values() const { return list; }
    void focusFirstValue();
    void sessionChanged (const Revisions& before, const Revisions& now) override;
    void paint (juce::Graphics&) override;
    void resized() override;
    void drawingReady() { repaint(); }

private:
    DrawingCache& cache;
    ValueList list;
    WordButton takeIn;
    BareButton wiringButton;
    juce::Rectangle<int> neckArea, wiringArea, ironArea;
    int joints = 0, opens = 0, fits = 0;
    juce::String humFirst; ///< what hum asks for before any rewire; empty: nothing

    void readRows();
    juce::String inWords() const override;
    juce::String ironInWords() const;
    void paintNeck (juce::Graphics&);
    void paintIron (juce::Graphics&);
};
}
