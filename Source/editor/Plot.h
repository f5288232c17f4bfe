#pragma once

#include "editor/StringChoice.h"
#include "session/OptionId.h"

#include <map>

namespace coldiron
{
struct Report;
struct SweepCurve;

/** The response of every option: change to the take, or the whole circuit. */
class Plot : public Panel
{
public:
    explicit Plot (UiContext&);

    void sessionChanged (const Revisions& before, const Revisions& now) override;
    void paint (juce::Graphics&) override;
    void resized() override;
    void mouseMove (const juce::MouseEvent&) override;
    void mouseExit (const juce::MouseEvent&) override;

    /** While a knob is held its sweep is drawn; empty ends it. */
    void showSweep (const juce::String& knob);

private:
    struct Drawn
    {
        juce::Path curve, band;
        std::vector<float> endY;
        bool silent = false, failed = false; ///< failed: silent, since it could not be computed
        float yAtEnd = 0.0f;
    };

    Segments kind;
    DrawnPart curves; ///< for screen readers
    StringChoice strings;
    juce::Rectangle<int> area;
    juce::String sweepKnob;
    std::map<OptionId, Drawn> drawn;
    float hoverX = -1.0f;
    std::optional<OptionId> pointed;   ///< whose letter the mouse is on: its band is drawn too
    std::map<OptionId, float> letterY; ///< where each letter stands

    bool hasBandDrawn (OptionId) const;

    bool whole() const { return kind.chosen() == 1; }
    float highest = 12.0f; ///< top of the scale of changes: 12, or as high as a curve needs, to 24
    float topDb() const { return whole() ? 24.0f : highest; }
    float bottomDb() const { return whole() ? -48.0f : -24.0f; }
    float xOf (double hz) const;
    double hzAt (float x) const;
    float yOf (double db) const;
    double shift (const Report&) const; ///< what level matching adds to the change
    juce::Path pathOf (const std::vector<double>& hz, const std::vector<double>& db, double shiftDb) const;
    void build();
    void paintAxes (juce::Graphics&);
    void paintCurves (juce::Graphics&);
    void paintSweep (juce::Graphics&, const std::vector<SweepCurve>&);
    void paintLetters (juce::Graphics&);
    void paintNoise (juce::Graphics&); ///< from where on the take's own noise is lifted
    void paintHover (juce::Graphics&);
    void paintKey (juce::Graphics&);
    std::vector<OptionId> versions() const;
    juce::String curvesInWords() const;
    static double valueAt (const std::vector<double>& hz, const std::vector<double>& db, double wanted);
};
}
