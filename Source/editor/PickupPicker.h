#pragma once

#include "editor/Look.h"
#include "editor/SearchField.h"
#include "editor/UiContext.h"

namespace coldiron
{
/** Every pickup preset, searchable, grouped by construction. */
class PickupPicker : public juce::Component, private juce::ListBoxModel
{
public:
    explicit PickupPicker (UiContext&);
    ~PickupPicker() override;

    std::function<void (const std::string& preset)> onChosen;
    std::function<void()> onLeave;

    /** @param part  whose place it takes; `preset` is what stands there now */
    void start (const juce::String& part, const std::string& preset);
    void refuse (const juce::String& why);

    void paint (juce::Graphics&) override;
    void resized() override;
    bool keyPressed (const juce::KeyPress&) override;

private:
    struct Entry
    {
        std::string preset;
        juce::String name, figures, group, haystack;
    };
    struct Line
    {
        juce::String heading;
        int entry = -1;
    };

    UiContext& ui;
    std::vector<Entry> entries;
    std::vector<Line> lines;
    juce::String part, refusal;
    std::string now;
    SearchField search;
    juce::ListBox list;
    WordButton take, leave;

    void read();
    juce::String inWords() const;
    std::unique_ptr<juce::AccessibilityHandler> createAccessibilityHandler() override;
    void filter();
    void choose();
    juce::String getNameForRow (int row) override;
    int getNumRows() override { return static_cast<int> (lines.size()); }
    void paintListBoxItem (int row, juce::Graphics&, int width, int height, bool selected) override;
    void listBoxItemDoubleClicked (int, const juce::MouseEvent&) override { choose(); }
    void returnKeyPressed (int) override { choose(); }
};
}
