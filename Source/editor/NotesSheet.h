#pragma once

#include "editor/Overlays.h"

namespace coldiron
{
/** What people say of the job: the client's wish in their words, notes on the job and on the option heard. Typed here,
    kept in the job when a field is left; each change is one step of undo. */
class NotesSheet : public Overlay
{
public:
    NotesSheet (UiContext&, OptionId option);
    ~NotesSheet() override;

    void start() override { fields.front()->field.grabKeyboardFocus(); }
    void paint (juce::Graphics&) override;
    void resized() override;
    void sessionChanged (const Revisions& before, const Revisions& now) override;
    juce::Point<int> wants() const override { return { 640, option == asRecorded ? 340 : 470 }; }

private:
    struct Field
    {
        std::string pointer;
        juce::String label, step, kept;
        juce::TextEditor field;
    };

    const OptionId option;
    std::vector<std::unique_ptr<Field>> fields;

    void add (const std::string& pointer, const juce::String& label, const juce::String& step);
    void keep (Field&);
    void read();
};
}
