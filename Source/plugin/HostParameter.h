#pragma once

#include "session/Session.h"

#include <juce_audio_processors/juce_audio_processors.h>

#include <cmath>

namespace coldiron
{
/** A parameter of JUCE's that tells the session of every move at once, on whatever thread the host makes it, and whose
    name may change with the job. valueChanged() is called without a lock, unlike a listener. */
template <typename Base, typename Value>
class HostParameter : public Base
{
public:
    template <typename... Arguments>
    HostParameter (Session& s, ParameterKind l, int p, const juce::String& id, const juce::String& firstName,
                   Arguments&&... arguments)
        : Base (juce::ParameterID { id, 1 }, firstName, std::forward<Arguments> (arguments)...), session (s), kind (l), place (p),
          shown (firstName)
    {
    }

    juce::String getName (int longest) const override
    {
        const juce::SpinLock::ScopedLockType lock (nameLock);
        return shown.substring (0, longest);
    }

    /** @return whether it is another one */
    bool rename (const juce::String& newName)
    {
        const juce::SpinLock::ScopedLockType lock (nameLock);
        const bool isNew = shown != newName;
        shown = newName;
        return isNew;
    }

private:
    Session& session;
    const ParameterKind kind;
    const int place;
    mutable juce::SpinLock nameLock; ///< of the message thread and whoever asks for the name, never the audio thread
    juce::String shown;

    /** JUCE keeps what is no number, and makes a whole number or a flag of it: the session is told what came. */
    void valueChanged (Value is) override
    {
        const float came = static_cast<const juce::AudioProcessorParameter*> (this)->getValue();
        session.automation.hostMoved (kind, place, std::isfinite (came) ? static_cast<double> (is) : static_cast<double> (came));
    }
};

using FloatLane = HostParameter<juce::AudioParameterFloat, float>;
using IntLane = HostParameter<juce::AudioParameterInt, int>;
using BoolLane = HostParameter<juce::AudioParameterBool, bool>;
}
