#pragma once

#include "editor/Overlays.h"

#include <map>

namespace coldiron
{
/** The rewires there are, searchable, grouped by what a player wants; what one gives and costs; where it goes. */
class RewireList : public Overlay, private juce::ListBoxModel
{
public:
    /** @param target  the option it is added to; asRecorded: a new one */
    RewireList (Desk&, Tag target);
    ~RewireList() override;

    void benchChanged (const Revisions& before, const Revisions& now) override;
    void paint (juce::Graphics&) override;
    void resized() override;
    bool keyPressed (const juce::KeyPress&) override;
    void start() { search.grabKeyboardFocus(); }

private:
    struct Line { bool isHeading = false; juce::String words; int info = -1; };
    struct AskRow { RewireInfo::Ask ask; std::unique_ptr<WordButton> choice; std::unique_ptr<juce::TextEditor> field; };

    const Tag target;
    std::vector<RewireInfo> infos;
    std::vector<Line> lines;
    mutable std::shared_ptr<const Job> kept; ///< the job last asked
    int chosen = -1;
    std::map<std::string, std::string> arguments;
    std::vector<AskRow> asks;
    juce::String refusal;
    juce::TextEditor search;
    juce::ListBox list;
    WordButton add;
    juce::Rectangle<int> detail;

    const Harness& harness() const;
    void filter();
    void choose (int info);
    void fillAsks();
    void checkRefusal();
    void offer (size_t ask);
    void apply();
    juce::String optionName() const;

    int getNumRows() override { return static_cast<int> (lines.size()); }
    void paintListBoxItem (int row, juce::Graphics&, int width, int height, bool selected) override;
    void selectedRowsChanged (int row) override;
    void listBoxItemDoubleClicked (int, const juce::MouseEvent&) override { apply(); }
    void returnKeyPressed (int) override { apply(); }
};
}
