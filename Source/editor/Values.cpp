#include "editor/Values.h"

#include "editor/Accessible.h"
#include "editor/Words.h"
#include "session/Session.h"

namespace coldiron
{
using Kind = GuitarValue::Kind;

/** Up and down are the row's. */
class ValueRow::Field : public juce::TextEditor
{
public:
    std::function<void (int)> onStep;

    bool keyPressed (const juce::KeyPress& key) override
    {
        if (key == juce::KeyPress::upKey || key == juce::KeyPress::downKey)
            return (onStep (key == juce::KeyPress::upKey ? 1 : -1), true);
        return TextEditor::keyPressed (key);
    }
};

ValueRow::ValueRow (UiContext& d, const GuitarValue& v) : ui (d)
{
    setWantsKeyboardFocus (true);
    setMouseCursor (juce::MouseCursor::IBeamCursor);
    setValue (v);
}

ValueRow::~ValueRow() = default;

juce::TextEditor* ValueRow::editor() const { return field.get(); }

juce::String ValueRow::labelOf (const GuitarValue& v)
{
    switch (v.kind)
    {
    case Kind::pickupOhms: return words::title (v.part) + (v.part.find ("pickup") == std::string::npos ? " pickup" : "");
    case Kind::jackOhms: return "Reads at the jack";
    case Kind::bridgeMm: return words::title (v.part) + " pickup at";
    case Kind::scaleMm: return "Scale";
    case Kind::cable: return "Cable";
    case Kind::inputOhms: return "Input";
    case Kind::inputFarads: return "Input capacitance";
    default: return words::title (v.part);
    }
}

juce::String ValueRow::shownOf (const GuitarValue& v)
{
    switch (v.kind)
    {
    case Kind::pot:
    {
        const auto& t = v.taper;
        return words::ohms (v.number)
               + (t.rfind ("reverse", 0) == 0  ? " rev log"
                  : t.rfind ("log", 0) == 0    ? " log"
                  : t.empty() || t == "linear" ? " lin"
                                               : "");
    }
    case Kind::capacitor:
    case Kind::cable:
    case Kind::inputFarads: return words::quantity (v.number, "F");
    case Kind::inductor: return words::quantity (v.number, "H");
    case Kind::bridgeMm: return juce::String (v.number, v.number == std::round (v.number) ? 0 : 1) + " mm";
    case Kind::scaleMm:
        return juce::String (juce::roundToInt (v.number))
               + (v.last != v.number ? " to " + juce::String (juce::roundToInt (v.last)) : juce::String()) + " mm";
    default: return words::ohms (v.number);
    }
}

void ValueRow::setValue (const GuitarValue& v)
{
    value = v;
    setTitle (labelOf (v));
    tellChange (*this);
    setTooltip (labelOf (v) + ": click or Enter to type");
    repaint();
}

int ValueRow::idealHeight (int width) const
{
    if (field == nullptr)
        return height;
    juce::AttributedString text;
    text.append (under, type::text (12.0f));
    juce::TextLayout laid;
    laid.createLayout (text, static_cast<float> (width));
    return 30 + juce::roundToInt (std::ceil (laid.getHeight())) + 8;
}

void ValueRow::paint (juce::Graphics& g)
{
    const auto& t = ui.colours();
    auto line = getLocalBounds();
    g.setColour (t.line);
    g.fillRect (line.removeFromBottom (1));
    const bool strong = value.kind == Kind::pickupOhms;
    const auto label = labelOf (value), shown = shownOf (value);
    auto top = line.withHeight (field == nullptr ? height - 1 : 30);
    const auto font = type::text (12.5f), valueFont = strong ? type::bold (12.5f) : font;
    const int labelWidth = juce::roundToInt (type::width (font, label)) + 8,
              valueWidth = juce::roundToInt (type::width (valueFont, shown)) + 2;
    g.setColour (t.ink);
    g.setFont (font);
    const int room = field != nullptr ? field->getX() - 6 : line.getWidth() - valueWidth - 4;
    type::draw (g, label, top.withWidth (juce::jmin (labelWidth, room)), juce::Justification::centredLeft, true);
    if (field != nullptr)
    {
        juce::AttributedString text;
        text.append (under, type::text (12.0f), refused ? t.ink : t.mute);
        text.setWordWrap (juce::AttributedString::byWord);
        text.draw (g, line.withTrimmedTop (32).toFloat());
        return;
    }
    g.setFont (valueFont);
    type::draw (g, shown, top, juce::Justification::centredRight, false);
    if (strong)
    {
        const juce::String mark = value.known == Provenance::measured   ? "measured"
                                  : value.known == Provenance::fromOhms ? "from ohms"
                                                                        : "assumed";
        const auto small = type::text (12.0f);
        if (labelWidth + valueWidth + type::width (small, mark) + 10 < static_cast<float> (line.getWidth()))
        {
            g.setColour (t.mute);
            g.setFont (small);
            type::draw (g, mark, top.withTrimmedRight (valueWidth + 7), juce::Justification::centredRight, false);
        }
    }
    if (hasKeyboardFocus (false))
        paintFocus (g, getLocalBounds().withTrimmedBottom (1).toFloat(), 4.0f, t);
}

void ValueRow::resized()
{
    if (field != nullptr)
        field->setBounds (getLocalBounds().withHeight (30).reduced (0, 2).removeFromRight (juce::jmin (136, getWidth() * 3 / 5)));
}

void ValueRow::mouseUp (const juce::MouseEvent& e)
{
    if (field == nullptr && e.mouseWasClicked())
        startTyping();
}

bool ValueRow::keyPressed (const juce::KeyPress& key)
{
    if (key == juce::KeyPress::returnKey)
        startTyping();
    else if (key == juce::KeyPress::upKey || key == juce::KeyPress::downKey)
    {
        if (! onMove)
            return false;
        onMove (key == juce::KeyPress::upKey ? -1 : 1);
    }
    else if (const auto c = key.getTextCharacter(); c >= '1' && c <= '9' && ! key.getModifiers().isAnyModifierKeyDown())
        startTyping (juce::String::charToString (c));
    else
        return false;
    return true;
}

void ValueRow::focusGained (FocusChangeType)
{
    if (onFocus)
        onFocus();
    repaint();
}

void ValueRow::say (const juce::String& words, bool isRefusal)
{
    under = words;
    refused = isRefusal;
    if (isRefusal)
        announce (words, true);
    if (onHeight)
        onHeight();
    repaint();
}

void ValueRow::startTyping (const juce::String& first)
{
    if (ui.session.blindTest.view().isRunning)
        return ui.tell ("Not while judging blind: a value would change what is judged.");
    if (field == nullptr)
    {
        field = std::make_unique<Field>();
        dressField (*field, ui.colours());
        field->setTitle (labelOf (value));
        field->setSelectAllWhenFocused (false);
        field->onStep = [this] (int direction) { step (direction); };
        field->onReturnKey = [this] { commit(); };
        field->onEscapeKey = [this] { endTyping (true); };
        field->onFocusLost = [this] { leave(); };
        field->onTextChange = [this]
        {
            if (refused)
                say (words::from (typingHint (value)), false);
        };
        addAndMakeVisible (*field);
    }
    resized();
    field->setText (first.isNotEmpty() ? first : words::from (typedText (value)), false);
    say (words::from (typingHint (value)), false);
    field->grabKeyboardFocus();
    if (first.isEmpty())
        field->selectAll();
    else
        field->moveCaretToEnd();
}

void ValueRow::step (int direction)
{
    field->setText (words::from (steppedText (value, field->getText().trim().toStdString(), direction)), false);
    field->selectAll();
    say (words::from (typingHint (value)), false);
}

bool ValueRow::commit()
{
    const auto typed = field->getText().trim().toStdString();
    if (typed == typedText (value))
        return (endTyping (true), true);
    const auto edit = typedEdit (ui.session.jobEditor, value, typed);
    if (! edit.sound())
        return (say (words::from (edit.refusal), true), false);
    if (! ui.session.jobEditor.edit (edit.pointer, edit.json, edit.name))
    {
        const auto diagnostics = ui.session.diagnostics();
        return (say (diagnostics.empty() ? juce::String ("The job does not take it.") : words::from (diagnostics.front().message),
                     true),
                false);
    }
    if (! edit.note.empty())
        ui.tell (words::from (edit.note));
    endTyping (true);
    return true;
}

/** The keyboard went elsewhere: what is whole is kept, what is not is said and left. */
void ValueRow::leave()
{
    const juce::Component::SafePointer<ValueRow> self (this);
    juce::MessageManager::callAsync (
        [self]
        {
            if (self == nullptr || self->field == nullptr || self->field->hasKeyboardFocus (true))
                return;
            const auto typed = self->field->getText().trim();
            const auto edit = typedEdit (self->ui.session.jobEditor, self->value, typed.toStdString());
            if (typed.toStdString() != typedText (self->value))
            {
                if (edit.sound())
                    self->ui.session.jobEditor.edit (edit.pointer, edit.json, edit.name);
                else
                    self->ui.tell (labelOf (self->value) + " stays at " + shownOf (self->value) + ". "
                                   + words::from (edit.refusal));
            }
            if (self != nullptr)
                self->endTyping (false);
        });
}

void ValueRow::endTyping (bool backToRow)
{
    if (field == nullptr)
        return;
    field->onFocusLost = nullptr;
    // The field may be the one that called: it goes when the message is done.
    juce::MessageManager::callAsync ([old = std::shared_ptr<Field> (std::move (field))] {});
    field = nullptr;
    removeAllChildren();
    under = {};
    refused = false;
    if (onHeight)
        onHeight();
    if (backToRow && isShowing())
        grabKeyboardFocus();
    repaint();
}

/** The row as a field: its value is read, and a typed one taken as if it had been typed here. */
std::unique_ptr<juce::AccessibilityHandler> ValueRow::createAccessibilityHandler()
{
    const auto known = [this]
    {
        if (value.kind != Kind::pickupOhms)
            return juce::String();
        return juce::String (value.known == Provenance::measured   ? "measured"
                             : value.known == Provenance::fromOhms ? "from ohms"
                                                                   : "assumed");
    };
    const auto typed = [this] (const juce::String& text)
    {
        startTyping (text);
        if (field != nullptr)
            commit();
    };
    return accessible (*this, juce::AccessibilityRole::editableText,
                       { .description = known, .value = [this] { return shownOf (value); }, .type = typed },
                       juce::AccessibilityActions().addAction (juce::AccessibilityActionType::press, [this] { startTyping(); }));
}
}
