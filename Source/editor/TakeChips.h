#pragma once

#include "editor/BareButton.h"
#include "editor/RadioGroup.h"
#include "session/TakeEdits.h"

namespace coldiron
{
/** The takes of a job as a small list: one number each, the one loaded filled, and a plus to add one. Left and Right choose,
    F2 renames, Delete removes, Return opens the menu; a take whose file is gone has its number struck through. */
class TakeChips : public RadioGroup
{
public:
    explicit TakeChips (UiContext&);

    std::function<void (int)> onRename, onRelink; ///< ask for a name, for the file
    int idealWidth() const;
    void sessionChanged (const Revisions& before, const Revisions& now);
    const std::vector<TakeLine>& takes() const { return lines; }
    void remove (int);

    void paint (juce::Graphics&) override;
    void resized() override;
    bool keyPressed (const juce::KeyPress&) override;

private:
    static constexpr int pitch = 25;
    std::vector<TakeLine> lines;
    BareButton plus;

    void menu (int take);
    void select (int take);
    juce::String tipOf (int take) override;
    void pressed (int take, juce::ModifierKeys) override;
};
}
