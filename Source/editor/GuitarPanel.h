#pragma once

#include "editor/DrawingCache.h"
#include "editor/Look.h"

namespace coldiron
{
/** The guitar as it came in: strings and pickups at their true distances, values, the small drawing, the iron's work. */
class GuitarPanel : public Panel
{
public:
    GuitarPanel (Desk&, DrawingCache&);

    std::function<void()> onOpenWiring;
    void benchChanged (const Revisions& before, const Revisions& now) override;
    void paint (juce::Graphics&) override;
    void resized() override;
    void mouseUp (const juce::MouseEvent&) override;
    void drawingReady() { repaint(); }

private:
    struct Row { juce::String label, mark, value; bool strong = false; };

    DrawingCache& cache;
    std::vector<Row> rows;
    juce::Rectangle<int> neckArea, rowsArea, wiringArea, ironArea;
    int joints = 0, opens = 0, fits = 0;
    int rowsShown = 0;

    void readRows();
    void paintNeck (juce::Graphics&);
    void paintRows (juce::Graphics&);
    void paintIron (juce::Graphics&);
};
}
