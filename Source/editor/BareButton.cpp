#include "editor/BareButton.h"

#include "session/Session.h"

namespace coldiron
{
BareButton::BareButton (UiContext& d, const juce::String& title, float c) : Button ({}), ui (d), corner (c) { setTitle (title); }

void BareButton::setOn (bool on)
{
    setToggleable (true);
    setToggleState (on, juce::dontSendNotification);
}

bool BareButton::keyPressed (const juce::KeyPress& key)
{
    return key == juce::KeyPress::returnKey && ! ui.session.blindTest.view().isRunning && Button::keyPressed (key);
}

void BareButton::paintButton (juce::Graphics& g, bool, bool)
{
    if (hasKeyboardFocus (false))
        paintFocus (g, getLocalBounds().toFloat(), corner, ui.colours());
}
}
