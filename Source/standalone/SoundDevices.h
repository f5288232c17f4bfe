#pragma once

#include <juce_audio_utils/juce_audio_utils.h>

#include <functional>

namespace coldiron
{
/** The machine's sound device and the processor played through it. Of inputs it takes one: a guitar has one string of
    wire, and what stands in a second input is not heard. Message thread, but for what JUCE calls on the audio thread. */
class SoundDevices : private juce::ChangeListener
{
public:
    /** @param kept  where the choice of device is remembered; must outlive this */
    SoundDevices (juce::AudioProcessor&, juce::PropertiesFile& kept);
    ~SoundDevices() override;

    bool isOpen() const { return manager.getCurrentAudioDevice() != nullptr; }

    /** The person chooses; one dialog at a time. */
    void showChoice (juce::Component& over);

    std::function<void()> onChange;

private:
    juce::PropertiesFile& kept;
    juce::AudioDeviceManager manager;
    juce::AudioProcessorPlayer player;
    juce::Component::SafePointer<juce::DialogWindow> dialog;

    void changeListenerCallback (juce::ChangeBroadcaster*) override;
};
}
