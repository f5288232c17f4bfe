#include "editor/NotesSheet.h"

#include "editor/JobWords.h"
#include "session/Session.h"

#include <nlohmann/json.hpp>

namespace coldiron
{
NotesSheet::NotesSheet (UiContext& d, OptionId id) : Overlay (d), option (id)
{
    setTitle ("Notes");
    add ("/wish", "The client's wish, in their words", "The client's wish");
    add ("/notes", "Notes on the job", "Notes on the job");
    if (option != asRecorded)
        add ("/options/" + letterOf (option) + "/notes", "Notes on " + words::from (letterOf (option)),
             "Notes on " + words::from (letterOf (option)));
    read();
}

NotesSheet::~NotesSheet()
{
    for (auto& field : fields)
        keep (*field);
}

void NotesSheet::add (const std::string& pointer, const juce::String& label, const juce::String& step)
{
    fields.push_back (std::make_unique<Field>());
    auto& added = *fields.back();
    added.pointer = pointer;
    added.label = label;
    added.step = step;
    added.field.setMultiLine (pointer != "/wish");
    added.field.setReturnKeyStartsNewLine (pointer != "/wish");
    added.field.setTitle (label);
    added.field.setTabKeyUsedAsCharacter (false);
    dressField (added.field, colours(), 14.0f);
    added.field.onFocusLost = [this, &added] { keep (added); };
    added.field.onReturnKey = [this, &added] { keep (added); };
    added.field.onEscapeKey = [this]
    {
        if (onClose)
            onClose();
    };
    addAndMakeVisible (added.field);
}

/** The texts as the job has them; what was typed since and not kept stays. */
void NotesSheet::read()
{
    const auto json = nlohmann::ordered_json::parse (ui.session.jobEditor.text(), nullptr, false, true);
    for (auto& field : fields)
    {
        const nlohmann::ordered_json::json_pointer at (field->pointer);
        juce::String text;
        if (json.is_object() && json.contains (at) && json.at (at).is_string())
            text = words::from (json.at (at).get<std::string>());
        else if (field->pointer == "/wish")
            text = jobwords::client (ui.session.jobEditor); // an older key of the same meaning
        if (text == field->kept && field->field.getText() != text)
            continue;
        field->kept = text;
        if (field->field.getText() != text)
            field->field.setText (text, false);
    }
}

void NotesSheet::keep (Field& field)
{
    const auto text = field.field.getText().trim();
    if (text == field.kept)
        return;
    const auto quoted =
        nlohmann::ordered_json (text.toStdString()).dump (-1, ' ', false, nlohmann::ordered_json::error_handler_t::replace);
    const auto now = text;
    if (ui.session.jobEditor.edit (field.pointer, text.isEmpty() ? std::string() : quoted, field.step.toStdString()))
        field.kept = now;
}

void NotesSheet::sessionChanged (const Revisions& before, const Revisions& now)
{
    if (before.job != now.job)
        read();
    repaint();
}

void NotesSheet::paint (juce::Graphics& g)
{
    Overlay::paint (g);
    paintTitle (g, "Notes");
    g.setColour (colours().mute);
    g.setFont (type::text (13.0f));
    for (const auto& field : fields)
        type::draw (g, field->label, field->field.getX(), field->field.getY() - 22, field->field.getWidth(), 20,
                    juce::Justification::centredLeft, false);
}

void NotesSheet::resized()
{
    Overlay::resized();
    auto area = getLocalBounds().reduced (20, 16).withTrimmedTop (42);
    const int notes = static_cast<int> (fields.size()) - 1, tall = (area.getHeight() - (34 + 30) - notes * 30) / notes;
    for (auto& field : fields)
    {
        area.removeFromTop (22);
        field->field.setBounds (area.removeFromTop (field == fields.front() ? 34 : tall));
        area.removeFromTop (8);
    }
}
}
