#pragma once

#include "session/Session.h"

#include <juce_audio_processors/juce_audio_processors.h>

namespace coldiron
{
/** The parameters a host sees. Their ids, order, ranges and number are for ever: automation and saved projects of
    years from now rely on them. What a job does not use is named so. Integers where one would expect choices, since
    choices come out wrong in LV2. */
class Parameters
{
public:
    /** Adds them all to the processor. */
    Parameters (juce::AudioProcessor&, Session&);

    juce::AudioProcessorParameter* bypass() const { return find (ParameterKind::bypass, 0); }

    /** Names of knobs and levers after the job, and where they stand. Message thread.
        @return whether a name changed, so that the host must be told */
    bool follow();

    HostLink link(); ///< for the session's own moves; must not outlive this

private:
    struct Entry
    {
        ParameterKind kind;
        int place;
        juce::RangedAudioParameter* parameter;
    };

    Session& session;
    std::vector<Entry> entries;

    juce::RangedAudioParameter* find (ParameterKind, int place) const;
    void add (juce::AudioProcessor&, ParameterKind, int place, std::unique_ptr<juce::RangedAudioParameter>);
};
}
