#include "plugin/Processor.h"

#include "editor/MainEditor.h"
#include "files/Log.h"

namespace coldiron
{
Processor::Processor()
    : AudioProcessor (BusesProperties()
                          .withInput ("Input", juce::AudioChannelSet::stereo())
                          .withOutput ("Output", juce::AudioChannelSet::stereo())),
      parameters (*this, session),
      follower (
          "coldiron-host", session.changes(), [this] (const Cancellation& stop) { return noteChanges (stop); },
          [] (const std::string& words) { logFault ("the host is not told: " + words); })
{
    session.automation.setHost (parameters.link());
    if (wrapperType == wrapperType_Standalone)
        session.output.setStandsAlone();
}

Processor::~Processor()
{
    follower.end();
    cancelPendingUpdate();
    session.automation.setHost ({});
}

bool Processor::isBusesLayoutSupported (const BusesLayout& layout) const
{
    const auto in = layout.getMainInputChannelSet(), out = layout.getMainOutputChannelSet();
    const auto mono = juce::AudioChannelSet::mono(), stereo = juce::AudioChannelSet::stereo();
    return (in == mono && (out == mono || out == stereo)) || (in == stereo && out == stereo);
}

void Processor::prepareToPlay (double sampleRate, int)
{
    setLatencySamples (0);
    session.audio.prepare (sampleRate);
}

void Processor::processBlock (juce::AudioBuffer<float>& buffer, juce::MidiBuffer&)
{
    const juce::ScopedNoDenormals noDenormals;
    if (getTotalNumInputChannels() == 1 && getTotalNumOutputChannels() == 2)
        buffer.copyFrom (1, 0, buffer, 0, 0, buffer.getNumSamples());
    session.audio.process (buffer.getArrayOfWritePointers(), std::min (buffer.getNumChannels(), getTotalNumOutputChannels()),
                           buffer.getNumSamples(), isNonRealtime());
}

void Processor::processBlockBypassed (juce::AudioBuffer<float>& buffer, juce::MidiBuffer&)
{
    if (getTotalNumInputChannels() == 1 && getTotalNumOutputChannels() == 2)
        buffer.copyFrom (1, 0, buffer, 0, 0, buffer.getNumSamples()); // the take as it is, on both sides
}

juce::AudioProcessorEditor* Processor::createEditor() { return new MainEditor (*this, session); }

void Processor::getStateInformation (juce::MemoryBlock& block)
{
    const std::string state = session.state();
    block.replaceAll (state.data(), state.size());
}

void Processor::setStateInformation (const void* data, int size)
{
    if (data == nullptr || size <= 0)
        return;
    std::string state (static_cast<const char*> (data), static_cast<size_t> (size));
    while (! state.empty() && state.back() == '\0')
        state.pop_back(); // some hosts pad
    if (session.restore (state))
        followSession();
}

void Processor::followSession()
{
    session.takes.followHeard();
    followed = session.revisions();
    if (parameters.follow())
        updateHostDisplay (ChangeDetails().withParameterInfoChanged (true));
}

/** On the follower's thread: the audio thread, which may have made the change, must not send messages. A change is told at
    once, more of them 30 times a second. */
bool Processor::noteChanges (const Cancellation& stop)
{
    constexpr auto shortest = std::chrono::milliseconds (33), slice = std::chrono::milliseconds (3);
    const Revisions now = session.revisions();
    if (now.job == noted.job && now.heard == noted.heard && now.settings == noted.settings)
        return false;
    while (std::chrono::steady_clock::now() < told + shortest && ! stop.isRequested())
        std::this_thread::sleep_for (slice);
    told = std::chrono::steady_clock::now();
    noted = now;
    triggerAsyncUpdate();
    return true;
}

void Processor::handleAsyncUpdate()
{
    const Revisions now = session.revisions();
    if (now.job != followed.job || now.heard != followed.heard || now.settings != followed.settings)
        followSession();
}
}
