// What the wiring view says: over the drawing, and to a screen reader, which hears the point that the keys stand on.

#include "editor/Accessible.h"
#include "editor/JobWords.h"
#include "editor/WiringView.h"
#include "session/Session.h"
#include "wording/PartWords.h"

namespace coldiron
{
juce::String WiringView::titleWords() const
{
    const OptionId heard = ui.session.monitor.heard();
    if (heard == asRecorded)
        return "Wiring as it came in";
    const auto job = ui.session.jobEditor.job();
    const auto* option = job->find (letterOf (heard));
    return "Wiring of " + words::from (letterOf (heard))
           + (option != nullptr && ! option->name.empty() ? ", " + words::from (option->name) : juce::String());
}

juce::String WiringView::jointsInWords (const std::string& point) const
{
    const auto joints = jointsAt (held.harness(), point).size();
    return leadIsInside (point) ? "joined inside the pickup"
           : joints == 0        ? "bare"
           : joints == 1        ? "1 joint"
                                : juce::String (static_cast<int> (joints)) + " joints";
}

juce::String WiringView::footWords() const
{
    juce::String text =
        held.isHolding()
            ? (byMouse ? "Let go on a point to solder, on paper to leave it off, back where it was to change nothing."
                       : "Tab and arrows walk, S types the point, Return does it, Delete leaves it off, Escape puts it back.")
            : "From the back. Pull a wire's end to another lug, or by keys: Tab and arrows walk, U unsolders, S solders, P fits, "
              "Delete removes.";
    if (! held.isHolding() && ! inPlace)
        text = "From the back. This one stays as it is: what you pull or solder here becomes a new option.";
    return text;
}

juce::String WiringView::cursorInWords() const
{
    if (! held.isReady())
        return "Drawing";
    const auto said = [this] (const std::string& point) { return words::from (wording::point (held.harness(), point)); };
    if (held.isHolding())
    {
        const auto& to = held.move().to;
        return words::from (held.words()) + (to.empty() ? juce::String() : ", to " + said (to)) + ". "
               + words::from (held.verdictWords());
    }
    if (standing.empty())
        return "No point yet";
    juce::StringArray others;
    for (const auto& joint : jointsAt (held.harness(), standing))
        others.add (said (joint.held));
    return said (standing) + ", " + jointsInWords (standing)
           + (others.isEmpty() ? juce::String() : ": " + others.joinIntoString ("; "));
}

std::unique_ptr<juce::AccessibilityHandler> WiringView::createAccessibilityHandler()
{
    return accessible (*this, juce::AccessibilityRole::group,
                       { .description = [this] { return inWords(); }, .value = [this] { return cursorInWords(); } });
}
}
