#pragma once

#include "session/Bench.h"

#include <juce_audio_processors/juce_audio_processors.h>

#include <functional>
#include <memory>

namespace coldiron
{
/** What the app asks of the window, and a host never does. */
class StandaloneContext
{
public:
    virtual ~StandaloneContext() = default;
    virtual void setSoundDevice (std::function<void (juce::Component& over)> show) = 0; ///< for the View menu
    virtual void tell (const juce::String&) = 0;                                        ///< one line at the foot, for a while
    virtual void takeKeyboard() = 0;                                                    ///< letters and space go to the bench
    virtual void open (const juce::String& file) = 0; ///< a job or a take, as if it were dropped
};

/** The window on a bench; a StandaloneContext too. The bench must outlive it. Message thread. */
std::unique_ptr<juce::AudioProcessorEditor> createBenchEditor (juce::AudioProcessor&, Bench&);
}
