#pragma once

#include "editor/Look.h"
#include "session/GuitarValues.h"

namespace coldiron
{
/** A value of the guitar in a row of its own: click, or Enter, and type. Up and down step through preferred values while
    typing, and go from row to row otherwise. What is refused stays in the field with the words under it; the last good
    value stays in the job until a better one is whole. */
class ValueRow : public juce::Component, public juce::SettableTooltipClient
{
public:
    ValueRow (UiContext&, const GuitarValue&);
    ~ValueRow() override;

    std::function<void()> onHeight;   ///< it wants another height
    std::function<void (int)> onMove; ///< to the next row, or the one before
    std::function<void()> onFocus;

    void setValue (const GuitarValue&);
    const GuitarValue& get() const { return value; }
    int idealHeight (int width) const;
    void startTyping (const juce::String& first = {});
    bool isTyping() const { return field != nullptr; }
    juce::String wordsUnder() const { return under; }
    juce::TextEditor* editor() const;

    static juce::String labelOf (const GuitarValue&);
    static juce::String shownOf (const GuitarValue&);
    static constexpr int height = 25;

    void paint (juce::Graphics&) override;
    void resized() override;
    void mouseUp (const juce::MouseEvent&) override;
    bool keyPressed (const juce::KeyPress&) override;
    void focusGained (FocusChangeType) override;
    void focusLost (FocusChangeType) override { repaint(); }

private:
    class Field;
    UiContext& ui;
    GuitarValue value;
    std::unique_ptr<Field> field;
    juce::String under; ///< the hint, or why not
    bool refused = false;

    void step (int direction);
    bool commit();
    void endTyping (bool backToRow);
    void leave();
    void say (const juce::String&, bool isRefusal);
    std::unique_ptr<juce::AccessibilityHandler> createAccessibilityHandler() override;
};

/** Rows one under the other, scrolling where there is no room; lines that cannot be typed after them. */
class ValueList : public juce::Component
{
public:
    struct Line
    {
        juce::String label, value;
    };

    explicit ValueList (UiContext&);
    ~ValueList() override;

    /** Rows of the same things stay: what is being typed, and the keyboard, are not lost. */
    void show (const std::vector<GuitarValue>&, std::vector<Line> fixed = {});
    int idealHeight() const;
    ValueRow* rowOf (GuitarValue::Kind, const std::string& part) const;
    const std::vector<std::unique_ptr<ValueRow>>& all() const { return rows; }
    std::function<void()> onHeight;

    /** The right end of the list is the bar's alone, so that rows are as wide with it as without. */
    void keepBarOutside() { barOutside = true; }
    static constexpr int barRoom = 14;

    void resized() override;

private:
    class Inside;
    bool barOutside = false;
    UiContext& ui;
    juce::Viewport scroll;
    std::unique_ptr<Inside> inside;
    std::vector<std::unique_ptr<ValueRow>> rows;
    std::vector<Line> lines;

    int rowWidth (bool scrolls) const { return barOutside || scrolls ? getWidth() - barRoom : getWidth(); }
    std::unique_ptr<juce::AccessibilityHandler> createAccessibilityHandler() override;
    void place();
    void move (size_t from, int direction);
    void reveal (const ValueRow&);
};
}
