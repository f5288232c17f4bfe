#pragma once

#include "concurrency/Worker.h"
#include "plugin/Parameters.h"

#include <juce_audio_processors/juce_audio_processors.h>

#include <chrono>

namespace coldiron
{
/** The session as a plugin. Zero latency; mono to mono, mono to stereo, stereo to stereo. */
class Processor : public juce::AudioProcessor, private juce::AsyncUpdater
{
public:
    Processor();
    ~Processor() override;

    Session session; ///< all of the plugin but its host and its window

    const juce::String getName() const override { return JucePlugin_Name; }
    bool acceptsMidi() const override { return false; }
    bool producesMidi() const override { return false; }
    double getTailLengthSeconds() const override { return session.output.tailSeconds(); }
    bool isBusesLayoutSupported (const BusesLayout&) const override;
    void prepareToPlay (double sampleRate, int maximumBlock) override;
    void releaseResources() override {}
    using juce::AudioProcessor::processBlock;
    using juce::AudioProcessor::processBlockBypassed;
    void processBlock (juce::AudioBuffer<float>&, juce::MidiBuffer&) override;
    void processBlockBypassed (juce::AudioBuffer<float>&, juce::MidiBuffer&) override;
    juce::AudioProcessorParameter* getBypassParameter() const override { return parameters.bypass(); }

    bool hasEditor() const override { return true; }
    juce::AudioProcessorEditor* createEditor() override;

    int getNumPrograms() override { return 1; }
    int getCurrentProgram() override { return 0; }
    void setCurrentProgram (int) override {}
    const juce::String getProgramName (int) override { return "Default"; }
    void changeProgramName (int, const juce::String&) override {}

    void getStateInformation (juce::MemoryBlock&) override;
    void setStateInformation (const void*, int) override;

private:
    Parameters parameters;
    Revisions followed; ///< message thread: what the host has been told of

    // Of the follower's thread.
    Revisions noted;
    std::chrono::steady_clock::time_point told;
    Worker follower; ///< last

    bool noteChanges (const Cancellation& stop);
    void handleAsyncUpdate() override;
    void followSession();
};
}
