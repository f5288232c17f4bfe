// The app: the plugin's processor and window on the machine's own sound device.

#include "editor/KeptSettings.h"
#include "editor/MainEditor.h"
#include "plugin/Processor.h"
#include "standalone/SoundDevices.h"

namespace coldiron
{
namespace
{
class AppWindow : public juce::DocumentWindow
{
public:
    AppWindow (const juce::String& name, juce::AudioProcessorEditor* editor)
        : DocumentWindow (name, editor->getLookAndFeel().findColour (juce::ResizableWindow::backgroundColourId),
                          DocumentWindow::allButtons)
    {
        setUsingNativeTitleBar (true);
        setContentOwned (editor, true);
        setConstrainer (editor->getConstrainer());
        setResizable (true, false);
    }

    /** The system gives the keyboard to the frame; the window in it is what has use for it. */
    void focusGained (FocusChangeType) override
    {
        if (auto* ui = dynamic_cast<MainEditor*> (getContentComponent()))
            ui->takeKeyboard();
    }

    void closeButtonPressed() override { juce::JUCEApplication::getInstance()->systemRequestedQuit(); }
};

class App : public juce::JUCEApplication
{
public:
    const juce::String getApplicationName() override { return "Coldiron"; }
    const juce::String getApplicationVersion() override { return JucePlugin_VersionString; }
    bool moreThanOneInstanceAllowed() override { return true; }

    void initialise (const juce::String&) override
    {
        kept.setStorageParameters (keptOptions ("settings"));
        auto& settings = *kept.getUserSettings();

        juce::AudioProcessor::setTypeOfNextNewPlugin (juce::AudioProcessor::wrapperType_Standalone);
        processor = std::make_unique<Processor>();
        juce::AudioProcessor::setTypeOfNextNewPlugin (juce::AudioProcessor::wrapperType_Undefined);
        juce::MemoryBlock state;
        if (state.fromBase64Encoding (settings.getValue ("bench")) && state.getSize() > 0)
            processor->setStateInformation (state.getData(), static_cast<int> (state.getSize()));
        // What comes in is never heard before a person switches to it: a loudspeaker beside the guitar would howl.
        processor->session.transport.setSource (Source::take);

        devices = std::make_unique<SoundDevices> (*processor, settings);
        auto* editor = processor->createEditorIfNeeded();
        ui = dynamic_cast<MainEditor*> (editor);
        window = std::make_unique<AppWindow> (getApplicationName(), editor);
        if (! window->restoreWindowStateFromString (settings.getValue ("window")))
            window->centreWithSize (window->getWidth(), window->getHeight());
        window->setVisible (true);

        ui->setSoundDevice ([this] (juce::Component& over) { devices->showChoice (over); });
        devices->onChange = [this] { sayDevice(); };
        sayDevice();
        for (const auto& argument : getCommandLineParameterArray())
            if (const auto file = juce::File::getCurrentWorkingDirectory().getChildFile (argument); file.existsAsFile())
                ui->open (file.getFullPathName());
    }

    void shutdown() override
    {
        if (window != nullptr)
            kept.getUserSettings()->setValue ("window", window->getWindowStateAsString());
        devices = nullptr; // the sound ends before what makes it
        window = nullptr;
        processor = nullptr;
        kept.saveIfNeeded();
    }

    /** The session is as it was when the app is opened again, saved or not. */
    void systemRequestedQuit() override
    {
        juce::MemoryBlock state;
        processor->getStateInformation (state);
        kept.getUserSettings()->setValue ("bench", state.toBase64Encoding());
        kept.saveIfNeeded();
        quit();
    }

private:
    juce::ApplicationProperties kept;
    std::unique_ptr<Processor> processor;
    std::unique_ptr<SoundDevices> devices;
    std::unique_ptr<AppWindow> window;
    MainEditor* ui = nullptr; ///< the window's
    bool saidNone = false;

    void sayDevice()
    {
        const bool none = ! devices->isOpen();
        if (none && ! saidNone)
            ui->tell ("No sound device is open, so nothing can be heard. View, Sound device.");
        saidNone = none;
    }
};
}
}

juce::JUCEApplicationBase* juce_CreateApplication();
juce::JUCEApplicationBase* juce_CreateApplication() { return new coldiron::App(); }
