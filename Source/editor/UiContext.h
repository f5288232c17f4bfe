#pragma once

#include "editor/Accessible.h"
#include "editor/Tokens.h"
#include "session/Revisions.h"

#include <functional>

namespace coldiron
{
class Session;

/** What every part of the window shares: the session, the colours, and the few things one part asks of another. */
struct UiContext
{
    explicit UiContext (Session& s) : session (s) {}

    Session& session;
    const Tokens* tokens = &Tokens::light();

    std::function<void (OptionId)> addRewireTo; ///< opens the list of rewires for an option; asRecorded: a new one
    std::function<void (OptionId)> rename;
    std::function<void()> openTakeFile;
    std::function<void (int)> findTakeFile; ///< asks where a take's file is now
    std::function<void()> openNotes;
    bool inHost = false;                                       ///< a host's track comes in, not the guitar itself
    std::function<void()> openSound;                           ///< the sheet of how it is listened to
    std::function<void (const juce::String&, bool aloud)> say; ///< one line at the foot of the window, for a while

    const Tokens& colours() const { return *tokens; }
    /** @param aloud  a screen reader says it too */
    void tell (const juce::String& words, bool aloud = true) const
    {
        if (say)
            say (words, aloud);
    }
};

/** A part of the window that draws from the session. */
class Panel : public juce::Component
{
public:
    explicit Panel (UiContext& d) : ui (d) { setFocusContainerType (FocusContainerType::focusContainer); }

    /** Called on the message thread with what changed since the last call. */
    virtual void sessionChanged (const Revisions& before, const Revisions& now) = 0;

protected:
    UiContext& ui;
    const Tokens& colours() const { return ui.colours(); }

    /** What is only drawn, in a sentence or two for screen readers; empty: nothing. */
    virtual juce::String inWords() const { return {}; }

    std::unique_ptr<juce::AccessibilityHandler> createAccessibilityHandler() override
    {
        return accessible (*this, juce::AccessibilityRole::group, { .description = [this] { return inWords(); } });
    }

    /** The sheet of a panel: paper, hairline, corners of 6. */
    void paintSheet (juce::Graphics& g) const
    {
        const auto area = getLocalBounds().toFloat().reduced (0.5f);
        g.setColour (colours().sheet);
        g.fillRoundedRectangle (area, 6.0f);
        g.setColour (colours().line);
        g.drawRoundedRectangle (area, 6.0f, 1.0f);
    }
};
}
