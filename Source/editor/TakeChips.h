#pragma once

#include "editor/Look.h"
#include "session/TakeEdits.h"

namespace coldiron
{
/** The takes of a job as a small list: one number each, the one loaded filled, and a plus to add one. Left and Right choose,
    F2 renames, Delete removes, Return opens the menu; a take whose file is gone has its number struck through. */
class TakeChips : public Panel, public juce::SettableTooltipClient
{
public:
    explicit TakeChips (UiContext&);

    std::function<void (int)> onRename, onRelink; ///< ask for a name, for the file
    int idealWidth() const;
    void benchChanged (const Revisions& before, const Revisions& now) override;
    const std::vector<TakeLine>& takes() const { return lines; }
    void remove (int);

    void paint (juce::Graphics&) override;
    void mouseDown (const juce::MouseEvent&) override;
    void mouseMove (const juce::MouseEvent&) override;
    bool keyPressed (const juce::KeyPress&) override;
    void focusGained (FocusChangeType) override { repaint(); }
    void focusLost (FocusChangeType) override { repaint(); }

private:
    static constexpr int pitch = 25;
    std::vector<TakeLine> lines;
    int chosen = -1;

    int placeAt (int x) const { return x / pitch; }
    void menu (int take);
};
}
