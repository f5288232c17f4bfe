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

/** One option's tag, or as recorded: of all tags the one heard is on. It hangs by a thread that its parent draws. */
class TagCard : public juce::Button
{
public:
    TagCard (UiContext&, OptionId);

    OptionId option() const { return shown; }
    void setSize (TagSize);
    void refresh(); ///< reads the session again
    juce::Point<float> eyelet() const;

    void mouseDown (const juce::MouseEvent&) override;
    void mouseDoubleClick (const juce::MouseEvent&) override;
    bool keyPressed (const juce::KeyPress&) override;

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
    juce::String figuresInWords() const;

    /** Loudness where there is a take, else the level over the middle of the range. [dB] */
    static double levelOf (const Report&);

    void paintButton (juce::Graphics&, bool over, bool down) override;
    void clicked() override; ///< hears it
    std::unique_ptr<juce::AccessibilityHandler> createAccessibilityHandler() override;
};

/** The dashed tag that makes a new option. */
class NewTag : public juce::Button
{
public:
    explicit NewTag (UiContext&);
    void setLetter (OptionId);
    bool keyPressed (const juce::KeyPress&) override;

private:
    UiContext& ui;
    OptionId letter = OptionId::A;

    void paintButton (juce::Graphics&, bool over, bool down) override;
    void clicked() override;
};

/** The outline of a tag: corners cut above, round below. */
juce::Path tagOutline (juce::Rectangle<float>);
}
