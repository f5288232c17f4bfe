#include "editor/Overlays.h"

#include "editor/Words.h"
#include "session/Session.h"

namespace coldiron
{
Overlay::Overlay (UiContext& d) : Panel (d), close (d, "Close")
{
    setWantsKeyboardFocus (true);
    setFocusContainerType (FocusContainerType::keyboardFocusContainer); // Tab stays within the sheet
    addAndMakeVisible (close);
    close.onClick = [this]
    {
        if (onClose)
            onClose();
    };
}

bool Overlay::keyPressed (const juce::KeyPress& key)
{
    if (key.isKeyCode (juce::KeyPress::tabKey) && hasKeyboardFocus (false))
    {
        const auto all = juce::KeyboardFocusTraverser().getAllComponents (this);
        if (! all.empty())
            (key.getModifiers().isShiftDown() ? all.back() : all.front())->grabKeyboardFocus();
        return true;
    }
    if (key != juce::KeyPress::escapeKey)
        return false;
    if (onClose)
        onClose();
    return true;
}

void Overlay::paint (juce::Graphics& g)
{
    paintSheet (g);
    g.setColour (colours().mute);
    g.drawRoundedRectangle (getLocalBounds().toFloat().reduced (0.5f), 6.0f, 1.0f);
}

void Overlay::resized() { close.setBounds (getWidth() - close.idealWidth() - 12, 10, close.idealWidth(), 34); }

void Overlay::paintTitle (juce::Graphics& g, const juce::String& words)
{
    g.setColour (colours().ink);
    g.setFont (type::name (20.0f));
    type::draw (g, words, 20, 12, getWidth() - 150, 30, juce::Justification::centredLeft, true);
}

KeySheet::KeySheet (UiContext& d, bool host) : Overlay (d), inHost (host) { setTitle ("Keys"); }

std::vector<std::pair<juce::String, juce::String>> KeySheet::rows() const
{
    return {
        { inHost ? "" : "Space", "play and stop" },
        { "0", "hear the take as recorded" },
        { "A to H", "hear an option" },
        { "Shift A", "hold to compare" },
        { "Left, Right", "next tag" },
        { "M", "true level or matched" },
        { "S", "sound: hiss, amplifier, headroom" },
        { "R", "mains hum on and off" },
        { "[ ]", "less hum, more hum" },
        { "L", "loop on and off" },
        { "I O", "loop starts, ends here" },
        { "T", "next take" },
        { "K", "first knob, Tab goes on" },
        { "W", "wiring, to rewire by hand" },
        { "N", "new option: starter set or rewire" },
        { "P", "add a rewire to the option heard" },
        { "U", "your guitar: take it in" },
        { "V", "type a value of the guitar" },
        { "J", "notes on job and option" },
        { "Ctrl Z", "undo, with Shift redo" },
        { "Ctrl S", "save the job" },
        { "Ctrl O", "open a job" },
        { "Ctrl B", "blind test" },
    };
}

juce::String KeySheet::foot() const
{
    return inHost ? "In a host the keys work after a click in this window. Space stays with the host."
                  : "To agree, press its button. Tab goes through everything, Return presses.";
}

juce::String KeySheet::inWords() const
{
    juce::String words;
    for (const auto& [key, meaning] : rows())
        if (key.isNotEmpty())
            words << key << ": " << meaning << ". ";
    return words + foot();
}

void KeySheet::paint (juce::Graphics& g)
{
    Overlay::paint (g);
    paintTitle (g, "Keys");
    const auto& t = colours();
    const auto all = rows();
    auto area = getLocalBounds().reduced (20, 0).withTrimmedTop (56).withTrimmedBottom (40);
    const int perColumn = (static_cast<int> (all.size()) + 1) / 2, columnWidth = area.getWidth() / 2,
              pitch = juce::jmin (38, area.getHeight() / perColumn);
    int index = 0;
    for (const auto& [key, meaning] : all)
    {
        if (key.isEmpty())
            continue;
        const int x = area.getX() + index / perColumn * columnWidth, y = area.getY() + index % perColumn * pitch;
        paintKey (g, static_cast<float> (x), static_cast<float> (y) + 14.0f, key, t);
        g.setColour (t.ink);
        g.setFont (type::text (13.0f));
        type::draw (g, meaning, x + 100, y, columnWidth - 104, 28, juce::Justification::centredLeft, true);
        ++index;
    }
    g.setColour (t.mute);
    g.setFont (type::text (12.5f));
    type::draw (g, foot(), getLocalBounds().reduced (20, 12).removeFromBottom (20), juce::Justification::centredLeft, true);
}

Notice::Notice (UiContext& d) : Panel (d) {}

void Notice::say (const juce::String& words, bool aloud)
{
    lines = { words };
    isFault = false;
    ticksLeft = 30 * juce::jmax (4, words.length() / 12); // time to read it
    shown (aloud);
}

void Notice::shown (bool aloud)
{
    const auto words = lines.joinIntoString ("\n");
    if (aloud && (words != getTitle() || ! isVisible())) // the same words again are not said again
        announce (words, isFault);
    setTitle (words);
    setVisible (true);
    repaint();
    if (onChange)
        onChange();
}

std::unique_ptr<juce::AccessibilityHandler> Notice::createAccessibilityHandler()
{
    return accessible (*this, juce::AccessibilityRole::staticText, {},
                       juce::AccessibilityActions().addAction (juce::AccessibilityActionType::press, [this] { hideNow(); }));
}

void Notice::sessionChanged (const Revisions& before, const Revisions& now)
{
    if (before.job == now.job)
        return;
    const auto diagnostics = ui.session.diagnostics();
    if (diagnostics.empty())
    {
        if (isFault)
            hideNow();
        return;
    }
    lines.clear();
    for (size_t i = 0; i < diagnostics.size() && i < 4; ++i)
        lines.add (words::from (diagnostics[i].file == "job" && diagnostics[i].line > 0
                                    ? "Line " + std::to_string (diagnostics[i].line) + " of the job: " + diagnostics[i].message
                                    : diagnostics[i].text()));
    if (diagnostics.size() > 4)
        lines.add ("and " + juce::String (static_cast<int> (diagnostics.size()) - 4) + " more");
    isFault = true;
    ticksLeft = 0;
    shown (true);
}

void Notice::tick()
{
    if (isVisible() && ! isFault && ticksLeft > 0 && --ticksLeft == 0)
        hideNow();
}

void Notice::hideNow()
{
    setVisible (false);
    isFault = false;
}

int Notice::idealHeight (int width) const
{
    int total = 16;
    for (const auto& line : lines)
        total += 18 * (1 + juce::roundToInt (type::width (type::text (13.0f), line)) / juce::jmax (1, width - 60));
    return juce::jmax (42, total);
}

void Notice::paint (juce::Graphics& g)
{
    const auto& t = colours();
    const auto area = getLocalBounds().toFloat();
    g.setColour (t.ink);
    g.fillRoundedRectangle (area, 6.0f);
    g.setColour (t.sheet);
    g.setFont (type::text (13.0f));
    g.drawFittedText (lines.joinIntoString ("\n"), getLocalBounds().reduced (16, 6), juce::Justification::centredLeft, 8, 1.0f);
}
}
