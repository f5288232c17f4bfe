#pragma once

#include "editor/Controls.h"
#include "editor/Values.h"

namespace coldiron
{
/** How the take was recorded: where the controls stood, cable and input of recording and listening; and the three
    questions about hum, put before any option. */
class RecordedColumn : public juce::Component
{
public:
    explicit RecordedColumn (UiContext&);

    std::function<void()> onHeight;
    void sessionChanged (const Revisions& before, const Revisions& now);
    int idealHeight (int width);
    ValueList& recording() { return recorded; }
    ValueList& listening() { return listened; }
    Segments& question (size_t i) { return *questions[i]; }

    void paint (juce::Graphics&) override;
    void resized() override;

private:
    UiContext& ui;
    std::vector<std::unique_ptr<Knob>> knobs;
    std::vector<std::unique_ptr<LeverRail>> levers;
    ValueList recorded, listened;
    std::vector<std::unique_ptr<Segments>> questions;
    struct Text
    {
        juce::Rectangle<int> area;
        juce::String words;
        bool isHead = false, isInk = false;
    };
    std::vector<Text> texts;
    bool movable = false;

    void rebuild();
    std::unique_ptr<juce::AccessibilityHandler> createAccessibilityHandler() override;
    void readValues();
    int place (int width);
    void answer (size_t question, int choice);
};
}
