#pragma once

#include "editor/Overlays.h"
#include "editor/SearchField.h"
#include "paper/GuitarPicture.h"

namespace coldiron
{
/** Draws a guitar's pickups at their true distances, its knobs and switches. */
void paintGuitar (juce::Graphics&, const GuitarPicture&, juce::Rectangle<float>, const Tokens&);

/** Every guitar there is, by its picture: search, arrows, Enter; the one chosen begins a new job. */
class GuitarPictures : public Overlay
{
public:
    explicit GuitarPictures (UiContext&);
    ~GuitarPictures() override;

    std::function<void (const std::string& preset)> onChosen;
    void start() override { search.grabKeyboardFocus(); }
    juce::TextEditor& searchField() { return search; }
    std::string marked() const; ///< the preset Enter would take; empty: none shown

    void paint (juce::Graphics&) override;
    void resized() override;
    bool keyPressed (const juce::KeyPress&) override;

private:
    class Grid;
    std::vector<GuitarPicture> pictures;
    SearchField search;
    juce::Viewport scroll;
    std::unique_ptr<Grid> grid;

    bool moveBy (const juce::KeyPress&);
    void choose();
};
}
