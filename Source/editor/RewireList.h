#pragma once

#include "editor/Overlays.h"
#include "editor/SearchField.h"
#include "offer/Starter.h"

#include <map>

namespace coldiron
{
/** A sentence of a rewire with its asks filled in, defaults too: "the neck pickup". */
juce::String filledWords (const std::string& sentence, const RewireInfo&, const std::map<std::string, std::string>& arguments);

/** The rewires there are, searchable, grouped by what a player wants; what one gives and costs; where it goes. For a new
    option also the starter sets: what each would put on this guitar, and why it leaves out the rest. */
class RewireList : public Overlay, private juce::ListBoxModel
{
public:
    /** @param target  the option it is added to; asRecorded: a new one */
    RewireList (UiContext&, OptionId target);
    ~RewireList() override;

    void sessionChanged (const Revisions& before, const Revisions& now) override;
    juce::Point<int> wants() const override { return { 900, 600 }; }
    void paint (juce::Graphics&) override;
    void resized() override;
    bool keyPressed (const juce::KeyPress&) override;
    void start() override { search.grabKeyboardFocus(); }
    void showStarter (const std::string& preset); ///< chooses that set

private:
    struct Line
    {
        bool isHeading = false;
        juce::String words;
        int info = -1, starter = -1;
    };
    struct Fit
    {
        std::map<std::string, std::string> arguments;
        bool here = false;
    };
    struct AskRow
    {
        RewireInfo::Ask ask;
        std::unique_ptr<WordButton> choice;
        std::unique_ptr<juce::TextEditor> field;
    };

    const OptionId target;
    std::vector<RewireInfo> infos;
    std::vector<Fit> fits; ///< one for each
    std::vector<Starter> starters;
    StarterOffer offered; ///< of the set chosen
    int chosenStarter = -1;
    std::vector<Line> lines;
    mutable std::shared_ptr<const Job> kept; ///< the job last asked
    int chosen = -1;
    std::map<std::string, std::string> arguments;
    std::vector<AskRow> asks;
    juce::String refusal;
    SearchField search;
    juce::ListBox list;
    WordButton add;
    juce::Rectangle<int> detail;

    const Harness& harness() const;
    void findFits();
    bool isHere (const Line& line) const { return line.info < 0 || fits[static_cast<size_t> (line.info)].here; }
    void filter();
    void choose (int info);
    void fillAsks();
    void checkRefusal();
    void offer (size_t ask);
    void apply();
    void addStarterLines (const juce::StringArray& wanted);
    bool startersFirst() const; ///< the job has no options yet that a set would crowd
    void chooseStarter (int);
    void applyStarter();
    void paintStarter (juce::Graphics&);
    juce::String inWords() const override;
    juce::String starterInWords() const;

    juce::String getNameForRow (int row) override;
    int getNumRows() override { return static_cast<int> (lines.size()); }
    void paintListBoxItem (int row, juce::Graphics&, int width, int height, bool selected) override;
    void selectedRowsChanged (int row) override;
    void listBoxItemDoubleClicked (int, const juce::MouseEvent&) override { apply(); }
    void returnKeyPressed (int) override { apply(); }
};
}
