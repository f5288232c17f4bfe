#pragma once

#include "editor/Look.h"

namespace coldiron
{
struct Report;

/** How much a tag shows. */
struct TagSize
{
    bool compact = false; ///< narrow: name on one line
    bool low = false;     ///< low: two figures on one line
};

/** One option's tag, or as recorded. It hangs by a thread that its parent draws. */
class TagCard : public juce::Component, public juce::SettableTooltipClient
{
public:
    TagCard (UiContext&, OptionId);

    OptionId option() const { return shown; }
    void setSize (TagSize);
    void refresh(); ///< reads the session again
    juce::Point<float> eyelet() const;

    void paint (juce::Graphics&) override;
    void mouseDown (const juce::MouseEvent&) override;
    void mouseDoubleClick (const juce::MouseEvent&) override;
    void mouseEnter (const juce::MouseEvent&) override { repaint(); }
    void mouseExit (const juce::MouseEvent&) override { repaint(); }
    bool keyPressed (const juce::KeyPress&) override;
    void focusGained (FocusChangeType) override { repaint(); }
    void focusLost (FocusChangeType) override { repaint(); }

    void showMenu();
    void startRenaming();
    void resized() override;

private:
    UiContext& ui;
    OptionId shown;
    TagSize size;
    juce::String name, below, pill;
    bool heard = false, working = false;
    std::shared_ptr<const Report> report;
    juce::TextEditor nameField;

    juce::Path outline() const;
    float headHeight() const { return size.low ? 38.0f : 54.0f; }
    juce::Rectangle<int> nameArea() const;
    void paintHead (juce::Graphics&, bool over);
    void paintFigures (juce::Graphics&);
    void endRenaming (bool keep);
};

/** The dashed tag that makes a new option. */
class NewTag : public juce::Component
{
public:
    explicit NewTag (UiContext&);
    void setLetter (OptionId);
    void paint (juce::Graphics&) override;
    void mouseUp (const juce::MouseEvent&) override;
    bool keyPressed (const juce::KeyPress&) override;
    void mouseEnter (const juce::MouseEvent&) override { repaint(); }
    void mouseExit (const juce::MouseEvent&) override { repaint(); }
    void focusGained (FocusChangeType) override { repaint(); }
    void focusLost (FocusChangeType) override { repaint(); }

private:
    UiContext& ui;
    OptionId letter = OptionId::A;
};

/** The outline of a tag: corners cut above, round below. */
juce::Path tagOutline (juce::Rectangle<float>);
}
