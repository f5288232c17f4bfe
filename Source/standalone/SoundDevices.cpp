#include "standalone/SoundDevices.h"

namespace coldiron
{
SoundDevices::SoundDevices (juce::AudioProcessor& processor, juce::PropertiesFile& k) : kept (k)
{
    juce::AudioProcessor::BusesLayout layout;
    layout.inputBuses.add (juce::AudioChannelSet::mono());
    layout.outputBuses.add (juce::AudioChannelSet::stereo());
    processor.setBusesLayout (layout);
    manager.initialise (1, 2, kept.getXmlValue ("sound-device").get(), true);
    manager.addChangeListener (this);
    manager.addAudioCallback (&player);
    player.setProcessor (&processor);
}

SoundDevices::~SoundDevices()
{
    manager.removeChangeListener (this);
    manager.removeAudioCallback (&player);
    player.setProcessor (nullptr);
    manager.closeAudioDevice();
    if (dialog != nullptr)
        dialog.deleteAndZero();
}

void SoundDevices::changeListenerCallback (juce::ChangeBroadcaster*)
{
    if (const auto choice = manager.createStateXml())
        kept.setValue ("sound-device", choice.get());
    if (onChange)
        onChange();
}

void SoundDevices::showChoice (juce::Component& over)
{
    if (dialog != nullptr)
        return dialog->toFront (true);
    auto selector = std::make_unique<juce::AudioDeviceSelectorComponent> (manager, 0, 1, 1, 2, false, false, false, false);
    selector->setLookAndFeel (&over.getLookAndFeel());
    selector->setSize (560, 440);
    juce::DialogWindow::LaunchOptions options;
    options.content.setOwned (selector.release());
    options.dialogTitle = "Sound device";
    options.dialogBackgroundColour = over.getLookAndFeel().findColour (juce::ResizableWindow::backgroundColourId);
    options.componentToCentreAround = &over;
    options.useNativeTitleBar = true;
    options.resizable = false;
    dialog = options.launchAsync();
}
}
